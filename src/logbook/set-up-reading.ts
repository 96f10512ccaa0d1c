import {
  type DocumentIssue,
  isRecord,
  issueAt,
  jsonOf,
  type Notes,
  newNotes,
  sectionsBy,
} from "../documents/index.js";
import { SET_UP_VERSION, SET_UP_VERSION_KEY, setUpMigrated } from "./migrate-set-up.js";
import { type BaseSetUp, baseSetUpSchema } from "./set-up.js";
import { checkAircraft } from "./set-up-aircraft.js";
import { checkBase } from "./set-up-base.js";
import { checkSwitches } from "./set-up-switches.js";

export type SetUpReading =
  | { readonly ok: true; readonly setUp: BaseSetUp }
  | { readonly ok: false; readonly issues: readonly DocumentIssue[] };

/** Reads a base of any version, as text or as a value. Every fault is named at once, with its place. */
export function readBaseSetUp(source: unknown): SetUpReading {
  return readBy(source, [checkBase, checkAircraft, checkSwitches]);
}

/** The same for a base that another has taken the place of: what its switches were is history, and is not judged. */
export function readFormerSetUp(source: unknown): SetUpReading {
  return readBy(source, [checkBase, checkAircraft]);
}

type Check = (sections: Partial<BaseSetUp>, notes: Notes) => void;

function readBy(source: unknown, checks: readonly Check[]): SetUpReading {
  const json = jsonOf(source);
  if (!json.ok) return { ok: false, issues: [json.issue] };
  const document = json.value;
  if (!isRecord(document)) return { ok: false, issues: [issueAt([], "an object", document)] };
  const migration = setUpMigrated(document);
  if (!migration.ok && migration.failure.kind === "newer-version") {
    const expected = `${SET_UP_VERSION} or less: the document is of a newer program`;
    return { ok: false, issues: [issueAt([SET_UP_VERSION_KEY], expected, migration.failure.version)] };
  }
  const notes = newNotes();
  // Without a readable version it is taken as it stands: the schema names the version among the other faults.
  const sections = sectionsBy(baseSetUpSchema, migration.ok ? migration.document : document, notes);
  for (const check of checks) check(sections, notes);
  if (notes.issues.length > 0) return { ok: false, issues: notes.issues };
  return { ok: true, setUp: sections as BaseSetUp };
}
