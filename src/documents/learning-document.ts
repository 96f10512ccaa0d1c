import type { AircraftFit, FittedAircraft, LogFinding, NextReadings } from "../learning/index.js";
import { reportOf, type TemperatureLog } from "../learning/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { learnedDocument } from "./learned-document.js";
import type { LearningDocument } from "./learning-schema.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { rounded, stampOf } from "./result-header.js";

/** What a log taught of an aircraft, as it is stored, exchanged and shown. */
export function learningDocument(
  fit: AircraftFit,
  log: TemperatureLog,
  learned: FittedAircraft,
  next: NextReadings,
  read: AircraftScenario,
): LearningDocument {
  const report = reportOf(fit);
  const { id, name: aircraft } = read.scenario.installation;
  return {
    soakline: SCENARIO_VERSION,
    kind: "learning",
    name: read.name,
    aircraft: { id, name: aircraft },
    zone: read.zone,
    log: {
      origin: log.origin,
      readings: report.readings,
      outside: report.outside,
      thinned: report.thinned,
      findings: log.findings.map(findingDocument),
    },
    multipliers: report.multipliers.map((m) => ({
      name: m.name,
      label: m.label,
      multiplier: rounded(m.multiplier, 3),
      within: rounded(m.within, 3),
      moved_sd: rounded(m.moved, 2),
      left: rounded(m.left, 3),
    })),
    untold: [...report.untold],
    suspicious: [...report.suspicious],
    probes: report.probes.map((p) => ({
      name: p.name,
      readings: p.readings,
      bias_k: rounded(p.bias, 2),
      rms_k: rounded(p.rms, 2),
      worst_k: rounded(p.worst.difference, 2),
      worst_at: stampOf(read, p.worst.at),
      coverage: rounded(p.coverage, 3),
      ...offsetAndLag(learned, p.name),
    })),
    discrepancy_scale: rounded(report.discrepancyScale, 2),
    next_readings: {
      sd_k: rounded(next.sd, 2),
      readings: next.readings.map(({ part, at, sdAfter }) => ({
        part,
        at: stampOf(read, at),
        sd_after_k: rounded(sdAfter, 2),
      })),
    },
    learned: learnedDocument(learned),
    assumptions: [...read.assumptions],
  };
}

function offsetAndLag({ evidence }: FittedAircraft, name: string) {
  const probe = evidence[evidence.length - 1].probes.find((p) => p.name === name);
  return { offset_k: rounded(probe?.offset ?? 0, 2), lag_s: rounded(probe?.lag ?? 0, 0) };
}

export function findingDocument({ kind, place, probe, expected, received, rejected }: LogFinding) {
  return { kind, place, ...(probe === undefined ? {} : { probe }), expected, received, rejected };
}
