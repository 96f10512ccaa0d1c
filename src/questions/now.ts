import type { NowDocument } from "../documents/index.js";
import { sensorsOf, type TemperatureLog } from "../learning/index.js";
import type { AircraftScenario } from "../scenario/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { measuredAir } from "./learn.js";
import { begun, liveFilterOf, nowResult, runThrough } from "./live-filter.js";
import {
  completed,
  fromDocument,
  type Outcome,
  type QuestionOptions,
  refused,
  type Watched,
} from "./question.js";

/**
 * Where every part of the engine stands at the last reading of a log, and whether it may be started: the live filter run
 * from the scenario's start through all readings.
 */
export function nowFromDocument(
  source: unknown,
  log: TemperatureLog,
  options: QuestionOptions = {},
): Outcome<NowDocument> {
  return fromDocument(source, options, (asked) => nowFrom(asked, log, options));
}

function nowFrom(asked: AircraftScenario, log: TemperatureLog, watched: Watched): Outcome<NowDocument> {
  const { start, duration, initial } = asked.scenario;
  const sensors = sensorsOf(log);
  const rows = [...log.time.keys()].filter((k) => log.time[k] > start && log.time[k] - start <= duration);
  if (sensors.length === 0 || rows.length === 0) {
    return refused(
      "log",
      `readings of parts within the scenario's ${duration / SECONDS_OF_HOUR} h`,
      `${log.probes.length} columns and ${log.time.length} times of ${log.origin}`,
    );
  }
  const filter = liveFilterOf(asked, sensors);
  const steps = rows.map((k) => {
    const air = airAt(log, k, initial.configuration.place);
    return {
      time: log.time[k] - start,
      readings: readingsAt(log, k),
      ...(air === undefined ? {} : { air }),
    };
  });
  const run = runThrough(filter, begun(filter), steps, watched);
  if (run.status !== "completed") return run;
  const { state, tallies } = run.result;
  const told = {
    tallies,
    measuredAir: airAt(log, rows[rows.length - 1], "ramp"),
    logFindings: log.findings,
    assumptions: measuredAir(log),
  };
  return completed(nowResult(asked, filter, state, told));
}

function readingsAt(log: TemperatureLog, k: number): Map<string, number> {
  const readings = new Map<string, number>();
  for (const { name, place, temps } of log.probes) {
    if (typeof place === "object" && !Number.isNaN(temps[k])) readings.set(name, temps[k]);
  }
  return readings;
}

/** [K] of a probe in the air where the aircraft stands. */
function airAt(log: TemperatureLog, k: number, place: "ramp" | "hangar"): number | undefined {
  const wanted = place === "ramp" ? "outside-air" : "hangar-air";
  const temp = log.probes.find((p) => p.place === wanted)?.temps[k];
  return temp === undefined || Number.isNaN(temp) ? undefined : temp;
}
