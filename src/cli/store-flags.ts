import { Option } from "commander";

/** Where a base is kept when nothing else is said. */
export const USUAL_DATA = "./soakline-data/base.sqlite";

export function dataOption(): Option {
  return new Option(
    "--data <path or address>",
    "SQLite file, or postgres://… address of a PostgreSQL database",
  );
}

export function isPostgres(data: string): boolean {
  return /^postgres(ql)?:\/\//.test(data);
}

/** An address without the password that may stand in it. */
export function shown(data: string): string {
  return isPostgres(data) ? data.replace(/\/\/[^@/]*@/, "//…@") : data;
}
