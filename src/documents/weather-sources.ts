import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../units/index.js";
import {
  type EpwReading,
  localText,
  readEpw,
  readForecastText,
  readHourlyCsv,
  type WeatherIssue,
  type WeatherReading,
} from "../weather/index.js";
import { type Clock, epochOfMoment } from "./clock.js";
import type { Path } from "./issue.js";
import { type Findings, fault } from "./reading.js";
import type { ScenarioDocument } from "./scenario-schema.js";

/** Gives the text of a file named in a document; the reason when it cannot. */
export type ReadFile = (
  name: string,
) => { readonly ok: true; readonly text: string } | { readonly ok: false; readonly reason: string };

type WeatherSection = ScenarioDocument["weather"];

const POINT_COLUMNS = ["air_c", "wind_mps", "dew_point_c", "cloud_fraction"] as const;

/** [K] by which a dew point may stand above the air when both are rounded to whole degrees; it then counts as saturation. */
const ROUNDING = 0.5;

/** Points are read as the rows of an hourly file, whose columns have the same names, so that holes are treated alike. */
export function pointsReading(
  points: NonNullable<WeatherSection["points"]>,
  clock: Clock,
  issued: number | undefined,
  findings: Findings,
): WeatherReading | undefined {
  const epochs = points.map((point, i) => epochOfMoment(point, ["weather", "points", i], clock, findings));
  points.forEach(({ air_c, dew_point_c }, i) => {
    if (dew_point_c === undefined || dew_point_c <= air_c + ROUNDING) return;
    const expected = `${air_c} or less: a dew point is never above the air`;
    fault(findings, ["weather", "points", i, "dew_point_c"], expected, dew_point_c);
  });
  if (epochs.includes(undefined)) return undefined;
  const rows = points.map((point, i) => {
    const time = new Date((epochs[i] ?? 0) * 1000).toISOString();
    return [time, ...POINT_COLUMNS.map((column) => point[column] ?? "")].join(",");
  });
  const text = [["time", ...POINT_COLUMNS].join(","), ...rows].join("\n");
  const reading = readHourlyCsv(text, issued === undefined ? {} : { issued });
  if (!reading.ok) return { ok: false, issues: reading.issues.map(atPoint) };
  const series = { ...reading.series, origin: "the points of the document" };
  return { ok: true, series, warnings: reading.warnings.map(atPoint) };
}

/** The first row of the text stands on line 2. */
function atPoint(issue: WeatherIssue): WeatherIssue {
  const inPoints = (text: string) => text.replace(/line (\d+)/g, (_, line) => `point ${Number(line) - 2}`);
  return { place: inPoints(issue.place), expected: inPoints(issue.expected), received: issue.received };
}

export function reportsReading(weather: WeatherSection, clock: Clock, findings: Findings): WeatherReading {
  const text = [weather.metar, weather.taf].filter((t) => t !== undefined).join("=\n");
  const extremes = (key: "lows" | "highs") =>
    (weather[key] ?? []).flatMap(({ air_c, ...moment }, i) => {
      const time = epochOfMoment(moment, ["weather", key, i], clock, findings);
      return time === undefined ? [] : [{ time, tempAir: kelvinFromCelsius(air_c) }];
    });
  return readForecastText(text, {
    reference: clock.start,
    until: clock.end,
    lows: extremes("lows"),
    highs: extremes("highs"),
  });
}

export function csvReading(
  name: string,
  clock: Clock,
  issued: number | undefined,
  readFile: ReadFile | undefined,
  findings: Findings,
): WeatherReading | undefined {
  const text = fileText(name, ["weather", "csv_file"], readFile, findings);
  if (text === undefined) return undefined;
  return readHourlyCsv(text, { name, zone: clock.zone, ...(issued === undefined ? {} : { issued }) });
}

/** The days of the scenario, and one on either side, out of a file for a typical or a real year. */
export function epwReading(
  name: string,
  clock: Clock,
  readFile: ReadFile | undefined,
  findings: Findings,
): EpwReading | undefined {
  const text = fileText(name, ["weather", "epw_file"], readFile, findings);
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
  findings: Findings,
): string | undefined {
  if (readFile === undefined) return fault(findings, path, "no file: files cannot be read here", name);
  const file = readFile(name);
  return file.ok ? file.text : fault(findings, path, `a file that can be read (${file.reason})`, name);
}
