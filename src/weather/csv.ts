import Papa from "papaparse";
import { seriesFromRows, type WeatherRow } from "./assemble.js";
import { CSV_COLUMNS, type CsvQuantity, numberOfCell, TIME_COLUMN } from "./csv-columns.js";
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
  const table = tableOf(text, issues);
  if (table === undefined) return refused();
  const columns = columnsOf(table.header, issues, warnings);
  if (issues.length > 0) return refused();
  const timeColumn = table.header.indexOf(TIME_COLUMN);
  const epochs = epochsOfCells(
    table.rows.map((row) => ({ text: row.cells[timeColumn] ?? "", place: row.place })),
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

interface TableRow {
  readonly line: number;
  readonly place: string;
  readonly cells: readonly string[];
}

/** Column positions of each quantity that is used, with the column's name. */
type Columns = ReadonlyMap<CsvQuantity, { readonly name: string; readonly index: number }>;

function tableOf(
  text: string,
  issues: WeatherIssue[],
): { header: readonly string[]; rows: readonly TableRow[] } | undefined {
  const lines = text
    .replace(/^\ufeff/, "")
    .split(/\r\n|\r|\n/)
    .map((content, i) => ({ content, line: i + 1 }))
    .filter(({ content }) => content.trim() !== "" && !content.startsWith("#"));
  const delimiter = delimiterOf(lines[0]?.content ?? "");
  const { data, errors } = Papa.parse(lines.map(({ content }) => content).join("\n"), {
    delimiter,
    quoteChar: '"',
    newline: "\n",
  });
  if (lines.length < 2) {
    issues.push({
      place: "file",
      expected: "a header line and at least one row",
      received: `${lines.length} lines`,
    });
    return undefined;
  }
  for (const error of errors) {
    issues.push({
      place: `line ${lines[error.row ?? 0]?.line}`,
      expected: "cells of a CSV",
      received: error.message,
    });
  }
  if (data.length !== lines.length && issues.length === 0) {
    issues.push({
      place: "file",
      expected: "no line breaks inside quotes",
      received: `${data.length} rows in ${lines.length} lines`,
    });
  }
  if (issues.length > 0) return undefined;
  const header = data[0]!.map((cell) => cell.trim().toLowerCase());
  const rows = data.slice(1).map((cells, i) => {
    const line = lines[i + 1]!.line;
    const extra = cells.slice(header.length).filter((cell) => cell.trim() !== "");
    if (cells.length < header.length || extra.length > 0) {
      issues.push({ place: `line ${line}`, expected: `${header.length} cells`, received: `${cells.length}` });
    }
    return { line, place: `line ${line}`, cells };
  });
  return { header, rows };
}

/** The delimiter that the header shows: names of columns hold none of the three, so there is nothing to guess. */
function delimiterOf(header: string): string {
  return [";", "\t"].find((mark) => header.includes(mark)) ?? ",";
}

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

function weatherRow(row: TableRow, columns: Columns, time: number, issues: WeatherIssue[]): WeatherRow {
  const value = (quantity: CsvQuantity): number => {
    const column = columns.get(quantity);
    const cell = column === undefined ? "" : (row.cells[column.index] ?? "").trim();
    if (column === undefined || cell === "") return Number.NaN;
    const { toSi, range } = CSV_COLUMNS[column.name]!;
    const number = numberOfCell(cell);
    if (number !== undefined && number >= range[0] && number <= range[1]) return toSi(number);
    issues.push({
      place: `${row.place}, column ${column.name}`,
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
    place: row.place,
  };
}
