import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../units/index.js";
import {
  type EpwReading,
  localText,
  reachOfForecastText,
  readEpw,
  readForecastText,
  readHourlyCsv,
  readRows,
  type WeatherReading,
} from "../weather/index.js";
import { type Clock, epochOfMoment } from "./clock.js";
import type { Path } from "./issue.js";
import { fault, type Notes } from "./reading.js";
import type { ScenarioDocument } from "./scenario-schema.js";

/** Gives the text of a file named in a document; the reason when it cannot. */
export type ReadFile = (
  name: string,
) => { readonly ok: true; readonly text: string } | { readonly ok: false; readonly reason: string };

type WeatherSection = ScenarioDocument["weather"];

/** [K] by which a dew point may stand above the air when both are rounded to whole degrees; it then counts as saturation. */
const ROUNDING = 0.5;

/** Points are taken as the rows of a file are, so that holes are treated alike. */
export function pointsReading(
  points: NonNullable<WeatherSection["points"]>,
  clock: Clock,
  issued: number | undefined,
  notes: Notes,
): WeatherReading | undefined {
  const epochs = points.map((point, i) => epochOfMoment(point, ["weather", "points", i], clock, notes));
  points.forEach(({ air_c, dew_point_c }, i) => {
    if (dew_point_c === undefined || dew_point_c <= air_c + ROUNDING) return;
    const expected = `${air_c} or less: a dew point is never above the air`;
    fault(notes, ["weather", "points", i, "dew_point_c"], expected, dew_point_c);
  });
  if (epochs.includes(undefined)) return undefined;
  const rows = points.map(({ air_c, wind_mps, dew_point_c, cloud_fraction }, i) => ({
    time: epochs[i] ?? 0,
    tempAir: kelvinFromCelsius(air_c),
    windSpeed: wind_mps ?? Number.NaN,
    tempDewPoint: dew_point_c === undefined ? Number.NaN : kelvinFromCelsius(dew_point_c),
    cloudCover: cloud_fraction ?? Number.NaN,
    place: `point ${i}`,
  }));
  return readRows(rows, { origin: "the points of the document", issued });
}

export function reportsReading(weather: WeatherSection, clock: Clock, notes: Notes): WeatherReading {
  const { text, lows, highs } = reportsOf(weather, clock, notes);
  return readForecastText(text, { reference: clock.start, until: clock.end, lows, highs });
}

/** [s] since epoch up to which reports can be carried on. */
export function reachOfReports(weather: WeatherSection, clock: Clock, notes: Notes): number {
  const { text, lows, highs } = reportsOf(weather, clock, notes);
  return reachOfForecastText(text, { reference: clock.start, lows, highs });
}

function reportsOf(weather: WeatherSection, clock: Clock, notes: Notes) {
  const extremes = (key: "lows" | "highs") =>
    (weather[key] ?? []).flatMap(({ air_c, ...moment }, i) => {
      const time = epochOfMoment(moment, ["weather", key, i], clock, notes);
      return time === undefined ? [] : [{ time, tempAir: kelvinFromCelsius(air_c) }];
    });
  const text = [weather.metar, weather.taf].filter((t) => t !== undefined).join("=\n");
  return { text, lows: extremes("lows"), highs: extremes("highs") };
}

export function csvReading(
  name: string,
  clock: Clock,
  issued: number | undefined,
  readFile: ReadFile | undefined,
  notes: Notes,
): WeatherReading | undefined {
  const text = fileText(name, ["weather", "csv_file"], readFile, notes);
  if (text === undefined) return undefined;
  return readHourlyCsv(text, { name, zone: clock.zone, ...(issued === undefined ? {} : { issued }) });
}

/** The days of the scenario, and one on either side, out of a file for a typical or a real year. */
export function epwReading(
  name: string,
  clock: Clock,
  readFile: ReadFile | undefined,
  notes: Notes,
): EpwReading | undefined {
  const text = fileText(name, ["weather", "epw_file"], readFile, notes);
  if (text === undefined) return undefined;
  const day = 24 * SECONDS_OF_HOUR;
  const from = localText(clock.start - day, clock.zone);
  const to = localText(clock.end + day, clock.zone);
  return readEpw(text, {
    name,
    from: from.slice(5, 10),
    to: to.slice(5, 10),
    year: Number(from.slice(0, 4)),
  });
}

function fileText(
  name: string,
  path: Path,
  readFile: ReadFile | undefined,
  notes: Notes,
): string | undefined {
  if (readFile === undefined) return fault(notes, path, "no file: files cannot be read here", name);
  const file = readFile(name);
  return file.ok ? file.text : fault(notes, path, `a file that can be read (${file.reason})`, name);
}
