import { type Finding, finding } from "../findings/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { ASSUMED_CLOUD, ASSUMED_DEPRESSION, ASSUMED_WIND, GAP_LIMIT } from "./cautious.js";
import { bridged, holesOf } from "./gaps.js";
import type { WeatherAssumption, WeatherIssue, WeatherReading } from "./series.js";
import { utcText } from "./time.js";

/** One row of a file in SI units, NaN where it gives no value. */
export interface WeatherRow {
  readonly time: number;
  readonly tempAir: number;
  readonly windSpeed: number;
  readonly tempDewPoint: number;
  readonly cloudCover: number;
  /** "line 14" */
  readonly place: string;
}

export interface RowOrigin {
  readonly origin: string;
  readonly issued?: number | undefined;
}

type Column = "tempAir" | "windSpeed" | "cloudCover";

/**
 * A series from rows in strictly ascending time. Missing values are bridged in a straight line (the dew point by its
 * depression), a quantity that is missing throughout is assumed on the cautious side, and both are listed. Holes and
 * steps of time longer than 3 h are warned of. Rows before the first and after the last air temperature are left out.
 */
export function seriesFromRows(rows: readonly WeatherRow[], from: RowOrigin): WeatherReading {
  const first = rows.findIndex((row) => !Number.isNaN(row.tempAir));
  if (first < 0) {
    return {
      ok: false,
      issues: [{ place: from.origin, expected: "at least one air temperature", received: "none" }],
    };
  }
  const last = rows.findLastIndex((row) => !Number.isNaN(row.tempAir));
  const used = rows.slice(first, last + 1);
  const assumptions: WeatherAssumption[] = [];
  const warnings: WeatherIssue[] = [
    ...(used.length < rows.length ? [trimWarning(rows.length - used.length)] : []),
    ...gapWarnings(used, assumptions),
  ];
  const column = (quantity: Column) => filledColumn(used, quantity, assumptions, warnings);
  const tempAir = column("tempAir");
  const series = {
    time: Float64Array.from(used, (row) => row.time),
    tempAir: Float64Array.from(tempAir),
    windSpeed: Float64Array.from(column("windSpeed")),
    tempDewPoint: Float64Array.from(dewPoints(used, tempAir, assumptions, warnings)),
    cloudCover: Float64Array.from(column("cloudCover")),
    origin: from.origin,
    ...(from.issued === undefined ? {} : { issued: from.issued }),
    assumptions,
  };
  return { ok: true, series, warnings };
}

const ASSUMED: Readonly<Record<Exclude<Column, "tempAir">, { value: number; text: Finding }>> = {
  windSpeed: { value: ASSUMED_WIND, text: finding("wind-assumed", { wind_mps: ASSUMED_WIND }) },
  cloudCover: { value: ASSUMED_CLOUD, text: finding("sky-assumed-clear", {}) },
};

function filledColumn(
  rows: readonly WeatherRow[],
  quantity: Column,
  assumptions: WeatherAssumption[],
  warnings: WeatherIssue[],
): number[] {
  const values = rows.map((row) => row[quantity]);
  if (quantity !== "tempAir" && values.every(Number.isNaN)) {
    const { value, text } = ASSUMED[quantity];
    assumptions.push({ quantity, ...spanOf(rows), text });
    return values.map(() => value);
  }
  noteHoles(rows, values, quantity, assumptions, warnings);
  return bridged(
    rows.map((row) => row.time),
    values,
  );
}

function dewPoints(
  rows: readonly WeatherRow[],
  tempAir: readonly number[],
  assumptions: WeatherAssumption[],
  warnings: WeatherIssue[],
): number[] {
  // A dew point a little above the air is rounding; the depression is what stays steady while the air swings.
  const depressions = rows.map((row, i) => Math.max(0, tempAir[i]! - row.tempDewPoint));
  if (depressions.every(Number.isNaN)) {
    assumptions.push({
      quantity: "tempDewPoint",
      ...spanOf(rows),
      text: finding("dew-point-assumed", { below_k: ASSUMED_DEPRESSION, by: "file" }),
    });
    return tempAir.map((air) => air - ASSUMED_DEPRESSION);
  }
  noteHoles(rows, depressions, "tempDewPoint", assumptions, warnings);
  const filled = bridged(
    rows.map((row) => row.time),
    depressions,
  );
  return tempAir.map((air, i) => air - filled[i]!);
}

function noteHoles(
  rows: readonly WeatherRow[],
  values: readonly number[],
  quantity: Column | "tempDewPoint",
  assumptions: WeatherAssumption[],
  warnings: WeatherIssue[],
): void {
  for (const { first, last } of holesOf(values)) {
    const before = rows[first - 1] ?? rows[first]!;
    const after = rows[last + 1] ?? rows[last]!;
    const atEnd = first === 0 || last === rows.length - 1;
    const how = atEnd ? "nearest value held" : "bridged by a straight line";
    assumptions.push({
      quantity,
      from: before.time,
      to: after.time,
      text: finding("rows-missing", { quantity, rows: last - first + 1, isHeld: atEnd }),
    });
    if (after.time - before.time <= GAP_LIMIT) continue;
    warnings.push({
      place: `${rows[first]!.place} to ${rows[last]!.place}, ${quantity}`,
      expected: "a value at least every 3 h",
      received: `none for ${hours(after.time - before.time)}, ${how}`,
    });
  }
}

function gapWarnings(rows: readonly WeatherRow[], assumptions: WeatherAssumption[]): WeatherIssue[] {
  return rows.flatMap((row, i) => {
    const before = rows[i - 1];
    if (before === undefined || row.time - before.time <= GAP_LIMIT) return [];
    const length = hours(row.time - before.time);
    assumptions.push({
      quantity: "time",
      from: before.time,
      to: row.time,
      text: finding("no-reading-for", { hours: (row.time - before.time) / SECONDS_OF_HOUR }),
    });
    return [
      {
        place: `${before.place} to ${row.place}`,
        expected: "a row at least every 3 h",
        received: `none for ${length} from ${utcText(before.time)}, bridged by a straight line`,
      },
    ];
  });
}

function trimWarning(count: number): WeatherIssue {
  return {
    place: "first and last rows",
    expected: "an air temperature",
    received: `none in ${count} rows, left out`,
  };
}

function spanOf(rows: readonly WeatherRow[]): { from: number; to: number } {
  return { from: rows[0]!.time, to: rows.at(-1)!.time };
}

function hours(seconds: number): string {
  return `${(seconds / SECONDS_OF_HOUR).toFixed(1)} h`;
}
