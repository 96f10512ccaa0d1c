import { eachOnce } from "../findings/index.js";
import type { AircraftFit, FittedAircraft, LogFinding, NextReadings } from "../learning/index.js";
import { reportOf, type TemperatureLog } from "../learning/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { learnedDocument } from "./learned-document.js";
import type { LearningDocument } from "./learning-schema.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { rounded, stampOf } from "./result-header.js";

/**
 * What a log taught of an aircraft, as it is stored, exchanged and shown.
 * @param fits of each stretch of the log, each with what the former taught
 */
export function learningDocument(
  fits: readonly [AircraftFit, ...AircraftFit[]],
  log: TemperatureLog,
  learned: FittedAircraft,
  next: NextReadings,
  read: AircraftScenario,
): LearningDocument {
  const reports = fits.map((fit) => ({ fit, report: reportOf(fit) }));
  const { report: last } = reports[reports.length - 1];
  const readings = sum(reports, ({ report }) => report.readings);
  const thinned = sum(reports, ({ report }) => report.thinned);
  const { id, name: aircraft } = read.scenario.installation;
  const zero = read.scenario.start;
  return {
    soakline: SCENARIO_VERSION,
    kind: "learning",
    name: read.name,
    aircraft: { id, name: aircraft },
    zone: read.zone,
    log: {
      origin: log.origin,
      readings,
      outside: timesOf(log) - thinned - sum(reports, ({ fit }) => fit.data.time.length),
      thinned,
      findings: log.findings.map(findingDocument),
      columns: (log.taken ?? []).map(({ as, unitBy, ...rest }) => ({
        ...rest,
        as: typeof as === "object" ? as.part : as,
        ...(unitBy === undefined ? {} : { unit_by: unitBy }),
      })),
      ...(log.engine === undefined ? {} : { engine: log.engine }),
    },
    multipliers: last.multipliers.map((m) => ({
      name: m.name,
      label: m.label,
      multiplier: rounded(m.multiplier, 3),
      within: rounded(m.within, 3),
      moved_sd: rounded(m.moved, 2),
      left: rounded(m.left, 3),
    })),
    untold: [...last.untold],
    suspicious: eachOnce(reports.flatMap(({ report }) => report.suspicious)),
    probes: reports.flatMap(({ fit, report }, n) =>
      report.probes.map((p) => ({
        name: p.name,
        ...(fit.scenario.start === zero ? {} : { cooling_since: stampOf(read, fit.scenario.start - zero) }),
        readings: p.readings,
        bias_k: rounded(p.bias, 2),
        rms_k: rounded(p.rms, 2),
        worst_k: rounded(p.worst.difference, 2),
        worst_at: stampOf(read, fit.scenario.start - zero + p.worst.at),
        coverage: rounded(p.coverage, 3),
        ...offsetAndLag(learned, learned.evidence.length - fits.length + n, p.name),
      })),
    ),
    contradictions: reports.flatMap(({ fit, report }) =>
      report.probes.flatMap(({ name, contradicts }) => {
        if (contradicts === undefined) return [];
        const { count, at, reading, model } = contradicts;
        return [
          {
            probe: name,
            readings: count,
            at: stampOf(read, fit.scenario.start - zero + at),
            reading_c: rounded(celsiusFromKelvin(reading), 1),
            model_c: rounded(celsiusFromKelvin(model), 1),
          },
        ];
      }),
    ),
    discrepancy_scale: rounded(Math.max(...reports.map(({ report }) => report.discrepancyScale)), 2),
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

function sum<T>(all: readonly T[], value: (one: T) => number): number {
  return all.reduce((total, one) => total + value(one), 0);
}

/** Times at which a probe on a part has a reading. */
function timesOf({ time, probes }: TemperatureLog): number {
  const onParts = probes.filter(({ place }) => typeof place === "object");
  return sum([...time.keys()], (k) => (onParts.some(({ temps }) => !Number.isNaN(temps[k])) ? 1 : 0));
}

function offsetAndLag({ evidence }: FittedAircraft, at: number, name: string) {
  const probe = evidence[at].probes.find((p) => p.name === name);
  return { offset_k: rounded(probe?.offset ?? 0, 2), lag_s: rounded(probe?.lag ?? 0, 0) };
}

export function findingDocument({ kind, place, probe, expected, received, rejected }: LogFinding) {
  return { kind, place, ...(probe === undefined ? {} : { probe }), expected, received, rejected };
}
