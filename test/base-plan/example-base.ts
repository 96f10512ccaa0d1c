import { readFileSync } from "node:fs";
import { type BaseDocument, type BasePlanDocument, basePlanFromDocument } from "../../src/index.js";
import { solveMilp } from "../../src/node/index.js";

/** The example of the invented base, with fewer drawn cases than it has, to be quick. */
export function exampleBase(change: Partial<BaseDocument> = {}): BaseDocument {
  const document = JSON.parse(readFileSync("examples/ravnholt-base.json", "utf8")) as BaseDocument;
  return { ...document, ensemble: { members: 60, seed: 1 }, ...change };
}

export async function planned(document: BaseDocument): Promise<BasePlanDocument> {
  const outcome = await basePlanFromDocument(document, { solveMilp });
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

/** The aircraft of a base, one of them changed. */
export function withAircraft(
  document: BaseDocument,
  id: string,
  change: (one: Exclude<BaseDocument["aircraft"][number]["scenario"], string>) => object,
): BaseDocument {
  return {
    ...document,
    aircraft: document.aircraft.map((one) =>
      one.id !== id || typeof one.scenario === "string"
        ? one
        : { ...one, scenario: { ...one.scenario, ...change(one.scenario) } },
    ),
  };
}

export function rowOf({ aircraft }: BasePlanDocument, id: string) {
  const row = aircraft.find((one) => one.id === id);
  if (row === undefined) throw new Error(`no ${id}`);
  return row;
}
