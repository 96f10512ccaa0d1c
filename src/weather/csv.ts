import { seriesFromRows, type WeatherRow } from "./assemble.js";
import { CSV_COLUMNS, type CsvQuantity, numberOfCell, TIME_COLUMN } from "./csv-columns.js";
import { type CsvRow, readCsvTable } from "./csv-table.js";
import { type CsvTimeOptions, epochsOfCells } from "./csv-times.js";
import { tempDewPointFromRelativeHumidity } from "./humidity.js";
import { inTimeOrder } from "./row-order.js";
import type { WeatherIssue, WeatherReading } from "./series.js";
import { isTimeZone } from "./time.js";

export interface CsvOptions extends CsvTimeOptions {
  /** Name of the file, for `origin`. */
  readonly name?: string;
  /** [s since epoch] of issue, where the file is a forecast and not a log. */
  readonly issued?: number;
}

/**
 * Reads an hourly (or other) weather log: a header line with `time` and columns of `CSV_COLUMNS`, in any order;
 * comma, semicolon or tab between cells; decimal point, or decimal comma where the delimiter or quotes allow it;
 * lines beginning with # are comments; empty cells are missing values. Every faulty cell is an issue with its line
 * and column, and then no series is given.
 * @example readHourlyCsv("time,air_c\n2026-01-10T05:00Z,-27.5\n")
 */
export function readHourlyCsv(text: string, options: CsvOptions = {}): WeatherReading {
  const issues: WeatherIssue[] = [];
  const warnings: WeatherIssue[] = [];
  const refused = (): WeatherReading => ({ ok: false, issues });
  if (options.zone !== undefined && !isTimeZone(options.zone)) {
    issues.push({
      place: "zone",
      expected: 'an IANA time zone such as "Europe/Oslo"',
      received: options.zone,
    });
    return refused();
  }
  const table = readCsvTable(text);
  if (table === undefined) {
    issues.push({ place: "file", expected: "a header line and at least one row", received: "fewer lines" });
    return refused();
  }
  for (const { line, ...fault } of table.faults) issues.push({ place: `line ${line}`, ...fault });
  if (issues.length > 0) return refused();
  const header = table.header.cells.map((name) => name.toLowerCase());
  const columns = columnsOf(header, issues, warnings);
  if (issues.length > 0) return refused();
  const timeColumn = header.indexOf(TIME_COLUMN);
  const epochs = epochsOfCells(
    table.rows.map((row) => ({ text: row.cells[timeColumn] ?? "", place: `line ${row.line}` })),
    options,
    issues,
    warnings,
  );
  const rows = table.rows.map((row, i) => weatherRow(row, columns, epochs[i] ?? Number.NaN, issues));
  const ordered = inTimeOrder(rows, issues, warnings);
  if (issues.length > 0) return refused();
  const origin = `file ${options.name ?? "CSV"}, lines ${table.rows[0]?.line}-${table.rows.at(-1)?.line}`;
  const reading = seriesFromRows(ordered, { origin, issued: options.issued });
  return reading.ok ? { ...reading, warnings: [...warnings, ...reading.warnings] } : reading;
}

/** Column positions of each quantity that is used, with the column's name. */
type Columns = ReadonlyMap<CsvQuantity, { readonly name: string; readonly index: number }>;

function columnsOf(header: readonly string[], issues: WeatherIssue[], warnings: WeatherIssue[]): Columns {
  const columns = new Map<CsvQuantity, { name: string; index: number }>();
  const known = [TIME_COLUMN, ...Object.keys(CSV_COLUMNS)].join(", ");
  header.forEach((name, index) => {
    const place = `header, column ${index + 1}`;
    const quantity = CSV_COLUMNS[name]?.quantity;
    if (quantity === undefined) {
      if (name !== TIME_COLUMN)
        warnings.push({
          place,
          expected: `one of ${known}`,
          received: `${name || "nothing"}, column not used`,
        });
      else if (header.indexOf(name) !== index)
        issues.push({ place, expected: "one column time", received: "a second one" });
      return;
    }
    const earlier = columns.get(quantity);
    if (earlier === undefined) columns.set(quantity, { name, index });
    else
      issues.push({
        place,
        expected: `one column of ${quantity}`,
        received: `${name} beside ${earlier.name}`,
      });
  });
  for (const [name, present] of [
    [TIME_COLUMN, header.includes(TIME_COLUMN)],
    ["air_c or air_f", columns.has("tempAir")],
  ] as const) {
    if (!present) issues.push({ place: "header", expected: `a column ${name}`, received: header.join(", ") });
  }
  if (columns.has("tempDewPoint") && columns.delete("relativeHumidity")) {
    warnings.push({ place: "header", expected: "dew point or humidity", received: "both, dew point used" });
  }
  return columns;
}

function weatherRow(row: CsvRow, columns: Columns, time: number, issues: WeatherIssue[]): WeatherRow {
  const value = (quantity: CsvQuantity): number => {
    const column = columns.get(quantity);
    const cell = column === undefined ? "" : (row.cells[column.index] ?? "").trim();
    if (column === undefined || cell === "") return Number.NaN;
    const { toSi, range } = CSV_COLUMNS[column.name]!;
    const number = numberOfCell(cell);
    if (number !== undefined && number >= range[0] && number <= range[1]) return toSi(number);
    issues.push({
      place: `line ${row.line}, column ${column.name}`,
      expected: `a number from ${range[0]} to ${range[1]}, or nothing`,
      received: cell,
    });
    return Number.NaN;
  };
  const tempAir = value("tempAir");
  const humidity = value("relativeHumidity");
  const dry = Number.isNaN(humidity) || Number.isNaN(tempAir);
  return {
    time,
    tempAir,
    windSpeed: value("windSpeed"),
    tempDewPoint: dry ? value("tempDewPoint") : tempDewPointFromRelativeHumidity(humidity, tempAir),
    cloudCover: value("cloudCover"),
    place: `line ${row.line}`,
  };
}
