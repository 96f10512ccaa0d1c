import type { ReadWinter } from "../documents/index.js";
import { allCriteria } from "../readiness/index.js";
import { type WeatherSeries, weatherAt } from "../weather/index.js";
import type { Surrounding } from "./group-inputs.js";
import { createGroups } from "./groups.js";
import type { HeaterSchedule } from "./heater-schedule.js";
import { monthNames } from "./months.js";
import { readinessOf } from "./readiness-count.js";
import { seasonForcing, studyMembers } from "./season-aircraft.js";
import { createSeasonCourse } from "./season-course.js";
import { createSeasonSwitching } from "./season-switching.js";
import { createSeasonTally, type SeasonTally } from "./season-tally.js";
import { thinnedWeather } from "./season-weather.js";
import type { Outside } from "./water-tally.js";

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

/**
 * One winter of one kit: all habits and drawn aircraft in one ensemble through the same weather, from return to departure to
 * return. Those ready at a departure fly and come back warm through; the others stay where they are. Undefined when stopped.
 */
export function runSeason(request: SeasonRequest): SeasonTally[] | undefined {
  const { read, weather, onProgress } = request;
  const { departures, flightTime } = read;
  const season = prepareSeason(request);
  const { course, tallies } = season;
  const end = read.end - read.start;
  const outside = (times: Float64Array) => outsideAt(weather, read.start, times);

  let from = 0;
  for (let i = 0; i <= departures.length; i++) {
    const departure = i === departures.length ? end : departures[i]! - read.start;
    course.startLeg();
    course.advance(from, departure, (times, samples) => {
      const air = outside(times);
      for (const tally of tallies) tally.parked(times, samples, air);
    });
    if (i === departures.length) break;
    const back = Math.min(departure + flightTime, end);
    const ready = season.countReady(i);
    if (ready.some((own) => own.includes(0)) && back > departure) {
      course.advance(departure, back, (times, samples) => {
        const air = outside(times);
        tallies.forEach((tally, g) => {
          if (ready[g]![0] === 0) tally.parked(times, samples, air);
        });
      });
    }
    course.land(ready, back);
    tallies.forEach((tally, g) => {
      if (ready[g]![0] === 1) tally.returned();
    });
    from = back;
    if (from >= end) break;
    if (onProgress?.((i + 1) / (departures.length + 1)) === false) return undefined;
  }
  for (const tally of tallies) tally.close();
  return tallies;
}

/** The ensemble of all habits, its course and a tally for each. */
function prepareSeason({ read, kit: kitIndex, weather, schedules, exact }: SeasonRequest) {
  const { installation, departures, flightTime } = read;
  const choice = read.kits[kitIndex]!;
  const { kit } = choice;
  const flights = departures.map((t) => ({ departure: t, back: t + flightTime }));
  const used = exact === undefined ? thinnedWeather(weather, flights) : weather;
  const drawn = studyMembers(read, kitIndex, used);
  const groups = createGroups({ installation, kit, groups: schedules.length, draws: drawn });
  const forcing = seasonForcing(read, kitIndex, used);
  const around = new Array<Surrounding>(schedules.length).fill({ forcing, each: false });
  const switching = createSeasonSwitching(read, kitIndex, schedules);
  const course = createSeasonCourse({ read, groups, around, switching, weather, knots: used.time, exact });
  const criteria = allCriteria(installation, kit, read.limits);
  const monthName = monthNames(read.zone);
  const tallies = schedules.map((own, g) =>
    createSeasonTally({
      read,
      choice,
      groups,
      group: g,
      around,
      heated: switching.heated,
      schedules: own,
      exact: exact !== undefined,
      monthName,
    }),
  );

  /** Tallies a departure; 1 for who is ready, by habit and draw. */
  function countReady(departure: number): Uint8Array[] {
    return tallies.map((tally, g) => {
      const readiness = readinessOf(criteria, groups, g, course.state(), course.unplugged());
      tally.departure(departure, readiness);
      return readiness.ready;
    });
  }

  return { course, tallies, countReady };
}

function outsideAt(weather: WeatherSeries, start: number, times: Float64Array): Outside {
  const moments = Array.from(times, (t) => weatherAt(weather, start + t));
  return {
    tempAir: Float64Array.from(moments, (m) => m.tempAir),
    tempDewPoint: Float64Array.from(moments, (m) => Math.min(m.tempDewPoint, m.tempAir)),
  };
}
