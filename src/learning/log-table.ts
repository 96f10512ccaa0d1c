import { type CsvRow, readCsvTable } from "../weather/index.js";
import type { LogOptions } from "./log-options.js";
import { namesTime } from "./log-time-columns.js";
import { kindOfTimeText } from "./log-time-text.js";
import { unitOfCell } from "./log-units.js";

/** Lines that are searched for the header before the first of all is taken for it. */
const PREAMBLE = 40;

/** A log's file, taken apart: what stands above the table, its header, its units and its rows. */
export interface LogTable {
  readonly header: CsvRow;
  /** Cells of the row of units, where the file has one. */
  readonly units: readonly string[] | undefined;
  readonly rows: readonly CsvRow[];
  readonly faults: NonNullable<ReturnType<typeof readCsvTable>>["faults"];
  /** Lines above the header, comment signs taken off. */
  readonly heading: readonly string[];
}

/**
 * The header is the first line that names a time and holds none; loggers often say what they are above it. Header and row
 * of units may be comments, and the row of units may stand above or below the header.
 */
export function logTableOf(text: string, { columns }: LogOptions): LogTable | undefined {
  const told = new Set(
    Object.entries(columns ?? {}).flatMap(([name, use]) =>
      use === "time" || use === "date" || use === "clock" ? [name.trim().toLowerCase()] : [],
    ),
  );
  const isHeaderOf = (cells: readonly string[]) =>
    cells.length > 1 &&
    cells.every((cell) => kindOfTimeText(cell) === undefined && !isSetting(cell)) &&
    cells.some((cell) => namesTime(cell) || told.has(cell.trim().toLowerCase()));
  let searched = 0;
  const isHeader = (cells: readonly string[]) => searched++ < PREAMBLE && isHeaderOf(cells);
  const table =
    readCsvTable(text, isHeader) ??
    readCsvTable(uncommented(text, isHeaderOf), isHeaderOf) ??
    readCsvTable(text);
  if (table === undefined) return undefined;
  const first = table.rows[0]?.cells;
  const inRow = first !== undefined && isUnitRow(first) ? first : undefined;
  const lines = text.split(/\r\n?|\n/);
  const top = table.header.line - 1;
  const beside = [top - 1, top + 1]
    .map((at) => cellsOfComment(lines[at] ?? ""))
    .find((cells) => cells !== undefined && cells.length === table.header.cells.length && isUnitRow(cells));
  return {
    header: table.header,
    units: inRow ?? beside,
    rows: inRow === undefined ? table.rows : table.rows.slice(1),
    // Settings above the header are the logger's own heading, and no row that was lost.
    faults: table.faults.filter(({ line, received }) => line > table.header.line || !isSetting(received)),
    heading: lines.slice(0, top).map((line) => line.replace(/^#+/, "").trim()),
  };
}

/** Whether a row holds units and no readings. */
function isUnitRow(cells: readonly string[]): boolean {
  return cells.some((cell) => unitOfCell(cell) !== undefined) && !cells.some((cell) => /\d/.test(cell));
}

/** `serial="0042"`, `Start: 18:04` */
function isSetting(cell: string): boolean {
  return /^\s*"?[\p{L}\p{N}_ .-]+\s*(?:=|:\s)/u.test(cell);
}

function cellsOfComment(line: string): readonly string[] | undefined {
  if (!line.startsWith("#")) return undefined;
  return line
    .replace(/^#+/, "")
    .split(/[,;\t]/)
    .map((cell) => cell.trim());
}

/** The text with the first comment that can be a header made one. */
function uncommented(text: string, isHeader: (cells: readonly string[]) => boolean): string {
  const lines = text.split(/\r\n?|\n/);
  const at = lines.slice(0, PREAMBLE).findIndex((line) => {
    const cells = cellsOfComment(line);
    return cells !== undefined && isHeader(cells) && !isUnitRow(cells);
  });
  if (at < 0) return text;
  return lines.map((line, i) => (i === at ? line.replace(/^#+/, "") : line)).join("\n");
}
