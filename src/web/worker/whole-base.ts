import loadHighs, { type Highs } from "highs";
import wasm from "highs/runtime?url";
import { baseDocumentOf } from "../../base-documents/index.js";
import type { BaseDocument, ScenarioDocument, ToldDocument } from "../../documents/index.js";
import type { BaseSetUp } from "../../logbook/index.js";
import { basePlanFromDocument, highsSolver } from "../../questions/index.js";

/** The package describes its CommonJS form alone, where the loader is a property; imported, it is the default itself. */
const load = loadHighs as unknown as (options: { locateFile(): string }) => Promise<Highs>;

/** HiGHS, brought in where aircraft are in each other's way; the service worker keeps it for nights without a network. */
const solveMilp = highsSolver(() => load({ locateFile: () => wasm }));

export interface OneOfBase {
  readonly id: string;
  readonly scenario: ScenarioDocument;
}

export function documentOf(
  setUp: BaseSetUp,
  aircraft: readonly OneOfBase[],
  told: readonly ToldDocument[],
): BaseDocument {
  return baseDocumentOf(
    setUp,
    aircraft.map(({ id, scenario }) => {
      const before = told.find((one) => one.id === id);
      return before === undefined ? { id, scenario } : { id, scenario, told: before };
    }),
  );
}

export function planTogether(document: unknown, onProgress: (done?: number) => boolean) {
  return basePlanFromDocument(document, { solveMilp, onProgress });
}
