import type { WeatherIssue } from "./series.js";

/** The LOCATION record. */
export interface EpwLocation {
  readonly name: string;
  /** [deg] north and east positive. */
  readonly latitude: number;
  readonly longitude: number;
  /** [h] local standard time minus UTC; there is no daylight saving in the file. */
  readonly zoneHours: number;
  /** [m] */
  readonly elevation: number;
}

export const EPW_HEADERS = [
  "LOCATION",
  "DESIGN CONDITIONS",
  "TYPICAL/EXTREME PERIODS",
  "GROUND TEMPERATURES",
  "HOLIDAYS/DAYLIGHT SAVINGS",
  "COMMENTS 1",
  "COMMENTS 2",
  "DATA PERIODS",
] as const;

/** The LOCATION record; undefined with issues where the 8 header records are not there. */
export function locationOf(lines: readonly string[], issues: WeatherIssue[]): EpwLocation | undefined {
  EPW_HEADERS.forEach((header, i) => {
    const found = (lines[i] ?? "").split(",")[0]!.trim().toUpperCase();
    if (found !== header)
      issues.push({ place: `line ${i + 1}`, expected: header, received: found || "nothing" });
  });
  if (issues.length > 0) return undefined;
  const cells = lines[0]!.split(",").map((cell) => cell.trim());
  const read = (column: number, what: string, low: number, high: number): number => {
    const value = numberOf(cells[column - 1]);
    if (value >= low && value <= high) return value;
    issues.push({
      place: `line 1, column ${column} (${what})`,
      expected: `${low} to ${high}`,
      received: cells[column - 1] || "nothing",
    });
    return Number.NaN;
  };
  return {
    name: cells[1] ?? "",
    latitude: read(7, "latitude", -90, 90),
    longitude: read(8, "longitude", -180, 180),
    zoneHours: read(9, "time zone", -12, 14),
    elevation: read(10, "elevation", -1000, 9999.9),
  };
}

/** Records an hour from the DATA PERIODS record. */
export function rowsPerHour(line: string, issues: WeatherIssue[]): number {
  const cell = line.split(",")[2]?.trim() ?? "";
  const count = numberOf(cell);
  if (Number.isInteger(count) && count >= 1 && 60 % count === 0) return count;
  issues.push({
    place: "line 8, column 3 (records per hour)",
    expected: "a divisor of 60",
    received: cell || "nothing",
  });
  return Number.NaN;
}

/** NaN for an empty cell, which Number would read as 0. */
export function numberOf(cell: string | undefined): number {
  return cell === undefined || cell === "" ? Number.NaN : Number(cell);
}
