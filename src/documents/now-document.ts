import type { FilterEstimate, LogFinding } from "../learning/index.js";
import type { Verdict } from "../readiness/index.js";
import { type DrawnScenario, heatersUsed } from "../scenario/index.js";
import type { StartBriefing } from "../starting/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { criteriaDocument } from "./criterion-document.js";
import { findingDocument } from "./learning-document.js";
import type { NowDocument } from "./now-schema.js";
import { headerOf, rounded, stampOf } from "./result-header.js";
import { startDocument } from "./start-document.js";

/** What became of a probe's readings on the way to now. */
export interface ProbeUse {
  readonly name: string;
  readonly part: string;
  readonly readings: number;
  readonly leftAside: number;
}

/** Where every part stands, and what it was judged from. */
export interface NowReport {
  readonly estimate: FilterEstimate;
  readonly verdict: Verdict;
  readonly briefing: StartBriefing;
  readonly probes: readonly ProbeUse[];
  readonly logFindings: readonly LogFinding[];
}

/** Every part now and whether the engine may be started, as it is stored, exchanged and shown. */
export function nowDocument(
  { estimate, verdict, briefing, probes, logFindings }: NowReport,
  drawn: DrawnScenario,
): NowDocument {
  const celsius = (temp: number) => rounded(celsiusFromKelvin(temp), 2);
  return {
    ...headerOf(drawn, heatersUsed(drawn.read.scenario)),
    kind: "now",
    at: stampOf(drawn.read, estimate.time),
    chance: verdict.chance,
    weakest: verdict.weakest.criterion.id,
    criteria: criteriaDocument(verdict),
    start_briefing: startDocument(briefing),
    parts: Object.fromEntries(
      estimate.parts.map(({ part, low, mid, high }) => [
        part === "barrels" ? "cylinders" : part,
        { p05_c: celsius(low), p50_c: celsius(mid), p95_c: celsius(high) },
      ]),
    ),
    probes: probes.map(({ name, part, readings, leftAside }) => ({
      name,
      part,
      readings,
      left_aside: leftAside,
    })),
    deviations: estimate.findings.map(({ finding, probe, chance, believed, since }) => ({
      finding,
      ...(probe === undefined ? {} : { probe }),
      chance,
      believed,
      ...(since === undefined ? {} : { since: stampOf(drawn.read, since) }),
    })),
    log_findings: logFindings.map(findingDocument),
  };
}
