import { isElementPart } from "../aircraft/index.js";
import type { ProbePlace, TemperatureLog } from "./log.js";

/** What is known beforehand of a probe on a part. */
export interface Sensor {
  readonly name: string;
  readonly place: ProbePlace;
  /** [K] standard deviation of one reading around what the probe itself feels. */
  readonly noise: number;
  /** [K] lasting error, reading less part: calibration, and how well it touches the part. */
  readonly offset: number;
  /** [K] standard deviation of what is not known of the offset. */
  readonly offsetSd: number;
  /** [s] time constant with which it follows, median of a log-normal prior. */
  readonly lag: number;
  /** Standard deviation of ln(lag). */
  readonly lagLogSd: number;
}

/**
 * Project judgement: cheap semiconductor or thermocouple probes taped or clamped on are off by 1-2 K, scatter by half a
 * kelvin with their logger's rounding, and follow within about a minute.
 */
export const USUAL_SENSOR = { noise: 0.5, offset: 0, offsetSd: 1.5, lag: 60, lagLogSd: 0.7 } as const;

/** What the user knows better of a probe, by its name. */
export type SensorKnowledge = Readonly<Record<string, Partial<Omit<Sensor, "name" | "place">>>>;

/** A log's probes that sit on parts; those that measure air drive the model instead. */
export function sensorsOf(log: TemperatureLog, knowledge: SensorKnowledge = {}): Sensor[] {
  for (const name of Object.keys(knowledge)) {
    if (!log.probes.some((probe) => probe.name === name)) {
      throw new RangeError(
        `unknown probe: ${name} (expected one of ${log.probes.map((p) => p.name).join(", ")})`,
      );
    }
  }
  return log.probes
    .filter(({ place }) => typeof place === "object")
    .map(({ name, place }) => checkedSensor({ name, place, ...USUAL_SENSOR, ...knowledge[name] }));
}

export function checkedSensor(sensor: Sensor): Sensor {
  for (const key of ["noise", "lag"] as const) {
    if (!(sensor[key] > 0)) {
      throw new RangeError(`invalid ${key} of probe ${sensor.name}: ${sensor[key]} (expected above 0)`);
    }
  }
  if (!Number.isFinite(sensor.offset)) {
    throw new RangeError(`invalid offset of probe ${sensor.name}: ${sensor.offset} (expected a number)`);
  }
  for (const key of ["offsetSd", "lagLogSd"] as const) {
    if (!(sensor[key] >= 0)) {
      throw new RangeError(`invalid ${key} of probe ${sensor.name}: ${sensor[key]} (expected 0 or more)`);
    }
  }
  return sensor;
}

/** Rows of the parts a probe feels; with several of them it feels their mean. */
export type Reach = readonly number[];

/** Names that stand for several parts or another one, as in scenario documents. */
export const ALIASES: Readonly<Record<string, readonly string[]>> = {
  heads: ["heads_front", "heads_rear"],
  cylinders: ["barrels"],
};

/** Parts that a probe on `part` feels, as rows of `parts`; `heater_surface` where there is just one element. */
export function reachOf(part: string, parts: readonly string[]): Reach {
  const elements = parts.filter(isElementPart);
  const names = part === "heater_surface" && elements.length === 1 ? elements : (ALIASES[part] ?? [part]);
  return names.map((name) => {
    const row = parts.indexOf(name);
    if (row < 0) {
      throw new RangeError(
        `unknown part: ${part} (expected one of ${[...Object.keys(ALIASES), ...parts].join(", ")})`,
      );
    }
    return row;
  });
}

/**
 * What a probe of time constant τ shows of temperatures T at ascending times: dm/dt = (T - m)/τ, exact for T linear
 * between the times, begun in balance: m' = T' - s τ + (m - T + s τ) e^(-Δ/τ) with the slope s.
 */
export function followed(time: ArrayLike<number>, temps: Float64Array, lag: number): Float64Array {
  const shown = new Float64Array(temps.length);
  shown[0] = temps[0];
  for (let k = 1; k < temps.length; k++) {
    shown[k] = followedStep(shown[k - 1], temps[k - 1], temps[k], time[k] - time[k - 1], lag);
  }
  return shown;
}

/** One step of it: shown at the end, from shown at the start and the temperatures at both ends of `span` [s]. */
export function followedStep(shown: number, from: number, to: number, span: number, lag: number): number {
  const behind = ((to - from) / span) * lag;
  return to - behind + (shown - from + behind) * Math.exp(-span / lag);
}
