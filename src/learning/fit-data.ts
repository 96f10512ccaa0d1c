import type { Scenario } from "../simulation/index.js";
import { configurationAt, timelineOf } from "../simulation/index.js";
import type { MemberBatch } from "./fit-members.js";
import type { TemperatureLog } from "./log.js";
import type { Sensor } from "./sensor.js";
import { createWhitening, type Discrepancy, type Whitening } from "./sensor-noise.js";

/** Readings that a fit uses, on the times that it samples the model at. */
export interface FitData {
  /** [s] since the scenario's start, ascending. */
  readonly time: Float64Array;
  readonly probes: readonly ProbeData[];
  /** Times of the log that lie outside the scenario, or were passed over because a long log has more than enough. */
  readonly outside: number;
  readonly thinned: number;
}

interface ProbeData {
  readonly sensor: Sensor;
  /** [K] at each of the fit's times; NaN where there is none. */
  readonly readings: Float64Array;
  /** Positions of the readings among the times. */
  readonly rows: readonly number[];
  /** [K] by which the part stands off the air around the aircraft at each time with a reading, without its noise. */
  readonly rise: Float64Array;
}

/** Times that a fit samples at most; more of them would say the same again. */
const MOST_TIMES = 1000;

export function fitData(
  log: TemperatureLog,
  scenario: Scenario,
  batch: MemberBatch,
  sensors: readonly Sensor[],
): FitData {
  const columns = sensors.map(({ name }) => {
    const probe = log.probes.find((p) => p.name === name);
    if (probe === undefined) throw new RangeError(`unknown probe: ${name}`);
    return probe.temps;
  });
  const all = [...log.time.keys()].filter((k) => columns.some((temps) => !Number.isNaN(temps[k])));
  const inside = all.filter((k) => {
    const t = log.time[k] - scenario.start;
    return t >= 0 && t <= scenario.duration;
  });
  const stride = Math.ceil(inside.length / MOST_TIMES);
  const used = inside.filter((_, i) => i % stride === 0);
  const time = Float64Array.from(used, (k) => log.time[k] - scenario.start);
  const timeline = timelineOf(scenario.initial.configuration, scenario.events);
  const air = time.map((t) => batch.tempAirAt(configurationAt(timeline, t), t));
  const probes = sensors.map((sensor, p) => {
    const readings = Float64Array.from(used, (k) => columns[p][k]);
    const rows = [...readings.keys()].filter((k) => !Number.isNaN(readings[k]));
    const smooth = smoothed(time, readings, rows);
    const rise = readings.map((_, k) => smooth[k] - air[k]);
    return { sensor, readings, rows, rise };
  });
  return { time, probes, outside: all.length - inside.length, thinned: inside.length - used.length };
}

/** [s] to either side over which readings are averaged to see how far a part stands off the air. */
const SMOOTHED_OVER = 1800;

/**
 * Means of the readings around each used row. Taken from single readings, the size of the model's error would carry their
 * noise, and a fit far off could explain that noise away.
 */
function smoothed(time: Float64Array, readings: Float64Array, rows: readonly number[]): Float64Array {
  const means = new Float64Array(readings.length);
  let first = 0;
  let next = 0;
  let sum = 0;
  for (const row of rows) {
    for (; next < rows.length && time[rows[next]] <= time[row] + SMOOTHED_OVER; next++)
      sum += readings[rows[next]];
    for (; time[rows[first]] < time[row] - SMOOTHED_OVER; first++) sum -= readings[rows[first]];
    means[row] = sum / (next - first);
  }
  return means;
}

/** What is found out about the sizes of the errors while fitting, as factors on what was assumed. */
export interface ErrorScales {
  /** Of each probe's noise. */
  readonly noise: readonly number[];
  /** Of the model's own error. */
  readonly discrepancy: number;
  /** Of each reading's noise, by probe and time; outliers get large ones, and what the fit goes without `LEFT_OUT`. */
  readonly reading?: readonly Float64Array[];
}

export const LEFT_OUT = Number.POSITIVE_INFINITY;

export function whiteningOf(
  { time, probes }: FitData,
  discrepancy: Discrepancy,
  scales: ErrorScales,
): Whitening[] {
  return probes.map(({ sensor, rows: all, rise }, p) => {
    const rows = all.filter((row) => scales.reading?.[p][row] !== LEFT_OUT);
    return createWhitening(
      time,
      rows,
      rows.map((row) => sensor.noise * scales.noise[p] * (scales.reading?.[p][row] ?? 1)),
      rows.map((row) => scales.discrepancy * Math.hypot(discrepancy.floor, discrepancy.share * rise[row])),
      discrepancy.correlationTime,
    );
  });
}
