import Papa from "papaparse";
import { type DocumentIssue, issueAt } from "../documents/index.js";
import type { LogbookEvent } from "./events.js";
import { type EventsReading, readAll, standingOf } from "./events-reading.js";
import { FORMER_WEAKEST } from "./migrate-event.js";

type CellKind = "text" | "said" | "number" | "boolean" | "list" | "json";

/**
 * Every key an event can have, in the order of the columns.
 * @internal
 */
export const EVENT_COLUMNS: Readonly<Record<string, CellKind>> = {
  id: "text",
  at: "text",
  kind: "text",
  aircraft: "text",
  by: "text",
  note: "text",
  heaters: "list",
  covers: "list",
  to: "text",
  is: "text",
  how: "text",
  part: "text",
  temp_c: "number",
  switch: "text",
  probe: "text",
  departure: "text",
  chance: "number",
  pulled_out: "boolean",
  of: "text",
  reason: "said",
  status: "text",
  plug_in: "text",
  unplug: "text",
  weakest: "text",
  message: "said",
  energy_kwh: "number",
  bands: "json",
  corrected: "json",
  readings: "json",
  fault: "text",
  text: "said",
  origin: "text",
  base: "json",
  weather: "json",
  instead: "json",
};

/** A logbook as a table (RFC 4180), an event a row, empty cells for what an event does not have. */
export function eventsToCsv(events: Iterable<LogbookEvent>): string {
  const names = Object.keys(EVENT_COLUMNS);
  const rows = Array.from(events, (event) => {
    const values = event as Readonly<Record<string, unknown>>;
    return names.map((name) => cellOf(values[name], EVENT_COLUMNS[name]));
  });
  return `${Papa.unparse([names, ...rows], { newline: "\r\n" })}\r\n`;
}

/** Reads such a table, with comma, semicolon or tab between cells; columns may be left out or stand in any order. */
export function readEventsCsv(source: string): EventsReading {
  const text = source.replace(/^\ufeff/, "");
  const delimiter = [";", "\t"].find((mark) => text.slice(0, text.indexOf("\n")).includes(mark)) ?? ",";
  const { data, errors } = Papa.parse(text, { delimiter, skipEmptyLines: "greedy" });
  const [names = [], ...rows] = data;
  const header = names.map((name) => (name === FORMER_WEAKEST ? "weakest" : name));
  const faults = errors.map(({ row = 0, message }) => issueAt([`row ${row + 1}`], "a sound row", message));
  const issues: DocumentIssue[] = [...faults, ...headerIssues(header)];
  if (issues.length > 0) return { events: [], issues };
  const sound = rows.flatMap((cells, i) => {
    if (cells.length === header.length) return [{ row: i + 2, event: eventOf(header, cells) }];
    issues.push(issueAt([`row ${i + 2}`], `${header.length} cells`, cells.length));
    return [];
  });
  const list = sound.map(({ event }) => event);
  const read = readAll(list, (i) => [`row ${sound[i].row}`], standingOf(list));
  const rowOf = ({ path }: DocumentIssue) => Number(/^row (\d+)/.exec(path)?.[1]);
  return { events: read.events, issues: [...issues, ...read.issues].sort((a, b) => rowOf(a) - rowOf(b)) };
}

function headerIssues(header: readonly string[]): DocumentIssue[] {
  const known = Object.keys(EVENT_COLUMNS);
  const strange = header.filter((name) => !known.includes(name));
  const twice = header.filter((name, i) => header.indexOf(name) < i);
  const missing = ["id", "at", "kind"].filter((name) => !header.includes(name));
  return [
    ...strange.map((name) => issueAt(["row 1"], `columns of ${known.join(", ")}`, name)),
    ...twice.map((name) => issueAt(["row 1"], "each column once", name)),
    ...missing.map((name) => issueAt(["row 1"], `a column ${name}`, undefined)),
  ];
}

function eventOf(header: readonly string[], cells: readonly string[]): unknown {
  const values = new Map<string, unknown>();
  header.forEach((name, i) => {
    if (cells[i] !== "") values.set(name, valueIn(cells[i], EVENT_COLUMNS[name]));
  });
  if (values.get("kind") === "plan-issued") {
    // Where these are empty they say something: nothing to plug in, no weakest point.
    if (!values.has("plug_in")) values.set("plug_in", null);
    if (!values.has("weakest")) values.set("weakest", "");
  }
  return Object.fromEntries(values);
}

function cellOf(value: unknown, kind: CellKind): string {
  if (value === undefined) return "";
  if (kind === "json") return JSON.stringify(value);
  if (value === null) return "";
  if (kind === "list") {
    const ids = value as readonly string[];
    const plain = ids.length > 0 && ids.every((id) => /^[\w-]+$/.test(id));
    return plain ? guarded(ids.join(" ")) : JSON.stringify(ids);
  }
  if (typeof value === "object") return JSON.stringify(value);
  return kind === "text" || kind === "said" ? guarded(String(value)) : String(value);
}

function valueIn(cell: string, kind: CellKind): unknown {
  switch (kind) {
    case "text":
      return unguarded(cell);
    case "said":
      return cell.startsWith('{"code":') ? jsonOr(cell) : unguarded(cell);
    case "number":
      return /^-?\d+(\.\d+)?(e[+-]?\d+)?$/i.test(cell.trim()) ? Number(cell) : cell;
    case "boolean":
      return /^true$/i.test(cell) || (/^false$/i.test(cell) ? false : cell);
    case "list":
      return cell.startsWith("[") ? jsonOr(cell) : unguarded(cell).trim().split(/\s+/);
    case "json":
      return jsonOr(cell);
  }
}

/** What begins like a formula is not to be run by the spreadsheet that opens the file. */
function guarded(text: string): string {
  return /^['=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

function unguarded(cell: string): string {
  return /^'['=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell;
}

/** As it stands where it is no JSON: the schema then names the cell. */
function jsonOr(cell: string): unknown {
  try {
    return JSON.parse(cell);
  } catch {
    return cell;
  }
}
