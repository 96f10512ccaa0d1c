import { issueText, type ScenarioDocument, weatherOf } from "../documents/index.js";
import type { BaseState, EventOf } from "../logbook/index.js";
import type { WeatherSeries } from "../weather/index.js";

type WeatherSection = ScenarioDocument["weather"];

/** A forecast of the logbook as it is used: which one, and how old it is. */
export interface UsedForecast {
  readonly id: string;
  readonly origin: string;
  /** [ms] since 1970 UTC: when it was received. */
  readonly received: number;
  /** In plain words, with its age. */
  readonly text: string;
}

export function usedForecast({ id, origin, at }: EventOf<"forecast">, now: number): UsedForecast {
  const received = Date.parse(at);
  const hours = Math.max(0, now - received) / MS_OF_HOUR;
  return { id, origin, received, text: `Weather: ${origin}, received ${hours.toFixed(1)} h ago.` };
}

export const MS_OF_HOUR = 3_600_000;

/**
 * The weather of a forecast event as a scenario document can carry it: `at_h` in an event counts from the moment the
 * forecast was received, in a document from the document's start. Undefined where it names a file: there is none here.
 */
export function portable({ weather, at }: EventOf<"forecast">): WeatherSection | undefined {
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
  readonly event: EventOf<"forecast">;
  readonly received: number;
  readonly series: WeatherSeries;
}

/** [h] after it was received up to which text of reports is read, and less where they do not reach so far. */
const REACHES = [24, 12, 3];

/** Every forecast that can be read, the newest first, and why the others cannot. */
export function readForecasts({ forecasts, setUp }: BaseState): {
  readonly read: readonly ForecastSeries[];
  readonly refused: readonly string[];
} {
  const read: ForecastSeries[] = [];
  const refused: string[] = [];
  for (const event of forecasts) {
    const reading = seriesOf(event, setUp.zone);
    if (typeof reading === "string") refused.push(`${event.origin} (${event.at}): ${reading}`);
    else read.push({ event, received: Date.parse(event.at), series: reading });
  }
  return { read, refused };
}

const READ = new WeakMap<
  EventOf<"forecast">,
  { readonly zone: string; readonly series: WeatherSeries | string }
>();

function seriesOf(event: EventOf<"forecast">, zone: string): WeatherSeries | string {
  const known = READ.get(event);
  if (known !== undefined && known.zone === zone) return known.series;
  const series = readSeries(event, zone);
  READ.set(event, { zone, series });
  return series;
}

function readSeries(event: EventOf<"forecast">, zone: string): WeatherSeries | string {
  const weather = portable(event);
  if (weather === undefined) return "it names a file, which a logbook does not hold";
  const start = Date.parse(event.at) / 1000;
  let reason = "nothing could be read";
  for (const hours of weather.points === undefined ? REACHES : [0.1]) {
    const findings: Parameters<typeof weatherOf>[3] = { issues: [], warnings: [], assumptions: [] };
    const clock = { start, end: start + hours * 3600, zone };
    const reading = weatherOf({ weather }, clock, undefined, findings);
    if (reading !== undefined) return reading.whole;
    reason = findings.issues.map(issueText).join("; ");
  }
  return reason;
}

/** ISO 8601, UTC. */
export function isoOf(ms: number): string {
  return new Date(ms).toISOString();
}
