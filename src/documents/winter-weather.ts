import { eachOnce, type Finding, finding } from "../findings/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import {
  cutSeries,
  localText,
  madeYear,
  PLACES,
  type PlaceNormals,
  readEpw,
  readHourlyCsv,
  type WeatherReading,
  type WeatherSeries,
} from "../weather/index.js";
import { type Path, pathText } from "./issue.js";
import { fault, type Notes } from "./reading.js";
import type { ReadFile } from "./weather-sources/index.js";
import type { WinterDocument, WinterSections } from "./winter-schema.js";

/** One winter's weather, laid on the calendar of the study. */
export interface WinterYear {
  readonly name: string;
  readonly weather: WeatherSeries;
}

interface Span {
  readonly start: number;
  readonly end: number;
  readonly zone: string;
}

const SOURCES = ["place", "normals", "csv_files", "epw_files"] as const;
const USUAL_YEARS = 5;
const USUAL_SEED = 1;

/** The winters that a document names, each cut to the study. */
export function winterYearsOf(
  { weather, ensemble }: WinterSections,
  span: Span | undefined,
  readFile: ReadFile | undefined,
  notes: Notes,
): WinterYear[] {
  if (weather === undefined) return [];
  const given = SOURCES.filter((source) => weather[source] !== undefined);
  const [source] = given;
  if (source === undefined || given.length > 1) {
    fault(notes, ["weather"], `one source: ${SOURCES.join(", ")}`, given.join(" and ") || "none of them");
    return [];
  }
  const isMade = source === "place" || source === "normals";
  if (!isMade && weather.years !== undefined)
    fault(notes, ["weather", "years"], "nothing: years go with place or normals", weather.years);
  if (span === undefined) return [];
  if (isMade) return madeYears(weather, ensemble?.seed ?? USUAL_SEED, span, notes);
  return (weather[source] as readonly string[]).flatMap((name, i) => {
    const path: Path = ["weather", source, i];
    const file = readFile?.(name) ?? { ok: false as const, reason: "files cannot be read here" };
    if (!file.ok) {
      fault(notes, path, `a file that can be read (${file.reason})`, name);
      return [];
    }
    const read = source === "epw_files" ? epwWinter : csvWinter;
    const series = accepted(read(file.text, name, span), path, notes);
    return series === undefined ? [] : [{ name, weather: series }];
  });
}

type Weather = WinterDocument["weather"];

function madeYears(weather: Weather, seed: number, span: Span, notes: Notes): WinterYear[] {
  const place = weather.normals === undefined ? placeOf(weather.place, notes) : ownNormals(weather.normals);
  if (place === undefined) return [];
  const years = weather.years ?? USUAL_YEARS;
  if (weather.years === undefined) notes.assumptions.push(finding("winters-made", { years }));
  notes.assumptions.push(finding("winter-weather-made", { origin: place.origin }));
  const from = 3600 * Math.floor(span.start / 3600);
  const to = 3600 * Math.ceil(span.end / 3600);
  return Array.from({ length: years }, (_, i) => ({
    name: `winter ${i + 1}`,
    weather: madeYear({ place, from, to, seed, year: i + 1 }),
  }));
}

function placeOf(id: string | undefined, notes: Notes): PlaceNormals | undefined {
  const found = PLACES.find((place) => place.id === id);
  return found ?? fault(notes, ["weather", "place"], `one of ${PLACES.map((p) => p.id).join(", ")}`, id);
}

function ownNormals({ name, longitude_deg, months }: NonNullable<Weather["normals"]>): PlaceNormals {
  return {
    id: "own",
    name,
    longitude: longitude_deg,
    origin: `from the document's own normals of ${name}`,
    months: months.map((m) => ({
      tempAir: kelvinFromCelsius(m.air_c),
      dailyRange: m.daily_range_k,
      daySd: m.day_sd_k,
      persistence: m.persistence,
      windSpeed: m.wind_mps,
      cloudCover: m.cloud_fraction,
      depression: m.dew_point_depression_k,
    })),
  };
}

/** The days of the study out of a year's file, whatever year they were in. */
function epwWinter(text: string, name: string, { start, end, zone }: Span): WeatherReading {
  const from = localText(start, zone);
  const reading = readEpw(text, {
    name,
    from: from.slice(5, 10),
    to: localText(end, zone).slice(5, 10),
    year: Number(from.slice(0, 4)),
  });
  return reading.ok ? cut(reading, start, end) : reading;
}

/** A log of one winter, moved by whole years onto the study's calendar. */
function csvWinter(text: string, name: string, { start, end, zone }: Span): WeatherReading {
  const reading = readHourlyCsv(text, { name, zone });
  if (!reading.ok) return reading;
  const { series } = reading;
  const begun = new Date(series.time[0]! * 1000);
  const years = new Date(start * 1000).getUTCFullYear() - begun.getUTCFullYear();
  const shifts = [years - 1, years, years + 1].map((by) => {
    const moved = new Date(begun);
    moved.setUTCFullYear(begun.getUTCFullYear() + by);
    return (moved.getTime() - begun.getTime()) / 1000;
  });
  const first = series.time[0]!;
  // The latest that begins no later than the study, or else the one that begins soonest after it.
  const shift = shifts.findLast((by) => first + by <= start) ?? shifts[0]!;
  const time = series.time.map((t) => t + shift);
  return cut({ ...reading, series: { ...series, time } }, start, end);
}

function cut(reading: WeatherReading & { readonly ok: true }, start: number, end: number): WeatherReading {
  const part = cutSeries(reading.series, start, end, HOLD);
  return part.ok ? { ...part, warnings: reading.warnings } : part;
}

/** [h] that the first and last value of a winter's file may be held. */
const HOLD = 24;

function accepted(reading: WeatherReading, path: Path, notes: Notes): WeatherSeries | undefined {
  const placed = ({ place, expected, received }: { place: string; expected: string; received: string }) => ({
    path: `${pathText(path)}, ${place}`,
    expected,
    received,
  });
  if (!reading.ok) {
    notes.issues.push(...reading.issues.map(placed));
    return undefined;
  }
  notes.warnings.push(...reading.warnings.map(placed));
  const { assumptions } = reading.series;
  const file = pathText(path);
  const shown: Finding[] = assumptions
    .slice(0, MOST_TOLD)
    .map(({ text }) => finding("weather-file-assumed", { path: file, finding: text }));
  if (assumptions.length > MOST_TOLD) {
    shown.push(finding("weather-file-gaps", { path: file, gaps: assumptions.length }));
  }
  notes.assumptions.push(...eachOnce(shown));
  return reading.series;
}

/** Assumptions of one file that are listed; more are the same over and over. */
const MOST_TOLD = 5;
