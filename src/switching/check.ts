import { type DocumentIssue, issueAt, type Path } from "../documents/index.js";
import { type SwitchDescription, sendsOnTime } from "./description.js";
import { type ProbeVia, probeProtocol, switchProtocol } from "./protocols/index.js";
import { ON_TIME_PLACE } from "./protocols/shared.js";
import { CONFIRM_DEFAULT_S, offMarginS, switchRules } from "./rules.js";

/** What is wrong with a switch beyond the shape of its description: what could not be made safe is refused. */
export function checkSwitch(of: SwitchDescription, path: Path): DocumentIssue[] {
  return [...onTimeIssues(of, path), ...switchProtocol(of.via).issues(of.via, [...path, "via"])];
}

export function checkProbe({ via }: { readonly via?: ProbeVia }, path: Path): DocumentIssue[] {
  return via === undefined ? [] : probeProtocol(via).issues(via, [...path, "via"]);
}

function onTimeIssues(of: SwitchDescription, path: Path): DocumentIssue[] {
  const issues: DocumentIssue[] = [];
  const { on_time_s: onTimeS, via } = of;
  const at = [...path, "on_time_s"];
  const confirmS = of.confirm_within_s ?? CONFIRM_DEFAULT_S;
  if (onTimeS === undefined) {
    if (!switchProtocol(via).hasLastWill) {
      const expected = `the time after which the device itself goes off: over plain ${via.kind.toUpperCase()} nobody switches it off when the server dies`;
      issues.push(issueAt(at, expected, undefined));
    }
    if (sendsOnTime(via))
      issues.push(issueAt(at, `a number, since the on command says ${ON_TIME_PLACE}`, undefined));
    return issues;
  }
  if (onTimeS < 3 * confirmS) {
    const expected = `at least three times confirm_within_s (${3 * confirmS} s), to be renewed in time`;
    issues.push(issueAt(at, expected, onTimeS));
  }
  const rules = switchRules(of, []);
  const longestS = rules.longestOnS - offMarginS(rules);
  if (!rules.sendsOnTime && onTimeS >= longestS) {
    const expected = `less than longest_on_min and the time to go off (${longestS} s), or an on command that says ${ON_TIME_PLACE}`;
    issues.push(issueAt(at, expected, onTimeS));
  }
  return issues;
}
