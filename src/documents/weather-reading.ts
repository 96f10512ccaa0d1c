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
import { type ReadFile, WEATHER_SOURCES, type WeatherSource } from "./weather-sources/index.js";

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
  sources = WEATHER_SOURCES,
): ScenarioWeather | undefined {
  if (weather === undefined) return undefined;
  const source = sourceOf(weather, sources, notes);
  if (clock === undefined || source === undefined) return undefined;
  const whole = accepted(readBy(source, weather, clock, readFile, notes), source.path, notes);
  if (whole === undefined) return undefined;
  const cut = accepted(cutSeries(whole, clock.start, clock.end), source.path, notes);
  if (cut === undefined) return undefined;
  noteAssumptions(cut, clock, notes);
  return { whole, cut };
}

/** [s] since epoch up to which a weather section can be used by a run from `clock.start`; -Infinity where it cannot. */
export function reachOfWeather(weather: WeatherSection, clock: Clock): number {
  const notes = newNotes();
  const source = sourceOf(weather, WEATHER_SOURCES, notes);
  if (source?.reach !== undefined) return source.reach(weather, clock, notes);
  const reading = source && readBy(source, weather, clock, undefined, notes);
  if (reading === undefined || !reading.ok) return Number.NEGATIVE_INFINITY;
  return reading.series.time[reading.series.time.length - 1] + HOLD_HOURS * SECONDS_OF_HOUR;
}

/** The one source that a section names; keys that belong to others are refused. */
function sourceOf(
  weather: WeatherSection,
  sources: readonly WeatherSource[],
  notes: Notes,
): WeatherSource | undefined {
  const given = new Map(Object.entries(weather).filter(([, value]) => value !== undefined));
  const found = sources.filter(({ named }) => named.some((key) => given.has(key)));
  const [source] = found;
  if (source === undefined || found.length > 1) {
    const expected = `one source: ${sources.map(({ name }) => name).join(", ")}`;
    const received = found.map(({ name }) => name).join(" and ") || "none of them";
    return fault(notes, ["weather"], expected, received);
  }
  const ofOthers = sources.filter((other) => other !== source);
  for (const key of given.keys()) {
    const owners =
      key === "issued" && !source.isForecast
        ? ofOthers.filter(({ isForecast }) => isForecast)
        : ofOthers.filter(({ shape }) => Object.hasOwn(shape, key));
    if (owners.length === 0) continue;
    const goesWith = owners.map(({ name }) => name).join(" or ");
    fault(notes, ["weather", key], `nothing: ${key} goes with ${goesWith}`, given.get(key));
  }
  return source;
}

function readBy(
  source: WeatherSource,
  weather: WeatherSection,
  clock: Clock,
  readFile: ReadFile | undefined,
  notes: Notes,
): WeatherReading | undefined {
  const { issued: text } = weather;
  const issued = text === undefined ? undefined : epochOfText(text, ["weather", "issued"], clock, notes);
  return source.read(weather, { clock, issued, readFile }, notes);
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
