import type { Configuration, PartName } from "../aircraft/index.js";
import type { ReadWinter } from "../documents/index.js";
import { posteriorFor } from "../learning/index.js";
import { allCriteria } from "../readiness/index.js";
import { createForcing, type Draws } from "../simulation/index.js";
import { solve } from "../solver/index.js";
import { shutDownTemps } from "../starting/index.js";
import { type WeatherSeries, weatherAt } from "../weather/index.js";
import { STRIPPED } from "./cold-case.js";
import { createGroups, type Surrounding } from "./groups.js";
import { unplugBeforeOf } from "./heater-limits.js";
import type { HeaterSchedule } from "./heater-schedule.js";
import { drawnMembers, inKnownWeather } from "./members.js";
import { monthNames } from "./months.js";
import { readinessOf } from "./readiness-count.js";
import { createSeasonTally, type SeasonTally } from "./season-tally.js";
import { thinnedWeather } from "./season-weather.js";
import { SeasonFailure, toleranceOf, WINTER_TOLERANCE } from "./tolerance.js";

export interface SeasonRequest {
  readonly read: ReadWinter;
  /** Index of the kit among those of the study. */
  readonly kit: number;
  readonly weather: WeatherSeries;
  /** What each habit does, in the order of the results. */
  readonly schedules: readonly HeaterSchedule[];
  /** Every hour of the weather, at this tolerance [K]: for measuring what the usual economy costs. */
  readonly exact?: { readonly tolerance: number };
  /** Returning false stops; called at each departure with the share done [0..1]. */
  readonly onProgress?: ((done: number) => boolean) | undefined;
}

/** [s] spacing of what is kept between switchings, and the same where the usual economy is measured. */
const SAMPLE_STEP = 3600;
const EXACT_SAMPLE_STEP = 600;
/** [s] after a switching: well within what an element's few minutes leave to the error control. */
const FIRST_STEP = 200;
/** [s] stretches this short are tried in one step, for the error control to refuse. */
const ONE_STEP = 300;

function firstStepOf(duration: number): number {
  return duration <= ONE_STEP ? duration : FIRST_STEP;
}

/**
 * One winter of one kit: all habits and drawn aircraft in one ensemble through the same weather, from return to departure to
 * return. Those ready at a departure fly and come back warm through; the others stay where they are. Undefined when stopped.
 */
export function runSeason(request: SeasonRequest): SeasonTally[] | undefined {
  const { read, weather, schedules, exact, onProgress } = request;
  const { installation, departures, flightTime, coverOffBefore, start, end } = read;
  const choice = read.kits[request.kit]!;
  const { kit } = choice;
  const unplugBefore = unplugBeforeOf(kit, read.unplugBefore);
  const flights = departures.map((t) => ({ departure: t, back: t + flightTime }));
  const sampleStep = exact === undefined ? SAMPLE_STEP : EXACT_SAMPLE_STEP;
  const used = exact === undefined ? thinnedWeather(weather, flights) : weather;
  const drawn = studyMembers(read, request.kit, used);
  const groups = createGroups({ installation, kit, groups: schedules.length, draws: drawn });
  const { parts, members, draws } = groups;
  const around = new Array<Surrounding>(schedules.length).fill({
    forcing: forcingOf(read, request.kit, used),
    each: false,
  });
  const knots = used.time.map((t) => t - start);
  const criteria = allCriteria(installation, kit, read.limits);
  const tolerance = toleranceOf(parts, exact?.tolerance ?? WINTER_TOLERANCE);

  const all = (on: boolean, covered: boolean): Configuration => ({
    place: covered ? read.place : STRIPPED.place,
    heatersOn: new Set(on ? kit.heaters.map(({ id }) => id) : []),
    coversOn: new Set(covered ? kit.covers.map(({ id }) => id) : []),
  });
  const parked = { on: all(true, true), off: all(false, true) };
  const stripped = all(false, false);
  const out = departures.map((t) => ({ from: t - coverOffBefore - start, to: t + flightTime - start }));
  const isOut = (t: number) => out.some(({ from, to }) => t >= from && t < to);
  const switches = schedules.map(({ on }) => {
    const edges = on.flatMap(({ from, to }) => [
      { at: from - start, on: true },
      { at: to - start, on: false },
    ]);
    return edges.sort((a, b) => a.at - b.at);
  });
  const unplugTimes = new Set(departures.map((t) => t - unplugBefore - start));
  const switchTimes = [
    ...new Set([
      ...switches.flatMap((edges) => edges.map(({ at }) => at)),
      ...out.flatMap(({ from: off, to: on }) => [off, on]),
      ...unplugTimes,
    ]),
  ].sort((a, b) => a - b);
  const isOn = switches.map((edges) => stepsOf(edges));
  const monthName = monthNames(read.zone);
  const tallies = schedules.map((own, g) =>
    createSeasonTally({
      read,
      choice,
      groups,
      group: g,
      around,
      heated: parked.on,
      schedules: own,
      exact: exact !== undefined,
      monthName,
    }),
  );

  let nextKnot = 0;
  let state: Float64Array = coldStart();
  let unplugged = state;
  let from = 0;
  for (let i = 0; i <= departures.length; i++) {
    const departure = (departures[i] ?? end) - start;
    unplugged = state;
    advance(from, departure, (times, samples) => {
      const outside = outsideAt(times);
      for (const tally of tallies) tally.parked(times, samples, outside);
    });
    if (i === departures.length) break;
    const back = Math.min(departure + flightTime, end - start);
    const ready = tallies.map((tally, g) => {
      const readiness = readinessOf(criteria, groups, g, state, unplugged);
      tally.departure(i, readiness);
      return readiness.ready;
    });
    if (ready.some((own) => own.includes(0)) && back > departure) {
      advance(departure, back, (times, samples) => {
        const outside = outsideAt(times);
        tallies.forEach((tally, g) => {
          if (ready[g]![0] === 0) tally.parked(times, samples, outside);
        });
      });
    }
    land(ready, back);
    tallies.forEach((tally, g) => {
      if (ready[g]![0] === 1) tally.returned();
    });
    from = back;
    if (from >= end - start) break;
    if (onProgress?.((i + 1) / (departures.length + 1)) === false) return undefined;
  }
  for (const tally of tallies) tally.close();
  return tallies;

  /**
   * Through the weather from `a` to `b`, from switching to switching: each begins with a step of its own, which saves the many
   * small ones by which the solver would feel its way into a jump it knows nothing of.
   */
  function advance(a: number, b: number, take: (times: Float64Array, samples: Float64Array) => void): void {
    const edges = [a, ...switchTimes.filter((t) => t > a && t < b), b];
    for (let e = 1; e < edges.length; e++) {
      const [left, right] = [edges[e - 1]!, edges[e]!];
      const grid: number[] = [];
      for (let t = sampleStep * Math.ceil((left + 1) / sampleStep); t < right; t += sampleStep) grid.push(t);
      const times = Float64Array.from([left, ...grid, right]);
      const bare = isOut(left);
      const own = isOn.map((on) => (bare ? stripped : on(left) ? parked.on : parked.off));
      const result = solve({
        system: groups.system,
        initial: state,
        start: left,
        end: right,
        tolerance,
        jumps: knotsBetween(left, right),
        isKink: () => true,
        sampleTimes: times,
        firstStep: exact === undefined ? firstStepOf(right - left) : Math.min(1, right - left),
        onStretch: (t, until) => groups.hold(own, around, t, until),
      });
      if (result.status !== "completed") throw new SeasonFailure(`${result.status}: ${result.remedy}`);
      state = result.state;
      if (unplugTimes.has(right)) unplugged = state;
      take(times, result.samples);
    }
  }

  /** Asked for stretches in turn. */
  function knotsBetween(a: number, b: number): Float64Array {
    while (nextKnot < knots.length && knots[nextKnot]! <= a) nextKnot++;
    const first = nextKnot;
    while (nextKnot < knots.length && knots[nextKnot]! < b) nextKnot++;
    return knots.subarray(first, nextKnot);
  }

  function outsideAt(times: Float64Array) {
    const moments = Array.from(times, (t) => weatherAt(weather, start + t));
    return {
      tempAir: Float64Array.from(moments, (m) => m.tempAir),
      tempDewPoint: Float64Array.from(moments, (m) => Math.min(m.tempDewPoint, m.tempAir)),
    };
  }

  function coldStart(): Float64Array {
    const temp = read.place === "hangar" ? read.site.tempHangar : weather.tempAir[0]!;
    return new Float64Array(parts.length * members).fill(temp);
  }

  /** Aircraft that flew stand there again as just shut down. */
  function land(ready: readonly Uint8Array[], back: number): void {
    const air = weatherAt(weather, Math.min(start + back, end)).tempAir;
    const temps = shutDownTemps(installation, air);
    const landed = Float64Array.from(state);
    parts.forEach((part, i) => {
      const temp = temps.get(part as PartName) ?? air;
      ready.forEach((own, g) => {
        for (let d = 0; d < draws; d++) if (own[d] === 1) landed[i * members + g * draws + d] = temp;
      });
    });
    state = landed;
  }
}

/** Aircraft of a study with one of its kits, the middle one first. */
function studyMembers(read: ReadWinter, kit: number, weather: WeatherSeries): Draws {
  return inKnownWeather(
    drawnMembers({ ...read.ensemble, posterior: posteriorOf(read, kit) }, weather, undefined),
    weather,
  );
}

/** What was learned, as far as it holds for how a kit heats and covers. */
export function posteriorOf(read: ReadWinter, kit: number) {
  if (read.learned === undefined) return undefined;
  const { heaters, covers } = read.kits[kit]!.kit;
  const setting = { place: read.place, covers: covers.map(({ id }) => id).sort() };
  return posteriorFor(read.learned, { setting, heaters: heaters.map(({ id }) => id) });
}

function forcingOf(read: ReadWinter, kit: number, weather: WeatherSeries) {
  const { installation, site, start, end } = read;
  const one: Draws = {
    members: 1,
    multipliers: new Map(),
    initialOffset: new Float64Array(1),
    weather: {
      members: 1,
      tempOffset: new Float64Array(weather.time.length),
      windFactor: new Float64Array(weather.time.length).fill(1),
      cloudOffset: new Float64Array(weather.time.length),
    },
  };
  return createForcing(
    {
      ...{ installation, site, weather, start, kit: read.kits[kit]!.kit },
      duration: end - start,
      initial: { configuration: STRIPPED, temps: new Map(), tempOthers: 273.15, sd: 0 },
      events: [],
    },
    one,
  );
}

/** Whether a switch is on at a time, looked up in ascending order of asking or not. */
function stepsOf(edges: readonly { readonly at: number; readonly on: boolean }[]): (t: number) => boolean {
  return (t) => {
    let low = 0;
    let high = edges.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (edges[middle]!.at <= t) low = middle + 1;
      else high = middle;
    }
    return low > 0 && edges[low - 1]!.on;
  };
}
