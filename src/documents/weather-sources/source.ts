import { z } from "zod";
import type { WeatherReading } from "../../weather/index.js";
import type { Clock } from "../clock.js";
import type { Path } from "../issue.js";
import { fault, type Notes } from "../reading.js";

/** Gives the text of a file named in a document; the reason when it cannot. */
export type ReadFile = (
  name: string,
) => { readonly ok: true; readonly text: string } | { readonly ok: false; readonly reason: string };

/** What a source is read with. */
interface WeatherAsked {
  readonly clock: Clock;
  /** [s] since epoch at which it was forecast, where the document says so. */
  readonly issued: number | undefined;
  readonly readFile: ReadFile | undefined;
}

/** One way to give weather: the keys of a document's weather section that are its own, and how they are read. */
export interface WeatherSource<S extends z.ZodRawShape = z.ZodRawShape> {
  /** As it is named among the others. */
  readonly name: string;
  /** Its own keys; one of `named` at least says that it is this source. */
  readonly shape: S;
  readonly named: readonly string[];
  /** Whether the document may say when it was forecast. */
  readonly isForecast: boolean;
  /** Where its faults stand. */
  readonly path: Path;
  read(section: z.infer<z.ZodObject<S>>, asked: WeatherAsked, notes: Notes): WeatherReading | undefined;
  /** [s] since epoch up to which it can be carried on, where that is further than its own end. */
  reach?(section: z.infer<z.ZodObject<S>>, clock: Clock, notes: Notes): number;
}

export const words = z.string().min(1);
export const moment = words.meta({
  description: "ISO 8601 with offset, such as 2026-01-14T18:00+01:00, or local time in the document's zone",
});
/** [°C] beyond any air temperature on record: -89.2 Vostok 1983, 56.7 Furnace Creek 1913 (WMO weather and climate extremes archive). */
export const airCelsius = z.number().min(-90).max(60);

export function fileText(
  name: string,
  path: Path,
  readFile: ReadFile | undefined,
  notes: Notes,
): string | undefined {
  if (readFile === undefined) return fault(notes, path, "no file: files cannot be read here", name);
  const file = readFile(name);
  return file.ok ? file.text : fault(notes, path, `a file that can be read (${file.reason})`, name);
}
