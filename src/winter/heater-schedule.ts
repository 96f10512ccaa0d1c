import type { Habit, KitChoice, ReadWinter } from "../documents/index.js";
import { createRandom } from "../numerics/index.js";
import { errorSd, FORECAST_ERROR, type WeatherSeries, weatherAt } from "../weather/index.js";
import { isAttended, leastOn, longestOn, unplugBeforeOf } from "./heater-limits.js";
import type { LeadTable } from "./lead-table.js";
import { forecastAge, plugInTime, WIDEST_PITCH } from "./switching.js";

/** Stretch [s since epoch] with the heaters on. */
export interface OnStretch {
  readonly from: number;
  readonly to: number;
}

/** What a habit does through a winter. */
export interface HeaterSchedule {
  readonly on: readonly OnStretch[];
  /** For each departure: not heated for, because the plan saw no chance worth the heat. */
  readonly givenUp: readonly boolean[];
}

/** Plans give a departure up whose chance is below this; project judgement. */
const GIVE_UP_BELOW = 0.2;

export function heaterScheduleOf(
  read: ReadWinter,
  choice: KitChoice,
  habit: Habit,
  forecasts: readonly Forecast[],
  table: LeadTable | undefined,
): HeaterSchedule {
  const { departures, flightTime, start, end } = read;
  const unplugBefore = unplugBeforeOf(choice.kit, read.unplugBefore);
  const [least, longest] = [leastOn(choice.kit), longestOn(choice.kit)];
  const unplugs = departures.map((t) => t - unplugBefore);
  const returns = departures.map((t) => t + flightTime);
  const never = departures.map(() => false);
  if (choice.kit.heaters.length === 0) return { on: [], givenUp: never };
  switch (habit.do) {
    case "always-on": {
      const on = [start, ...returns].map((from, i) => ({ from, to: unplugs[i] ?? end }));
      return { on: worthwhile(on), givenUp: never };
    }
    case "daily": {
      const on = habit.on.flatMap((from, i) => cutByFlights(from, habit.off[i]!, unplugs, returns));
      return { on: worthwhile(on), givenUp: never };
    }
    case "clock":
      return { on: worthwhile(leading(departures.map(() => habit.lead))), givenUp: never };
    case "planned": {
      if (table === undefined) throw new RangeError("missing table: a planned habit needs one");
      const found = forecasts.map(({ tempAir, windSpeed }) => table.at(tempAir, windSpeed));
      const givenUp = found.map(({ chance }) => chance < GIVE_UP_BELOW);
      const leads = found.map(({ lead }, i) => (givenUp[i] ? 0 : lead));
      return { on: worthwhile(leading(leads)), givenUp };
    }
  }

  /** Nobody plugs in for less than the heater's shortest time: straight after a flight the engine is warm. */
  function worthwhile(stretches: readonly OnStretch[]): OnStretch[] {
    return tidy(stretches).filter(({ from, to }) => to - from >= least);
  }

  /** Heat before each departure by its lead [s], no earlier than the return from the flight before. */
  function leading(leads: readonly number[]): OnStretch[] {
    return leads.flatMap((lead, i) => {
      if (lead <= unplugBefore) return [];
      const to = unplugs[i]!;
      const wanted = Math.max(departures[i]! - lead, to - longest);
      const plugIn = isAttended(choice.kit)
        ? wanted // Who stands by comes when it is wanted.
        : plugInTime(wanted, choice.switching, read.handHours);
      // By hand nobody is there between the last visit and the wanted time: that visit would break the longest time.
      if (to - plugIn > longest + WIDEST_PITCH) return [];
      return [{ from: Math.max(returns[i - 1] ?? start, to - longest, start, plugIn), to }];
    });
  }
}

/** What is known of the air before a departure. */
export interface Forecast {
  /** [K] */
  readonly tempAir: number;
  /** [m/s] at 10 m */
  readonly windSpeed: number;
}

/** [s] before departure over which the air is taken together. */
const LOOKED_AT = 12 * 3600;

/**
 * The forecast each departure is planned by: the mean of what the weather then was, with an error as forecasts of the
 * switch's age have it. The same draws for every kit, so that kits compare.
 */
export function forecastsOf(
  { departures, ensemble, place, site }: ReadWinter,
  choice: KitChoice,
  weather: WeatherSeries,
  year: number,
): Forecast[] {
  const random = createRandom(ensemble.seed).stream(`forecasts of winter ${year}`);
  const age = forecastAge(choice.switching);
  return departures.map((departure) => {
    const air = random.normal() * errorSd(FORECAST_ERROR.tempAir, age);
    const wind = Math.exp(random.normal() * errorSd(FORECAST_ERROR.windSpeed, age));
    if (place === "hangar") return { tempAir: site.tempHangar, windSpeed: 0 };
    const { tempAir, windSpeed } = meanBefore(weather, departure);
    return { tempAir: tempAir + air, windSpeed: windSpeed * wind };
  });
}

/** Means over the hours looked at before a departure. */
export function meanBefore(weather: WeatherSeries, departure: number): Forecast {
  const hours = Array.from({ length: 13 }, (_, h) =>
    weatherAt(weather, Math.max(weather.time[0]!, departure - (h * LOOKED_AT) / 12)),
  );
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
  return {
    tempAir: mean(hours.map((one) => one.tempAir)),
    windSpeed: mean(hours.map((one) => one.windSpeed)),
  };
}

/** A daily stretch without the time from unplugging to return of the flights in it. */
function cutByFlights(
  from: number,
  to: number,
  unplugs: readonly number[],
  returns: readonly number[],
): OnStretch[] {
  let parts: OnStretch[] = [{ from, to }];
  unplugs.forEach((unplug, i) => {
    const back = returns[i]!;
    if (back <= from || unplug >= to) return;
    parts = parts.flatMap((part) => [
      { from: part.from, to: Math.min(part.to, unplug) },
      { from: Math.max(part.from, back), to: part.to },
    ]);
  });
  return parts;
}

/** In order of time, without empty ones, joined where they touch. */
function tidy(stretches: readonly OnStretch[]): OnStretch[] {
  const out: OnStretch[] = [];
  for (const one of [...stretches].filter(({ from, to }) => to > from).sort((a, b) => a.from - b.from)) {
    const last = out.at(-1);
    if (last !== undefined && one.from <= last.to)
      out[out.length - 1] = { from: last.from, to: Math.max(last.to, one.to) };
    else out.push(one);
  }
  return out;
}
