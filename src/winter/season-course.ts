import type { PartName } from "../aircraft/index.js";
import type { ReadWinter } from "../documents/index.js";
import { solve } from "../solver/index.js";
import { shutDownTemps } from "../starting/index.js";
import { type WeatherSeries, weatherAt } from "../weather/index.js";
import type { Surrounding } from "./group-inputs.js";
import type { Groups } from "./groups.js";
import type { SeasonSwitching } from "./season-switching.js";
import { SeasonFailure, toleranceOf, WINTER_TOLERANCE } from "./tolerance.js";

/** The temperatures of all habits' aircraft through a winter. Times [s] since its start. */
export interface SeasonCourse {
  /** [K] parts x members at the moment that was reached, and at the last unplugging. */
  state(): Float64Array;
  unplugged(): Float64Array;
  /** Until a moment of unplugging is passed, what stands now counts as the state at unplugging. */
  startLeg(): void;
  /** Through the weather from `from` to `to`, which are asked for in turn; gives each stretch that was integrated. */
  advance(from: number, to: number, onStretch: (times: Float64Array, samples: Float64Array) => void): void;
  /** Aircraft that flew (1, by group and draw) stand there again at `t` as just shut down. */
  land(flown: readonly Uint8Array[], t: number): void;
}

export interface SeasonCourseRequest {
  readonly read: ReadWinter;
  readonly groups: Groups;
  readonly around: readonly Surrounding[];
  readonly switching: SeasonSwitching;
  readonly weather: WeatherSeries;
  /** [s since epoch] of the weather that the forcing is made of. */
  readonly knots: Float64Array;
  readonly exact: { readonly tolerance: number } | undefined;
}

/** [s] spacing of what is kept between switchings, and the same where the usual economy is measured. */
const SAMPLE_STEP = 3600;
const EXACT_SAMPLE_STEP = 600;
/** [s] after a switching: well within what an element's few minutes leave to the error control. */
const FIRST_STEP = 200;
/** [s] stretches this short are tried in one step, for the error control to refuse. */
const ONE_STEP = 300;

export function createSeasonCourse(request: SeasonCourseRequest): SeasonCourse {
  const { read, groups, around, switching, weather, exact } = request;
  const { start, end } = read;
  const sampleStep = exact === undefined ? SAMPLE_STEP : EXACT_SAMPLE_STEP;
  const tolerance = toleranceOf(groups.parts, exact?.tolerance ?? WINTER_TOLERANCE);
  const knotsBetween = knotFinder(request.knots.map((t) => t - start));
  let state: Float64Array = coldStart(read, weather, groups);
  let unplugged = state;

  /** Without switching in between. */
  function integrate(from: number, to: number, times: Float64Array): Float64Array {
    const own = switching.configurationsFrom(from);
    const result = solve({
      system: groups.system,
      initial: state,
      start: from,
      end: to,
      tolerance,
      jumps: knotsBetween(from, to),
      isKink: () => true,
      sampleTimes: times,
      firstStep: exact === undefined ? firstStepOf(to - from) : Math.min(1, to - from),
      onStretch: (t, until) => groups.hold(own, around, t, until),
    });
    if (result.status !== "completed") throw new SeasonFailure(`${result.status}: ${result.remedy}`);
    state = result.state;
    return result.samples;
  }

  return {
    state: () => state,
    unplugged: () => unplugged,
    startLeg() {
      unplugged = state;
    },
    // From switching to switching: each begins with a step of its own, which saves the many small ones by which the solver
    // would feel its way into a jump it knows nothing of.
    advance(from, to, onStretch) {
      const edges = [from, ...switching.times.filter((t) => t > from && t < to), to];
      for (let e = 1; e < edges.length; e++) {
        const [left, right] = [edges[e - 1]!, edges[e]!];
        const times = sampleTimesBetween(left, right, sampleStep);
        const samples = integrate(left, right, times);
        if (switching.isUnplugTime(right)) unplugged = state;
        onStretch(times, samples);
      }
    },
    land(flown, t) {
      const air = weatherAt(weather, Math.min(start + t, end)).tempAir;
      state = landedState(read, groups, state, flown, air);
    },
  };
}

function firstStepOf(duration: number): number {
  return duration <= ONE_STEP ? duration : FIRST_STEP;
}

/** Gives the knots strictly within a stretch; stretches are asked for in turn. */
function knotFinder(knots: Float64Array): (from: number, to: number) => Float64Array {
  let next = 0;
  return (from, to) => {
    while (next < knots.length && knots[next]! <= from) next++;
    const first = next;
    while (next < knots.length && knots[next]! < to) next++;
    return knots.subarray(first, next);
  };
}

function sampleTimesBetween(left: number, right: number, step: number): Float64Array {
  const grid: number[] = [];
  for (let t = step * Math.ceil((left + 1) / step); t < right; t += step) grid.push(t);
  return Float64Array.from([left, ...grid, right]);
}

function coldStart(read: ReadWinter, weather: WeatherSeries, { parts, members }: Groups): Float64Array {
  const temp = read.place === "hangar" ? read.site.tempHangar : weather.tempAir[0]!;
  return new Float64Array(parts.length * members).fill(temp);
}

function landedState(
  { installation }: ReadWinter,
  { parts, members, draws }: Groups,
  state: Float64Array,
  flown: readonly Uint8Array[],
  tempAir: number,
): Float64Array {
  const temps = shutDownTemps(installation, tempAir);
  const landed = Float64Array.from(state);
  parts.forEach((part, i) => {
    const temp = temps.get(part as PartName) ?? tempAir;
    flown.forEach((own, g) => {
      for (let d = 0; d < draws; d++) if (own[d] === 1) landed[i * members + g * draws + d] = temp;
    });
  });
  return landed;
}
