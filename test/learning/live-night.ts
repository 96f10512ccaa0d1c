import {
  createLiveFilter,
  type FilterEstimate,
  type FilterState,
  type LiveFilter,
  type TemperatureLog,
} from "../../src/learning/index.js";
import { madeFleet, madeNight } from "../../src/learning/made-aircraft.js";
import type { Scenario, TimedChange } from "../../src/simulation/index.js";
import { every, HOUR, nextNight, probesOn } from "./example-night.js";

export const PAD = "sump-pad-220";
export const told = { ...nextNight(PAD, false), duration: 10 * HOUR };
export const COUNT = 6;
export const fleet = madeFleet(told, COUNT, 61);
export const STEP = 120;
export const times = every(STEP, 10 * HOUR);
export const probes = probesOn("oil", "heads");

/** What really happens beside what is told. */
export function truth(events: readonly TimedChange[], place: "ramp" | "hangar" = "ramp"): Scenario {
  const { initial } = told;
  return {
    ...told,
    initial: { ...initial, configuration: { ...initial.configuration, place } },
    events: [...told.events, ...events],
  };
}

export const nightOf = (scenario: Scenario) => madeNight(fleet, scenario, times, 62);
export const asTold = nightOf(told);
export const filter = createLiveFilter({ scenario: told, sensors: probes });

export function readingsAt(log: TemperatureLog, k: number): Map<string, number> {
  const entries = log.probes.map(({ name, temps }): [string, number] => [name, temps[k]]);
  return new Map(entries.filter(([, temp]) => !Number.isNaN(temp)));
}

/** Runs a filter through the rows of a log, looking at it where asked. */
export function run(
  log: TemperatureLog,
  look: (k: number, estimate: () => FilterEstimate, state: FilterState) => void = () => undefined,
  { live = filter, from = live.start(), rows = [...times.keys()].slice(1) }: Partial<Course> = {},
): FilterState {
  let state = from;
  for (const k of rows) {
    state = live.step(state, { time: log.time[k], readings: readingsAt(log, k) }).state;
    const now = state;
    look(k, () => live.estimate(now), now);
  }
  return state;
}

interface Course {
  readonly live: LiveFilter;
  readonly from: FilterState;
  readonly rows: readonly number[];
}

export const rowAt = (hours: number) => Math.round((hours * HOUR) / STEP);
