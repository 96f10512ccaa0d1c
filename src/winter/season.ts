import type { Configuration, PartName } from "../aircraft/index.js";
import type { ReadWinter } from "../documents/index.js";
import { posteriorFor } from "../learning/index.js";
import { allCriteria } from "../readiness/index.js";
import { createForcing, type Draws } from "../simulation/index.js";
import { type SolveResult, solve } from "../solver/index.js";
import { shutDownTemps } from "../starting/index.js";
import { type WeatherSeries, weatherAt } from "../weather/index.js";
import { createGroups, type Surrounding } from "./groups.js";
import type { Happenings } from "./happenings.js";
import { STRIPPED } from "./lead-cases.js";
import { drawnMembers, inKnownWeather } from "./members.js";
import { readinessOf } from "./readiness-count.js";
import { createSeasonTally, type SeasonTally } from "./season-tally.js";
import { FINE_BEFORE, thinnedWeather } from "./season-weather.js";
import { SeasonFailure, toleranceOf, WINTER_TOLERANCE } from "./tolerance.js";

export interface SeasonRequest {
  readonly read: ReadWinter;
  /** Index of the kit among those of the study. */
  readonly kit: number;
  readonly weather: WeatherSeries;
  /** What each habit does, in the order of the results. */
  readonly happenings: readonly Happenings[];
  /** Every hour of the weather, at this tolerance [K]: for measuring what the usual economy costs. */
  readonly exact?: { readonly tolerance: number };
  /** Returning false stops; called at each departure with the share done [0..1]. */
  readonly onProgress?: ((done: number) => boolean) | undefined;
}

/** [s] spacing of what is kept between switchings. */
const SAMPLE_STEP = 1800;

/**
 * One winter of one kit: all habits and drawn aircraft in one ensemble through the same weather, from return to departure to
 * return. Those ready at a departure fly and come back warm through; the others stay where they are. Undefined when stopped.
 */
export function runSeason(request: SeasonRequest): SeasonTally[] | undefined {
  const { read, weather, happenings, exact, onProgress } = request;
  const { installation, departures, flightTime, unplugBefore, coverOffBefore, start, end } = read;
  const choice = read.kits[request.kit]!;
  const { kit } = choice;
  const fine = departures.map((t) => ({ from: t - FINE_BEFORE, to: t + flightTime }));
  const used = exact === undefined ? thinnedWeather(weather, fine) : weather;
  const drawn = studyMembers(read, request.kit, used);
  const groups = createGroups({ installation, kit, groups: happenings.length, draws: drawn });
  const { parts, members, draws } = groups;
  const around = new Array<Surrounding>(happenings.length).fill({
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
  const switches = happenings.map(({ on }) => {
    const edges = on.flatMap(({ from, to }) => [
      { at: from - start, on: true },
      { at: to - start, on: false },
    ]);
    return edges.sort((a, b) => a.at - b.at);
  });
  const isOn = switches.map((edges) => stepsOf(edges));
  const tallies = happenings.map((own, g) =>
    createSeasonTally({ read, kit, groups, group: g, around, heated: parked.on, happenings: own }),
  );

  let state: Float64Array = coldStart();
  let from = 0;
  for (let i = 0; i <= departures.length; i++) {
    const departure = (departures[i] ?? end) - start;
    const parkedFor = advance(from, departure);
    tallies.forEach((tally) => {
      tally.parked(parkedFor.times, parkedFor.result.samples, outsideAt(parkedFor.times));
    });
    state = parkedFor.result.state;
    if (i === departures.length) break;
    const back = Math.min(departure + flightTime, end - start);
    const unplugged = sampleAt(parkedFor, departure - unplugBefore);
    const ready = tallies.map((tally, g) => {
      const readiness = readinessOf(criteria, groups, g, state, unplugged);
      tally.departure(i, readiness);
      return readiness.ready;
    });
    if (ready.some((own) => own.includes(0)) && back > departure) {
      const waited = advance(departure, back);
      tallies.forEach((tally, g) => {
        if (ready[g]![0] === 0) tally.parked(waited.times, waited.result.samples, outsideAt(waited.times));
      });
      state = waited.result.state;
    }
    land(ready, back);
    tallies.forEach((tally, g) => {
      if (ready[g]![0] === 1) tally.returned();
    });
    from = back;
    if (from >= end - start) break;
    if (onProgress?.((i + 1) / (departures.length + 1)) === false) return undefined;
  }
  tallies.forEach((tally) => {
    tally.close();
  });
  return tallies;

  /** Through the weather from `a` to `b`, sampled every so often and wherever something is switched. */
  function advance(a: number, b: number): { readonly times: Float64Array; readonly result: SolveResult } {
    const inside = (t: number) => t > a && t < b;
    const switching = switches.flatMap((edges) => edges.map(({ at }) => at)).filter(inside);
    const covering = out.flatMap(({ from: off, to: on }) => [off, on]).filter(inside);
    const jumps = [...new Set([...switching, ...covering, ...knots.filter(inside)])].sort((x, y) => x - y);
    const grid: number[] = [];
    for (let t = SAMPLE_STEP * Math.ceil((a + 1) / SAMPLE_STEP); t < b; t += SAMPLE_STEP) grid.push(t);
    const marks = departures.map((t) => t - unplugBefore - start).filter(inside);
    const times = Float64Array.from(new Set([a, ...grid, ...switching, ...covering, ...marks, b])).sort();
    const result = solve({
      system: groups.system,
      initial: state,
      start: a,
      end: b,
      tolerance,
      jumps,
      sampleTimes: times,
      onStretch: (t, until) => {
        const bare = isOut(t);
        const own = isOn.map((on) => (bare ? stripped : on(t) ? parked.on : parked.off));
        groups.hold(own, around, t, until);
      },
    });
    if (result.status !== "completed") throw new SeasonFailure(`${result.status}: ${result.remedy}`);
    return { times, result };
  }

  function outsideAt(times: Float64Array) {
    const moments = Array.from(times, (t) => weatherAt(weather, start + t));
    return {
      tempAir: Float64Array.from(moments, (m) => m.tempAir),
      tempDewPoint: Float64Array.from(moments, (m) => Math.min(m.tempDewPoint, m.tempAir)),
    };
  }

  function sampleAt({ times, result }: ReturnType<typeof advance>, t: number): Float64Array {
    const s = times.indexOf(t);
    // A departure so soon after a return that there was no time to unplug: then what stands at its beginning counts.
    const size = parts.length * members;
    return result.samples.subarray(Math.max(0, s) * size, (Math.max(0, s) + 1) * size);
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
export function studyMembers(read: ReadWinter, kit: number, weather: WeatherSeries): Draws {
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
