import { Option } from "commander";
import { StoreFailure } from "../store/index.js";
import { BadInput } from "./exit.js";

/** Where a base is kept when nothing else is said. */
export const USUAL_DATA = "./soakline-data/base.sqlite";

export function dataOption(): Option {
  return new Option("--data <path or address>", "SQLite file, or postgres://… of a PostgreSQL database");
}

export function isPostgres(data: string): boolean {
  return /^postgres(ql)?:\/\//.test(data);
}

/** An address without the password that may stand in it. */
export function shown(data: string): string {
  return isPostgres(data) ? data.replace(/\/\/[^@/]*@/, "//…@") : data;
}

/** What the store says of itself is for the person at the terminal. */
export async function told<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof StoreFailure || error instanceof RangeError) {
      throw new BadInput([{ path: "--data", expected: "a store that can be used", received: error.message }]);
    }
    if (
      error instanceof Error &&
      "code" in error &&
      typeof error.code === "string" &&
      /^E[A-Z]+$/.test(error.code)
    ) {
      throw new BadInput([{ path: "FILE", expected: "a file that can be used", received: error.message }]);
    }
    throw error;
  }
}
