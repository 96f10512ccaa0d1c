import { finding } from "../findings/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { aheadAt, dewPointsAlong, type Horizon, passingAssumptions, quantityAlong } from "./ahead.js";
import { CARRY_LIMIT, GAP_LIMIT } from "./cautious.js";
import { type TemperatureCurve, temperatureCurve } from "./diurnal.js";
import type { MetarReport } from "./metar.js";
import type { WeatherAssumption, WeatherIssue, WeatherReading } from "./series.js";
import type { TafReport, TempPoint } from "./taf-report.js";
import { tafKnots } from "./taf-timeline.js";
import { requireEpoch, utcText } from "./time.js";

export interface ForecastInput {
  /** Any order; all those of the station of the latest are used, since a cold-soaked engine remembers past hours. */
  readonly observations: readonly MetarReport[];
  readonly taf?: TafReport | undefined;
  /** The user's own forecast lows and highs of the air, beside TN and TX of the TAF. */
  readonly lows?: readonly TempPoint[] | undefined;
  readonly highs?: readonly TempPoint[] | undefined;
  /** [s since epoch]: end of the series wanted. */
  readonly until: number;
}

/**
 * One hourly series out of what a pilot has at hand: readings (METAR), wind and sky ahead (TAF), air temperature
 * ahead (TN, TX and the user's own lows and highs; see `temperatureCurve`). It begins with the first reading, or with
 * the TAF where there is none, and reaches at most 24 h past the last source. All that no source says is taken on the
 * cautious side and listed.
 */
export function combineForecast(input: ForecastInput): WeatherReading {
  const { until } = input;
  requireEpoch("until", until);
  const warnings: WeatherIssue[] = [];
  const observations = usableObservations(input.observations, until, warnings);
  const latest = observations.at(-1);
  const taf = tafInForce(input.taf, latest, warnings);
  const start = observations[0]?.time ?? taf?.from;
  if (start === undefined) return refusal("reports", "a METAR with a temperature, or a TAF", "neither");
  if (!(until > start)) return refusal("until", `a time after ${utcText(start)}`, utcText(until));

  const horizon: Horizon = { observations, taf, presentEnd: latest?.time ?? start, until };
  const curve = temperatureCurve({
    reading: latest === undefined ? undefined : { time: latest.time, tempAir: latest.tempAir! },
    lows: [...(taf?.lows ?? []), ...(input.lows ?? [])],
    highs: [...(taf?.highs ?? []), ...(input.highs ?? [])],
    until,
    clearestSky: (from, to) => clearestSky(horizon, from, to),
  });
  if (curve === undefined) {
    return refusal("air temperature", "a METAR with a temperature, or a low (TN) before any high", "neither");
  }
  const reach = Math.max(horizon.presentEnd, taf?.to ?? start, curve.knots.at(-1)!) + CARRY_LIMIT;
  if (until > reach) {
    const limit = `at most ${CARRY_LIMIT / SECONDS_OF_HOUR} h after the last source: ${utcText(reach)}`;
    return refusal("until", limit, utcText(until));
  }
  warnings.push(...gapWarnings(observations, taf));
  const time = knotsOf(horizon, curve, start);
  const tempAir = airTemperatures(horizon, curve, time);
  const assumptions = [...curve.assumptions, ...placeAssumptions(horizon, curve, start)];
  const series = {
    time: Float64Array.from(time),
    tempAir: Float64Array.from(tempAir),
    windSpeed: Float64Array.from(quantityAlong(horizon, "windSpeed", time, assumptions)),
    tempDewPoint: Float64Array.from(dewPointsAlong(horizon, time, tempAir, assumptions)),
    cloudCover: Float64Array.from(quantityAlong(horizon, "cloudCover", time, assumptions)),
    // The curve starts from the last reading, so that its error grows from there.
    issued: latest?.time ?? taf?.issued ?? start,
    ...(curve.forecast ? {} : { tempBasis: "persistence" as const }),
    origin: originOf(latest, taf),
    assumptions: [...assumptions, ...passingAssumptions(horizon)],
  };
  return { ok: true, series, warnings };
}

/** [s since epoch] the latest end that `combineForecast` takes of these sources. */
export function forecastReach(input: Omit<ForecastInput, "until">): number {
  const { observations, taf, lows = [], highs = [] } = input;
  const times = [...observations, ...lows, ...highs, ...(taf?.lows ?? []), ...(taf?.highs ?? [])];
  return Math.max(taf?.to ?? Number.NEGATIVE_INFINITY, ...times.map(({ time }) => time)) + CARRY_LIMIT;
}

function usableObservations(
  all: readonly MetarReport[],
  until: number,
  warnings: WeatherIssue[],
): MetarReport[] {
  const sorted = all.filter((report) => report.time <= until).sort((a, b) => a.time - b.time);
  const station = sorted.findLast((report) => report.tempAir !== undefined)?.station;
  const leaveOut = (report: MetarReport, expected: string, received: string) => {
    warnings.push({ place: named(report), expected, received: `${received}, report left out` });
    return false;
  };
  const used = sorted.filter((report) => {
    if (report.tempAir === undefined) return leaveOut(report, "an air temperature", "none");
    return report.station === station || leaveOut(report, `station ${station}`, report.station);
  });
  // Of two at one time the later in the list stands.
  return used.filter((report, i) => report.time !== used[i + 1]?.time);
}

function tafInForce(
  taf: TafReport | undefined,
  latest: MetarReport | undefined,
  warnings: WeatherIssue[],
): TafReport | undefined {
  if (taf === undefined || latest === undefined || taf.to > latest.time) return taf;
  warnings.push({
    place: `TAF ${taf.station} ${utcText(taf.issued)}`,
    expected: `a forecast for after ${utcText(latest.time)}`,
    received: `validity until ${utcText(taf.to)}, TAF not used`,
  });
  return undefined;
}

function clearestSky(horizon: Horizon, from: number, to: number): number {
  let clearest = aheadAt(horizon, "cloudCover", to);
  for (let time = from; time < to; time += SECONDS_OF_HOUR) {
    clearest = Math.min(clearest, aheadAt(horizon, "cloudCover", time));
  }
  return clearest;
}

/** [s] after the end of a TAF by which its values have given way to the assumed ones. */
const HANDOVER = 60;

function knotsOf(horizon: Horizon, curve: TemperatureCurve, start: number): number[] {
  const { observations, taf, presentEnd, until } = horizon;
  const hours: number[] = [];
  const firstHour = Math.floor(presentEnd / SECONDS_OF_HOUR + 1) * SECONDS_OF_HOUR;
  for (let time = firstHour; time < until; time += SECONDS_OF_HOUR) hours.push(time);
  const tafTimes = taf === undefined ? [] : [taf.from, taf.to, taf.to + HANDOVER, ...tafKnots(taf)];
  const ahead = [...hours, ...curve.knots, ...tafTimes, until].filter(
    (time) => time > presentEnd && time <= until,
  );
  const readings = observations.length > 0 ? observations.map((report) => report.time) : [start];
  return [...new Set([...readings, ...ahead])].sort((a, b) => a - b);
}

function airTemperatures(horizon: Horizon, curve: TemperatureCurve, time: readonly number[]): number[] {
  const readings = new Map(horizon.observations.map((report) => [report.time, report.tempAir!]));
  const first = curve.knots[0]!;
  return time.map((t) => readings.get(t) ?? curve.at(Math.max(t, first)));
}

function gapWarnings(observations: readonly MetarReport[], taf: TafReport | undefined): WeatherIssue[] {
  const found: WeatherIssue[] = [];
  const note = (from: number, to: number, place: string, expected: string, how: string) => {
    if (to - from <= GAP_LIMIT) return;
    const length = ((to - from) / SECONDS_OF_HOUR).toFixed(1);
    found.push({ place, expected, received: `none for ${length} h, ${how}` });
  };
  observations.forEach((report, i) => {
    const before = observations[i - 1] ?? report;
    const place = `${named(before)} to ${named(report)}`;
    note(before.time, report.time, place, "a report at least every 3 h", "bridged by a straight line");
  });
  const latest = observations.at(-1);
  if (latest !== undefined && taf !== undefined) {
    const place = `${named(latest)} to the TAF`;
    note(latest.time, taf.from, place, "a report within 3 h before the TAF begins", "bridged by assumption");
  }
  return found;
}

function placeAssumptions(horizon: Horizon, curve: TemperatureCurve, start: number): WeatherAssumption[] {
  const { observations, taf, until } = horizon;
  const found: WeatherAssumption[] = [];
  const first = curve.knots[0]!;
  if (observations.length === 0 && first > start) {
    const text = finding("air-held-at-low", {});
    found.push({ quantity: "tempAir", from: start, to: first, text });
  }
  const station = observations.at(-1)?.station;
  if (station !== undefined && taf !== undefined && station !== taf.station) {
    const text = finding("taken-as-one-place", { readings: station, forecast: taf.station });
    found.push({ quantity: "tempAir", from: start, to: until, text });
  }
  return found;
}

function originOf(latest: MetarReport | undefined, taf: TafReport | undefined): string {
  return [
    ...(latest === undefined ? [] : [named(latest)]),
    ...(taf === undefined ? [] : [`TAF ${taf.station} ${utcText(taf.issued)}`]),
  ].join(", ");
}

function named(report: MetarReport): string {
  return `METAR ${report.station} ${utcText(report.time)}`;
}

function refusal(place: string, expected: string, received: string): WeatherReading {
  return { ok: false, issues: [{ place, expected, received }] };
}
