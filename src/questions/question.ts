import {
  type DocumentIssue,
  type Overrides,
  overridden,
  type ReadFile,
  readScenarioDocument,
} from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { english } from "../words/index.js";

/** What a question ended in; the three ways to fail stay apart. */
export type Outcome<T> =
  | { readonly status: "completed"; readonly result: T }
  | { readonly status: "refused"; readonly issues: readonly DocumentIssue[] }
  | { readonly status: "failed" | "cancelled"; readonly message: Finding };

/** How the work goes on while a question is answered. */
export interface Watched {
  /** Called now and then with the share done [0..1], where it is known; returning false stops the work. */
  readonly onProgress?: ((done?: number) => boolean) | undefined;
}

export interface QuestionOptions extends Watched {
  /** What-ifs put over the document. */
  readonly overrides?: Overrides;
  /** Gives the text of weather files that the document names. */
  readonly readFile?: ReadFile;
  /** Nothing heats, whatever the document plugs in. */
  readonly withoutPower?: boolean;
}

export function completed<T>(result: T): Outcome<T> {
  return { status: "completed", result };
}

export function refused(path: string, expected: string, received: string) {
  return { status: "refused", issues: [{ path, expected, received }] } as const;
}

/** What a logbook leaves out; received says it in English, for those who read the issue alone. */
export function refusedFor(reason: Finding) {
  const expected = "what an estimate or a plan needs";
  return {
    status: "refused",
    issues: [{ path: "logbook", expected, received: english(reason), reason }],
  } as const;
}

export const STOPPED = { status: "cancelled", message: finding("was-stopped", {}) } as const;

/** A calculation that could not go on. @param remedy what to do, in English */
export function failed(remedy: string) {
  return { status: "failed", message: finding("not-calculated", { remedy }) } as const;
}

/** The files a document may name. */
export function filesOf({ readFile }: QuestionOptions) {
  return readFile === undefined ? {} : { readFile };
}

/** Asks of the scenario that a document describes. */
export function fromDocument<T>(
  source: unknown,
  options: QuestionOptions,
  answer: (asked: AircraftScenario) => Outcome<T>,
): Outcome<T> {
  const { overrides = {}, withoutPower = false } = options;
  const reading = readScenarioDocument(overridden(source, overrides), { ...filesOf(options), withoutPower });
  return reading.ok ? answer(reading) : { status: "refused", issues: reading.issues };
}
