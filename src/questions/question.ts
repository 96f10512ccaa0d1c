import {
  type DocumentIssue,
  type Overrides,
  overridden,
  type ReadFile,
  readScenarioDocument,
} from "../documents/index.js";
import type { AircraftScenario } from "../scenario/index.js";

/** What a question ended in; the three ways to fail stay apart. */
export type Outcome<T> =
  | { readonly status: "completed"; readonly result: T }
  | { readonly status: "refused"; readonly issues: readonly DocumentIssue[] }
  | { readonly status: "failed" | "cancelled"; readonly message: string };

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

export function stopped(what: string) {
  return { status: "cancelled", message: `the ${what} was stopped` } as const;
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
