import { CSV_FILE } from "./csv-file.js";
import { EPW_FILE } from "./epw-file.js";
import { POINTS } from "./points.js";
import { REPORTS } from "./reports.js";
import type { WeatherSource } from "./source.js";

export type { ReadFile, WeatherSource } from "./source.js";

/** Every way to give weather; a new one is a file here and a line in both lists. */
export const WEATHER_SOURCES = [POINTS, REPORTS, CSV_FILE, EPW_FILE] as readonly WeatherSource[];

/** Keys of a document's weather section. */
export const WEATHER_SHAPE = { ...POINTS.shape, ...REPORTS.shape, ...CSV_FILE.shape, ...EPW_FILE.shape };
