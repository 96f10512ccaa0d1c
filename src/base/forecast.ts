import { issueText, type Notes, newNotes, reachOfWeather, weatherOf } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import type { BaseState, EventOf } from "../logbook/index.js";
import type { WeatherSeries } from "../weather/index.js";
import type { WeatherSection } from "./facts.js";

export type ForecastEvent = EventOf<"forecast">;

/** A forecast of the logbook as it is used: which one, and how old it is. */
export interface UsedForecast {
  readonly id: string;
  readonly origin: string;
  /** [ms] since 1970 UTC: when it was received. */
  readonly received: number;
  /** With its age. */
  readonly said: Finding;
}

export function usedForecast({ id, origin, at }: ForecastEvent, now: number): UsedForecast {
  const received = Date.parse(at);
  const hours = Math.max(0, now - received) / MS_OF_HOUR;
  return { id, origin, received, said: finding("forecast-used", { origin, hours }) };
}

export const MS_OF_HOUR = 3_600_000;

/**
 * The weather of a forecast event as a scenario document can carry it: `at_h` in an event counts from the moment the
 * forecast was received, in a document from the document's start. Undefined where it names a file: there is none here.
 */
export function portable({ weather, at }: ForecastEvent): WeatherSection | undefined {
  if (weather.csv_file !== undefined || weather.epw_file !== undefined) return undefined;
  const { points, lows, highs, ...rest } = weather;
  const absolute = <T extends { readonly at_h?: number; readonly time?: string }>({ at_h, ...entry }: T) =>
    at_h === undefined ? entry : { ...entry, time: isoOf(Date.parse(at) + at_h * MS_OF_HOUR) };
  return {
    ...rest,
    ...(points === undefined ? {} : { points: points.map(absolute) }),
    ...(lows === undefined ? {} : { lows: lows.map(absolute) }),
    ...(highs === undefined ? {} : { highs: highs.map(absolute) }),
  } as WeatherSection;
}

/** A forecast as a series of its own, which does not depend on what it is later used for. */
export interface ForecastSeries {
  readonly event: ForecastEvent;
  readonly received: number;
  readonly series: WeatherSeries;
}

/** Every forecast that can be read, the newest first, and why the others cannot. */
export function readForecasts({ forecasts, setUp }: BaseState): {
  readonly read: readonly ForecastSeries[];
  readonly refused: readonly Finding[];
} {
  const read: ForecastSeries[] = [];
  const refused: Finding[] = [];
  for (const event of forecasts) {
    const reading = seriesOf(event, setUp.zone);
    if ("code" in reading) refused.push(notUsed(event, reading));
    else read.push({ event, received: Date.parse(event.at), series: reading });
  }
  return { read, refused };
}

const READ = new WeakMap<
  ForecastEvent,
  { readonly zone: string; readonly series: WeatherSeries | Finding }
>();

function seriesOf(event: ForecastEvent, zone: string): WeatherSeries | Finding {
  const known = READ.get(event);
  if (known !== undefined && known.zone === zone) return known.series;
  const series = readSeries(event, zone);
  READ.set(event, { zone, series });
  return series;
}

function readSeries(event: ForecastEvent, zone: string): WeatherSeries | Finding {
  const weather = portable(event);
  if (weather === undefined) return finding("forecast-names-file", {});
  const received = Date.parse(event.at);
  // As far as it reaches, up to a day.
  const end = Math.min(received + 24 * MS_OF_HOUR, reachOf(event, received, zone)) / 1000;
  const start = received / 1000;
  const notes = newNotes();
  const clock = { start, end: weather.points === undefined && end > start ? end : start + 360, zone };
  return weatherOf({ weather }, clock, undefined, notes)?.whole ?? own(refusalOf(notes));
}

/** [ms] since 1970 UTC up to which a forecast can be used by a run that begins at `start` [ms]. */
export function reachOf(event: ForecastEvent, start: number, zone: string): number {
  const weather = portable(event);
  if (weather === undefined) return Number.NEGATIVE_INFINITY;
  return 1000 * reachOfWeather(weather, { start: start / 1000, end: start / 1000, zone });
}

/** Why a forecast of the logbook is not used. */
export function notUsed({ origin }: ForecastEvent, why: Finding): Finding {
  return finding("forecast-not-used", { origin, why });
}

export function own(text: string): Finding {
  return finding("own-words", { text });
}

/** Why weather could not be read. */
export function refusalOf({ issues }: Notes): string {
  return issues.map(issueText).join("; ") || "nothing could be read";
}

/** ISO 8601, UTC. */
export function isoOf(ms: number): string {
  return new Date(ms).toISOString();
}
