import type { FilterEstimate, TemperatureLog } from "../learning/index.js";
import type { Verdict } from "../readiness/index.js";
import { startBriefing } from "../starting/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { criteriaDocument } from "./criterion-document.js";
import { findingDocument } from "./learning-document.js";
import type { NowDocument } from "./now-schema.js";
import { headerOf, heatersUsed, type ResultContext, rounded, stampOf } from "./result-header.js";
import { startDocument } from "./start-document.js";

/** What became of a probe's readings on the way to now. */
export interface ProbeUse {
  readonly name: string;
  readonly part: string;
  readonly readings: number;
  readonly leftAside: number;
}

/**
 * Every part now and whether the engine may be started, as it is stored, exchanged and shown.
 * @param tempAir [K] outside, now
 */
export function nowDocument(
  estimate: FilterEstimate,
  verdict: Verdict,
  probes: readonly ProbeUse[],
  log: TemperatureLog,
  tempAir: number,
  context: ResultContext,
): NowDocument {
  const celsius = (temp: number) => rounded(celsiusFromKelvin(temp), 2);
  return {
    ...headerOf(context, heatersUsed(context.read.scenario)),
    kind: "now",
    at: stampOf(context.read, estimate.time),
    chance: verdict.chance,
    weakest: verdict.weakest.criterion.id,
    criteria: criteriaDocument(verdict),
    start_briefing: startDocument(
      startBriefing(
        context.read.scenario.installation,
        new Map(estimate.parts.map(({ part, mid }) => [part, mid])),
        tempAir,
        context.read.batteryFitted,
      ),
    ),
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
      ...(since === undefined ? {} : { since: stampOf(context.read, since) }),
    })),
    log_findings: log.findings.map(findingDocument),
  };
}
