import { eachOnce, finding } from "../findings/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import {
  cutSeries,
  HOLD_HOURS,
  localText,
  type WeatherIssue,
  type WeatherReading,
  type WeatherSeries,
} from "../weather/index.js";
import { type Clock, epochOfText } from "./clock.js";
import { type DocumentIssue, type Path, pathText } from "./issue.js";
import { fault, type Notes, newNotes } from "./reading.js";
import type { ScenarioDocument, ScenarioSections } from "./scenario-schema.js";
import {
  csvReading,
  epwReading,
  pointsReading,
  type ReadFile,
  reachOfReports,
  reportsReading,
} from "./weather-sources.js";

type WeatherSection = ScenarioDocument["weather"];

/** Weather as its source gives it, and cut to the scenario. */
export interface ScenarioWeather {
  readonly whole: WeatherSeries;
  readonly cut: WeatherSeries;
}

/** The weather over the scenario from whichever source the document names. */
export function weatherOf(
  { weather }: Pick<ScenarioSections, "weather">,
  clock: Clock | undefined,
  readFile: ReadFile | undefined,
  notes: Notes,
): ScenarioWeather | undefined {
  if (weather === undefined) return undefined;
  const source = sourceOf(weather, notes);
  if (clock === undefined || source === undefined) return undefined;
  const whole = accepted(readSource(weather, source, clock, readFile, notes), PATH_OF_SOURCE[source], notes);
  if (whole === undefined) return undefined;
  const cut = accepted(cutSeries(whole, clock.start, clock.end), PATH_OF_SOURCE[source], notes);
  if (cut === undefined) return undefined;
  noteAssumptions(cut, clock, notes);
  return { whole, cut };
}

/** [s] since epoch up to which a weather section can be used by a run from `clock.start`; -Infinity where it cannot. */
export function reachOfWeather(weather: WeatherSection, clock: Clock): number {
  const notes = newNotes();
  const source = sourceOf(weather, notes);
  if (source === "reports") return reachOfReports(weather, clock, notes);
  const reading = source && readSource(weather, source, clock, undefined, notes);
  if (reading === undefined || !reading.ok) return Number.NEGATIVE_INFINITY;
  return reading.series.time[reading.series.time.length - 1] + HOLD_HOURS * SECONDS_OF_HOUR;
}

type Source = "points" | "reports" | "csv_file" | "epw_file";

const PATH_OF_SOURCE: Readonly<Record<Source, Path>> = {
  points: ["weather", "points"],
  reports: ["weather"],
  csv_file: ["weather", "csv_file"],
  epw_file: ["weather", "epw_file"],
};

function sourceOf(weather: WeatherSection, notes: Notes): Source | undefined {
  const sources: Source[] = (["points", "csv_file", "epw_file"] as const).filter(
    (key) => weather[key] !== undefined,
  );
  if (weather.metar !== undefined || weather.taf !== undefined) sources.push("reports");
  const [source] = sources;
  if (source === undefined || sources.length > 1) {
    const received = source === undefined ? "none of them" : sources.join(" and ");
    return fault(notes, ["weather"], "one source: points, metar and taf, csv_file or epw_file", received);
  }
  refuseBeside("issued", source === "points" || source === "csv_file", "points or csv_file");
  refuseBeside("lows", source === "reports", "metar and taf");
  refuseBeside("highs", source === "reports", "metar and taf");
  return source;

  function refuseBeside(key: "issued" | "lows" | "highs", allowed: boolean, goesWith: string): void {
    if (weather[key] === undefined || allowed) return;
    fault(notes, ["weather", key], `nothing: ${key} goes with ${goesWith}`, weather[key]);
  }
}

function readSource(
  weather: WeatherSection,
  source: Source,
  clock: Clock,
  readFile: ReadFile | undefined,
  notes: Notes,
): WeatherReading | undefined {
  const issued =
    weather.issued === undefined
      ? undefined
      : epochOfText(weather.issued, ["weather", "issued"], clock, notes);
  switch (source) {
    case "points":
      return pointsReading(weather.points ?? [], clock, issued, notes);
    case "reports":
      return reportsReading(weather, clock, notes);
    case "csv_file":
      return csvReading(weather.csv_file ?? "", clock, issued, readFile, notes);
    case "epw_file":
      return epwReading(weather.epw_file ?? "", clock, readFile, notes);
  }
}

function accepted(reading: WeatherReading | undefined, path: Path, notes: Notes): WeatherSeries | undefined {
  if (reading === undefined) return undefined;
  if (!reading.ok) {
    notes.issues.push(...reading.issues.map((issue) => placed(path, issue)));
    return undefined;
  }
  notes.warnings.push(...reading.warnings.map((issue) => placed(path, issue)));
  return reading.series;
}

function placed(path: Path, { place, expected, received }: WeatherIssue): DocumentIssue {
  return { path: `${pathText(path)}, ${place}`, expected, received };
}

function noteAssumptions({ assumptions }: WeatherSeries, { start, end, zone }: Clock, notes: Notes): void {
  const shown = (epoch: number) => localText(epoch, zone).slice(5, 16).replace("T", " ");
  const lines = assumptions.map(({ from, to, text }) => {
    const stretch = from <= start && to >= end ? {} : { from: shown(from), to: shown(to) };
    return finding("weather-assumed", { finding: text, ...stretch });
  });
  notes.assumptions.push(...eachOnce(lines));
}
