import { scenarioOf } from "../../base/index.js";
import type { BaseState } from "../../logbook/index.js";
import { createRandom, type Random } from "../../numerics/index.js";
import {
  createForcing,
  drawEnsemble,
  type EnsembleRun,
  prepareRun,
  sampleAt,
  type Timeline,
  trajectory,
} from "../../simulation/index.js";
import { celsiusFromKelvin } from "../../units/index.js";

/** What is done with an aircraft of the made world. */
export interface Doing {
  readonly place: "ramp" | "hangar";
  readonly coversOn: readonly string[];
  readonly heatersOn: readonly string[];
}

/** One invented aircraft as it truly is: one member drawn from the priors, in the weather as it truly comes. */
export interface MadeAircraft {
  /** [ms] since 1970 UTC up to which it has been carried. */
  readonly time: number;
  /** Carries it on to a later time [ms], at most to the end of the made weather. */
  advance(to: number, doing: Doing): void;
  /** [°C] what a probe there says now: with an error of its own that lasts, and a little noise. */
  probed(at: string, probe: string): number;
  /** [K] of every part, to go on from. */
  readonly temps: readonly number[];
}

/** [h] the made world reaches ahead. */
const HOURS = 40;
/** [K] standard deviations of a probe's lasting error and of its noise, kinder than those the estimate allows for. */
const OFFSET_SD = 0.7;
const NOISE_SD = 0.1;
/** [K] by which the hangar truly is warmer or colder than told. */
const HANGAR_SD = 0.5;

export interface Resumed {
  readonly time: number;
  readonly temps: readonly number[];
}

export function makeAircraft(
  state: BaseState,
  aircraftId: string,
  { now, seed, resumed }: { readonly now: number; readonly seed: number; readonly resumed?: Resumed },
): MadeAircraft {
  const told = scenarioOf(state, aircraftId, { now, from: "anchor", hours: HOURS });
  if (!told.ok) throw new Error(`${aircraftId}: ${told.reason}`);
  const { scenario } = told.aircraft;
  const random = createRandom(seed).stream(`made ${aircraftId}`);
  const draws = drawEnsemble({ members: 1, seed: seed + seedOf(aircraftId), weather: scenario.weather });
  const hangarError = HANGAR_SD * random.normal();
  const site = { ...scenario.site, tempHangar: scenario.site.tempHangar + hangarError };
  const run: EnsembleRun = prepareRun({ ...scenario, site }, draws);
  const forcing = createForcing(scenario, draws);
  const offsets = new Map<string, number>();
  const noise: Random = random.stream("noise");
  const parts = run.network.parts.map(({ name }) => name);
  const fits = resumed !== undefined && resumed.temps.length === run.initial.length;
  let at = fits ? Math.max(0, resumed.time / 1000 - scenario.start) : 0;
  let temps = fits ? Float64Array.from(resumed.temps) : run.initial.slice();

  const mean = (names: readonly string[]) =>
    names.reduce((sum, name) => sum + temps[parts.indexOf(name)] / names.length, 0);

  return {
    get time() {
      return (scenario.start + at) * 1000;
    },
    get temps() {
      return [...temps];
    },
    advance(to, { place, coversOn, heatersOn }) {
      const until = Math.min(to / 1000 - scenario.start, scenario.duration);
      if (!(until > at)) return;
      const configuration = { place, coversOn: new Set(coversOn), heatersOn: new Set(heatersOn) };
      const timeline: Timeline = [{ from: at, configuration }];
      const course = trajectory(run, { state: temps, timeline, sampleTimes: [at, until], tolerance: 0.02 });
      if (course.status !== "completed") throw new Error(`${course.status}: ${course.remedy}`);
      temps = sampleAt(course, until).slice();
      at = until;
    },
    probed(where, probe) {
      let offset = offsets.get(probe);
      if (offset === undefined) {
        offset = OFFSET_SD * createRandom(seed).stream(`probe ${aircraftId} ${probe}`).normal();
        offsets.set(probe, offset);
      }
      return celsiusFromKelvin(trueTemp(where)) + offset + NOISE_SD * noise.normal();
    },
  };

  function trueTemp(where: string): number {
    if (where === "outside_air") return forcing.tempAirAt(at, 0);
    if (where === "hangar_air") return site.tempHangar;
    if (where === "heads") return mean(["heads_front", "heads_rear"]);
    if (where === "cylinders") return mean(["barrels"]);
    if (where === "heater_surface")
      return Math.max(...parts.flatMap((name, i) => (name.startsWith("heater:") ? temps[i] : [])));
    return mean([where]);
  }
}

function seedOf(text: string): number {
  let sum = 0;
  for (const char of text) sum = (31 * sum + char.charCodeAt(0)) % 9973;
  return sum;
}
