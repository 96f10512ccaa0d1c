import { type RowOrigin, seriesFromRows, type WeatherRow } from "./assemble.js";
import type { WeatherIssue, WeatherReading } from "./series.js";

/** A series from rows in any order. */
export function readRows(rows: readonly WeatherRow[], origin: RowOrigin): WeatherReading {
  const issues: WeatherIssue[] = [];
  const warnings: WeatherIssue[] = [];
  const ordered = inTimeOrder(rows, issues, warnings);
  if (issues.length > 0) return { ok: false, issues };
  const reading = seriesFromRows(ordered, origin);
  return reading.ok ? { ...reading, warnings: [...warnings, ...reading.warnings] } : reading;
}

/**
 * Rows in strictly ascending time. A row out of order is moved and a repeated row left out, both with a warning;
 * rows of one time with different values are an issue, since nobody can say which of them holds.
 */
export function inTimeOrder(
  rows: readonly WeatherRow[],
  issues: WeatherIssue[],
  warnings: WeatherIssue[],
): WeatherRow[] {
  const timed = rows.filter((row) => !Number.isNaN(row.time));
  let newest: WeatherRow | undefined;
  for (const row of timed) {
    if (newest !== undefined && row.time < newest.time) {
      warnings.push({
        place: `${row.place}, column time`,
        expected: `a time after that of ${newest.place}`,
        received: "an earlier one, row moved to its place",
      });
    } else newest = row;
  }
  const sorted = [...timed].sort((a, b) => a.time - b.time);
  return sorted.filter((row, i) => {
    const before = sorted[i - 1];
    if (before?.time !== row.time) return true;
    const place = `${row.place}, column time`;
    const expected = `a time other than that of ${before.place}`;
    if (sameValues(row, before)) warnings.push({ place, expected, received: "the same row again, left out" });
    else issues.push({ place, expected, received: "the same time with other values" });
    return false;
  });
}

function sameValues(a: WeatherRow, b: WeatherRow): boolean {
  return (["tempAir", "windSpeed", "tempDewPoint", "cloudCover"] as const).every((key) =>
    Object.is(a[key], b[key]),
  );
}
