import {
  type DocumentIssue,
  isRecord,
  issueAt,
  jsonOf,
  newFindings,
  sectionsBy,
} from "../documents/index.js";
import { type BaseSetUp, baseSetUpSchema } from "./set-up.js";
import { checkAircraft } from "./set-up-aircraft.js";
import { checkBase } from "./set-up-base.js";
import { checkSwitches } from "./set-up-switches.js";

export type SetUpReading =
  | { readonly ok: true; readonly setUp: BaseSetUp }
  | { readonly ok: false; readonly issues: readonly DocumentIssue[] };

/** Reads a base, as text or as a value. Every fault is named at once, with its place. */
export function readBaseSetUp(source: unknown): SetUpReading {
  const json = jsonOf(source);
  if (!json.ok) return { ok: false, issues: [json.issue] };
  const document = json.value;
  if (!isRecord(document)) return { ok: false, issues: [issueAt([], "an object", document)] };
  const version = document.soakline_base;
  if (typeof version === "number" && version > VERSION) {
    const expected = `${VERSION} or less: the document is of a newer program`;
    return { ok: false, issues: [issueAt(["soakline_base"], expected, version)] };
  }
  const findings = newFindings();
  const sections = sectionsBy(baseSetUpSchema, document, findings);
  checkBase(sections, findings);
  checkAircraft(sections, findings);
  checkSwitches(sections, findings);
  if (findings.issues.length > 0) return { ok: false, issues: findings.issues };
  return { ok: true, setUp: sections as BaseSetUp };
}

const VERSION = 1;
