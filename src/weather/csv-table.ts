import Papa from "papaparse";

export interface CsvRow {
  /** Number of the line in the file, from 1. */
  readonly line: number;
  /** As many as the header has. */
  readonly cells: readonly string[];
}

export interface CsvTable {
  readonly header: CsvRow;
  readonly rows: readonly CsvRow[];
  /** Lines that are no row of the table, and why; in the order of the file. */
  readonly faults: readonly CsvFault[];
}

interface CsvFault {
  readonly line: number;
  readonly expected: string;
  readonly received: string;
}

interface Line {
  readonly content: string;
  readonly line: number;
}

/**
 * Splits a CSV text into header and rows: comma, semicolon or tab between cells as the header shows; cells in double
 * quotes may hold the delimiter but no line break; lines beginning with # are comments and blank ones are skipped; a
 * byte order mark is. `isHeader` says which line the header is (lines before it are faults); without it the first one.
 * Undefined where there is no header, or nothing below it.
 */
export function readCsvTable(
  text: string,
  isHeader: (cells: readonly string[]) => boolean = () => true,
): CsvTable | undefined {
  const lines = linesOf(text);
  let top = 0;
  let header: readonly string[] = [];
  let delimiter = ",";
  for (; top < lines.length; top++) {
    delimiter = delimiterOf(lines[top].content);
    header = (cellsOf(lines[top].content, delimiter) ?? []).map((cell) => cell.trim());
    if (header.length > 0 && isHeader(header)) break;
  }
  if (top + 1 >= lines.length) return undefined;
  const faults: CsvFault[] = lines.slice(0, top).map(({ content, line }) => ({
    line,
    expected: "names of columns, or a comment beginning with #",
    received: shortened(content),
  }));
  const below = lines.slice(top + 1);
  const rows: CsvRow[] = [];
  cellsOfAll(below, delimiter).forEach((cells, i) => {
    const { content, line } = below[i];
    if (cells === undefined) {
      faults.push({
        line,
        expected: "cells whose quotes close in the same line",
        received: shortened(content),
      });
    } else if (
      cells.length < header.length ||
      cells.slice(header.length).some((cell) => cell.trim() !== "")
    ) {
      faults.push({ line, expected: `${header.length} cells`, received: `${cells.length}` });
    } else rows.push({ line, cells: cells.length > header.length ? cells.slice(0, header.length) : cells });
  });
  return { header: { line: lines[top].line, cells: header }, rows, faults };
}

function linesOf(text: string): readonly Line[] {
  const lines: Line[] = [];
  text
    .replace(/^\ufeff/, "")
    .replace(/\r\n?/g, "\n")
    .split("\n")
    .forEach((content, i) => {
      if (content.trim() !== "" && !content.startsWith("#")) lines.push({ content, line: i + 1 });
    });
  return lines;
}

/** The delimiter that a header shows: names of columns hold none of the three, so there is nothing to guess. */
function delimiterOf(header: string): string {
  return [";", "\t"].find((mark) => header.includes(mark)) ?? ",";
}

/** The cells of each line, all read at once where they are sound, else line by line to find the ones that are not. */
function cellsOfAll(lines: readonly Line[], delimiter: string): readonly (readonly string[] | undefined)[] {
  if (!lines.some(({ content }) => content.includes('"')))
    return lines.map(({ content }) => content.split(delimiter));
  const { data, errors } = parsed(lines.map(({ content }) => content).join("\n"), delimiter);
  if (errors.length === 0 && data.length === lines.length) return data;
  return lines.map(({ content }) => cellsOf(content, delimiter));
}

function cellsOf(line: string, delimiter: string): readonly string[] | undefined {
  if (!line.includes('"')) return line.split(delimiter);
  const { data, errors } = parsed(line, delimiter);
  return errors.length === 0 ? data[0] : undefined;
}

function parsed(text: string, delimiter: string): ReturnType<typeof Papa.parse> {
  return Papa.parse(text, { delimiter, quoteChar: '"', newline: "\n" });
}

function shortened(content: string): string {
  return content.length > 60 ? `${content.slice(0, 60)}…` : content;
}
