import {
  type DocumentIssue,
  type NowDocument,
  nowDocument,
  type ProbeUse,
  type ReadScenario,
  usedKit,
} from "./documents/index.js";
import {
  createLiveFilter,
  sampledState,
  sensorsAsLearned,
  sensorsOf,
  type TemperatureLog,
} from "./learning/index.js";
import {
  drawnFrom,
  measuredAirText,
  type Outcome,
  type PipelineOptions,
  posteriorOf,
  scenarioFrom,
} from "./pipeline.js";
import { allCriteria, judge } from "./readiness/index.js";
import { weatherAt } from "./weather/index.js";

/** Cases that the verdict is counted over. */
const MEMBERS = 500;

/**
 * Where every part of the engine stands at the last reading of a log, and whether it may be started: the live filter run
 * from the scenario's start through all readings.
 */
export function nowFromDocument(
  source: unknown,
  log: TemperatureLog,
  options: PipelineOptions = {},
): Outcome<NowDocument> {
  const read = scenarioFrom(source, options);
  if (!read.ok) return { status: "refused", issues: read.issues };
  const { scenario, learned } = read;
  const given = sensorsOf(log);
  const sensors = learned === undefined ? given : sensorsAsLearned(given, learned);
  const rows = [...log.time.keys()].filter((k) => {
    const t = log.time[k] - scenario.start;
    return t > 0 && t <= scenario.duration;
  });
  if (sensors.length === 0 || rows.length === 0)
    return { status: "refused", issues: [nothingToJoin(read, log)] };
  const posterior = learned === undefined ? undefined : posteriorOf(read, learned);
  const filter = createLiveFilter({ scenario, sensors, ...(posterior === undefined ? {} : { posterior }) });
  const tallies = sensors.map(() => ({ readings: 0, leftAside: 0 }));
  let state = filter.start();
  let trouble: string | undefined;
  for (const [n, k] of rows.entries()) {
    if (options.onProgress?.(n / rows.length) === false) {
      return { status: "cancelled", message: "the estimate was stopped" };
    }
    const air = airAt(log, k, scenario.initial.configuration.place);
    const step = filter.step(state, {
      time: log.time[k] - scenario.start,
      readings: readingsAt(log, k),
      ...(air === undefined ? {} : { air }),
    });
    state = step.state;
    // A later reading may carry the state over it; what counts is whether the last one did.
    trouble = step.trouble;
    step.used.forEach((use, p) => {
      if (use !== "none") tallies[p].readings++;
      if (use === "gated" || use === "probe-out") tallies[p].leftAside++;
    });
  }
  if (trouble !== undefined) return { status: "failed", message: trouble };
  const lastAir = airAt(log, rows[rows.length - 1], "ramp");
  const tempAir = lastAir ?? weatherAt(scenario.weather, scenario.start + state.time).tempAir;
  const sample = sampledState(filter.layout, state, MEMBERS, read.ensemble.seed);
  const criteria = allCriteria(scenario.installation, usedKit(read), read.limits);
  const verdict = judge(criteria, { temps: sample.temps, parts: filter.layout.parts, members: MEMBERS });
  const probes = sensors.map(
    ({ name, place }, p): ProbeUse => ({
      name,
      part: typeof place === "object" ? place.part : place,
      ...tallies[p],
    }),
  );
  const context = drawnFrom({ ...read, assumptions: [...read.assumptions, ...measuredAirText(log)] });
  return {
    status: "completed",
    result: nowDocument(filter.estimate(state), verdict, probes, log, tempAir, context),
  };
}

function nothingToJoin(read: ReadScenario, log: TemperatureLog): DocumentIssue {
  const hours = read.scenario.duration / 3600;
  return {
    path: "log",
    expected: `readings of parts within the scenario's ${hours} h`,
    received: `${log.probes.length} columns and ${log.time.length} times of ${log.origin}`,
  };
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
