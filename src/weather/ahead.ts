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
const ASSUMED_TEXT: Readonly<Record<ForecastQuantity, string>> = {
  windSpeed: `wind taken as the larger of the last known and ${ASSUMED_WIND} m/s`,
  cloudCover: "sky taken as clear",
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
    const instead = known
      ? "bridged from the neighbouring reports"
      : `as ahead: ${aheadText(horizon, quantity)}`;
    const text = `${quantity} missing in reports (${last - first + 1}): ${instead}`;
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
    const text = `dew point taken ${ASSUMED_DEPRESSION} K below the air: reports give none`;
    assumptions.push({ quantity: "tempDewPoint", from, to, text });
    return tempAir.map((air) => air - ASSUMED_DEPRESSION);
  }
  const times = observations.map((report) => report.time);
  const filled = bridged(times, depressions);
  const last = filled.at(-1)!;
  if (depressions.some(Number.isNaN)) {
    const text = "dew point missing in some reports: depression bridged from the neighbouring reports";
    assumptions.push({ quantity: "tempDewPoint", from, to: presentEnd, text });
  }
  if (presentEnd < to) {
    const text = `dew point kept ${last.toFixed(1)} K below the air, as in the last report: sources give none ahead`;
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
          text: `${change.text}: taken to last throughout where it brings more wind or less cloud, since that cools more`,
        })),
    );
}

function aheadText(horizon: Horizon, quantity: ForecastQuantity): string {
  return horizon.taf === undefined ? ASSUMED_TEXT[quantity] : "taken from the TAF";
}

function aheadAssumptions(horizon: Horizon, quantity: ForecastQuantity): WeatherAssumption[] {
  const { taf, presentEnd, until } = horizon;
  const assumed = ASSUMED_TEXT[quantity];
  if (taf === undefined) {
    return [{ quantity, from: presentEnd, to: until, text: `no forecast: ${assumed}` }];
  }
  const found: WeatherAssumption[] = [];
  const add = (from: number, to: number, text: string) => {
    if (from < to) found.push({ quantity, from, to, text });
  };
  const begins = Math.min(taf.from, until);
  const ends = Math.min(taf.to, until);
  add(presentEnd, begins, `before the TAF begins: the cooler of the last reading and its beginning`);
  add(Math.max(ends, presentEnd), until, `after the TAF ends: ${assumed}`);
  if (tafConditionsAt(taf, taf.from)[quantity] === undefined) {
    add(Math.max(begins, presentEnd), ends, `until the TAF names a value: ${assumed}`);
  }
  return found;
}
