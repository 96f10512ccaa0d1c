import { createLocalClock } from "./local-clock.js";
import type { WeatherIssue } from "./series.js";
import { type LocalTimeReading, localText } from "./time.js";

export interface CsvTimeOptions {
  /** IANA time zone of times without an offset. */
  readonly zone?: string | undefined;
  /** Which pass of a repeated hour is meant where the file shows only one of them. */
  readonly overlap?: "earlier" | "later" | undefined;
}

export interface TimeCell {
  readonly text: string;
  readonly place: string;
}

/**
 * [s since epoch] of each cell, undefined where it is faulty (then an issue says why). In the hour the clock repeats
 * in autumn, a time that stands twice in the file means the first and the second pass in that order; one that stands
 * once needs `overlap` or is an issue. Each resolved time is warned of.
 */
export function epochsOfCells(
  cells: readonly TimeCell[],
  options: CsvTimeOptions,
  issues: WeatherIssue[],
  warnings: WeatherIssue[],
): (number | undefined)[] {
  const clock = createLocalClock(options.zone);
  const readings = cells.map(({ text }) => clock(text));
  const seen = new Map<string, number>();
  const total = countOverlaps(cells, readings);
  return readings.map((reading, i) => {
    const { text, place } = cells[i]!;
    const fault = (expected: string) => {
      issues.push({ place: `${place}, column time`, expected, received: text || "nothing" });
      return undefined;
    };
    if (reading.ok) return reading.epoch;
    if (reading.reason !== "overlap") return fault(reading.expected);
    const key = text.trim();
    const pass = seen.get(key) ?? 0;
    seen.set(key, pass + 1);
    const twice = total.get(key) === 2;
    const choice = twice
      ? pass === 0
        ? "earlier"
        : "later"
      : total.get(key) === 1
        ? options.overlap
        : undefined;
    if (choice === undefined) return fault(reading.expected);
    warnings.push({
      place: `${place}, column time`,
      expected: reading.expected,
      received: `${text}, taken as ${localText(reading[choice], options.zone!)}`,
    });
    return reading[choice];
  });
}

function countOverlaps(
  cells: readonly TimeCell[],
  readings: readonly LocalTimeReading[],
): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  readings.forEach((reading, i) => {
    if (reading.ok || reading.reason !== "overlap") return;
    const key = cells[i]!.text.trim();
    counts.set(key, (counts.get(key) ?? 0) + 1);
  });
  return counts;
}
