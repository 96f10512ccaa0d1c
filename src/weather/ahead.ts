import { finding } from "../findings/index.js";
import { ASSUMED_CLOUD, ASSUMED_DEPRESSION, ASSUMED_WIND } from "./cautious.js";
import { bridged, holesOf } from "./gaps.js";
import type { MetarReport } from "./metar.js";
import type { WeatherAssumption } from "./series.js";
import type { TafReport } from "./taf-report.js";
import { cautiousChanges, tafConditionsAt } from "./taf-timeline.js";

/** What `combineForecast` has sorted out before it lays the quantities along the time axis. */
export interface Horizon {
  /** Of one station, oldest first, each with an air temperature. */
  readonly observations: readonly MetarReport[];
  /** In force after the readings end. */
  readonly taf: TafReport | undefined;
  /** [s since epoch]: up to here readings count, from here on forecasts. */
  readonly presentEnd: number;
  readonly until: number;
}

export type ForecastQuantity = "windSpeed" | "cloudCover";

const ASSUMED: Readonly<Record<ForecastQuantity, number>> = {
  windSpeed: ASSUMED_WIND,
  cloudCover: ASSUMED_CLOUD,
};
/** Of two values the one that cools more. */
const COOLER: Readonly<Record<ForecastQuantity, (a: number, b: number) => number>> = {
  windSpeed: Math.max,
  cloudCover: Math.min,
};

/**
 * A quantity after the readings: from the TAF while it is in force, before that the cooler of the last reading and
 * the TAF's beginning, else the cooler of the last known value and the assumption.
 */
export function aheadAt(horizon: Horizon, quantity: ForecastQuantity, time: number): number {
  const { taf, observations } = horizon;
  const cooler = COOLER[quantity];
  const assumed = ASSUMED[quantity];
  const read = observations.findLast((report) => report[quantity] !== undefined)?.[quantity];
  if (taf === undefined) return cooler(read ?? assumed, assumed);
  const inForce = Math.min(Math.max(time, taf.from), taf.to);
  const forecast = tafConditionsAt(taf, inForce)[quantity] ?? assumed;
  if (time < taf.from) return cooler(read ?? forecast, forecast);
  return time > taf.to ? cooler(forecast, assumed) : forecast;
}

/** Wind or cloud at each time of the axis: as reported up to the last reading, `aheadAt` after it. */
export function quantityAlong(
  horizon: Horizon,
  quantity: ForecastQuantity,
  time: readonly number[],
  assumptions: WeatherAssumption[],
): number[] {
  const { observations, presentEnd, until } = horizon;
  const times = observations.map((report) => report.time);
  const values = observations.map((report) => report[quantity] ?? Number.NaN);
  const known = values.some((value) => !Number.isNaN(value));
  const filled = known ? bridged(times, values) : values.map(() => aheadAt(horizon, quantity, presentEnd));
  for (const { first, last } of holesOf(values)) {
    const instead = known ? "bridged" : horizon.taf === undefined ? "assumed" : "taf";
    const reports = last - first + 1;
    const text = finding("reports-missing", { quantity, reports, instead, wind_mps: ASSUMED_WIND });
    assumptions.push({ quantity, from: times[first]!, to: times[last]!, text });
  }
  if (presentEnd < until) assumptions.push(...aheadAssumptions(horizon, quantity));
  return time.map((t) => {
    const reading = times.indexOf(t);
    return reading < 0 ? aheadAt(horizon, quantity, t) : filled[reading]!;
  });
}

/** Dew point by its depression below the air: as reported, then kept from the last report. */
export function dewPointsAlong(
  horizon: Horizon,
  time: readonly number[],
  tempAir: readonly number[],
  assumptions: WeatherAssumption[],
): number[] {
  const { observations, presentEnd } = horizon;
  const from = time[0]!;
  const to = time.at(-1)!;
  // A dew point above the air by rounding counts as saturation.
  const depressions = observations.map((report) =>
    report.tempDewPoint === undefined ? Number.NaN : Math.max(0, report.tempAir! - report.tempDewPoint),
  );
  if (depressions.every(Number.isNaN)) {
    const text = finding("dew-point-assumed", { below_k: ASSUMED_DEPRESSION, by: "reports" });
    assumptions.push({ quantity: "tempDewPoint", from, to, text });
    return tempAir.map((air) => air - ASSUMED_DEPRESSION);
  }
  const times = observations.map((report) => report.time);
  const filled = bridged(times, depressions);
  const last = filled.at(-1)!;
  if (depressions.some(Number.isNaN)) {
    const text = finding("dew-points-bridged", {});
    assumptions.push({ quantity: "tempDewPoint", from, to: presentEnd, text });
  }
  if (presentEnd < to) {
    const text = finding("dew-point-kept", { below_k: last });
    assumptions.push({ quantity: "tempDewPoint", from: presentEnd, to, text });
  }
  return time.map((t, i) => tempAir[i]! - (filled[times.indexOf(t)] ?? last));
}

/** TEMPO and PROB groups that alter the series, as assumptions. */
export function passingAssumptions(horizon: Horizon): WeatherAssumption[] {
  const { taf, presentEnd, until } = horizon;
  if (taf === undefined) return [];
  return cautiousChanges(taf)
    .filter((change) => change.to > presentEnd && change.from < until)
    .flatMap((change) =>
      (["windSpeed", "cloudCover"] as const)
        .filter((quantity) => change.conditions[quantity] !== undefined)
        .map((quantity) => ({
          quantity,
          from: Math.max(change.from, presentEnd),
          to: Math.min(change.to, until),
          text: finding("change-taken-throughout", { group: change.text }),
        })),
    );
}

function aheadAssumptions(horizon: Horizon, quantity: ForecastQuantity): WeatherAssumption[] {
  const { taf, presentEnd, until } = horizon;
  const assumed = (when: "no-forecast" | "after-taf" | "until-named") =>
    finding("ahead-assumed", { quantity, when, wind_mps: ASSUMED_WIND });
  if (taf === undefined) {
    return [{ quantity, from: presentEnd, to: until, text: assumed("no-forecast") }];
  }
  const found: WeatherAssumption[] = [];
  const add = (from: number, to: number, text: WeatherAssumption["text"]) => {
    if (from < to) found.push({ quantity, from, to, text });
  };
  const begins = Math.min(taf.from, until);
  const ends = Math.min(taf.to, until);
  add(presentEnd, begins, finding("before-taf", {}));
  add(Math.max(ends, presentEnd), until, assumed("after-taf"));
  if (tafConditionsAt(taf, taf.from)[quantity] === undefined) {
    add(Math.max(begins, presentEnd), ends, assumed("until-named"));
  }
  return found;
}
