import Papa from "papaparse";
import { type DocumentIssue, issueAt } from "../documents/index.js";
import { epochFromLocal, readCsvTable } from "../weather/index.js";
import { idSchema } from "./set-up.js";

/** A temperature as a probe gave it, or the mean of a minute of them; what a store keeps. */
export interface ProbeReading {
  /** Aircraft id, or "base" for the base's own probes. */
  readonly aircraft: string;
  readonly probe: string;
  /** [ms] since 1970 UTC. */
  readonly time: number;
  /** [°C] */
  readonly tempC: number;
}

const COLUMNS = ["aircraft", "probe", "time", "temp_c"] as const;
/** [°C] what a reading can be at all, as in the events. */
const LEAST = -90;
const MOST = 400;
const NUMBER = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/i;

export function readingsToCsv(readings: Iterable<ProbeReading>): string {
  const rows = Array.from(readings, ({ aircraft, probe, time, tempC }) => [
    aircraft,
    probe,
    new Date(time).toISOString(),
    String(tempC),
  ]);
  return `${Papa.unparse([COLUMNS, ...rows], { newline: "\r\n" })}\r\n`;
}

export function readReadingsCsv(text: string): {
  readonly readings: readonly ProbeReading[];
  readonly issues: readonly DocumentIssue[];
} {
  const isHeader = (cells: readonly string[]) => COLUMNS.every((name) => cells.includes(name));
  const table = readCsvTable(text, isHeader);
  if (table === undefined) {
    const expected = `a line of column names (${COLUMNS.join(", ")}) and rows below`;
    return { readings: [], issues: [{ path: "document", expected, received: "none" }] };
  }
  const issues: DocumentIssue[] = table.faults.map(({ line, ...rest }) => ({
    path: `line ${line}`,
    ...rest,
  }));
  const [aircraftAt, probeAt, timeAt, tempAt] = COLUMNS.map((name) => table.header.cells.indexOf(name));
  const readings: ProbeReading[] = [];
  for (const { line, cells } of table.rows) {
    const before = issues.length;
    const cell = (at: number) => cells[at].trim();
    const at = (name: string) => [`line ${line}`, name];
    for (const [name, value] of [
      ["aircraft", cell(aircraftAt)],
      ["probe", cell(probeAt)],
    ]) {
      const id = idSchema.safeParse(value);
      if (!id.success) issues.push(issueAt(at(name), id.error.issues[0].message, value));
    }
    const time = epochFromLocal(cell(timeAt));
    if (!time.ok) issues.push(issueAt(at("time"), time.expected, cell(timeAt)));
    const tempC = NUMBER.test(cell(tempAt)) ? Number(cell(tempAt)) : Number.NaN;
    if (!(tempC >= LEAST && tempC <= MOST)) {
      issues.push(issueAt(at("temp_c"), `a number from ${LEAST} to ${MOST}`, cell(tempAt)));
    }
    if (issues.length > before || !time.ok) continue;
    readings.push({
      aircraft: cell(aircraftAt),
      probe: cell(probeAt),
      time: Math.round(time.epoch * 1000),
      tempC,
    });
  }
  return { readings, issues };
}
