import { readCsvTable } from "../weather/index.js";
import type { LogFinding } from "./log.js";
import { columnsOf, isUnitRow } from "./log-columns.js";
import { fallsIn } from "./log-fell-out.js";
import { createFindingList } from "./log-findings.js";
import type { LogIssue, LogOptions, LogReading } from "./log-options.js";
import { orderOf } from "./log-order.js";
import { type JudgedLog, settle } from "./log-series.js";
import { spikesIn } from "./log-spikes.js";
import { stuckIn } from "./log-stuck.js";
import { namesTime } from "./log-time-columns.js";
import { kindOfTimeText } from "./log-time-text.js";
import { epochsOf } from "./log-times.js";
import { temperaturesOf } from "./log-values.js";

/** Lines that are searched for the header before the first of all is taken for it. */
const PREAMBLE = 40;

/**
 * Reads logged temperatures from a CSV of any logger: a header line, one row for each time, one column for each probe.
 * What columns are is guessed from their names (log-words.ts) or told in the options; what stays open is asked in
 * `needed`, and those columns are left out meanwhile. Times: ISO 8601 or day, month and year in any usual order, in one
 * column or date and clock in two, with an offset, in the zone of the options, or seconds or milliseconds since 1970.
 * Every cell of the probes' columns is either in the log or in a finding that names its line and column.
 * @example readTemperatureLog("time,oil_c\n2026-01-10T05:00Z,-27.5\n2026-01-10T05:01Z,-27.4\n")
 */
export function readTemperatureLog(text: string, options: LogOptions = {}): LogReading {
  const issues: LogIssue[] = [];
  const refused = (): LogReading => ({ ok: false, issues });
  const table = tableOf(text, options);
  if (table === undefined) {
    issues.push({
      place: "file",
      expected: "a line of column names and rows below",
      received: "fewer lines",
    });
    return refused();
  }
  const hasUnitRow = table.rows.length > 0 && isUnitRow(table.rows[0].cells);
  const rows = hasUnitRow ? table.rows.slice(1) : table.rows;
  const columns = columnsOf(
    table.header.cells,
    hasUnitRow ? table.rows[0].cells : undefined,
    rows,
    options,
    issues,
  );
  if (columns === undefined) return refused();

  const findings = createFindingList(rows.map(({ line }) => line));
  const epochs = epochsOf(rows, columns.time, options, findings, issues);
  if (epochs === undefined) return refused();
  const order = orderOf(rows, epochs, findings);
  if (order.length === 0) {
    issues.push({
      place: "file",
      expected: "at least one row with a time",
      received: rows.length === 0 ? "no row of as many cells as the header has" : findings.all[0].received,
    });
    return refused();
  }
  const temps = temperaturesOf(rows, order, columns.probes, findings);
  const log: JudgedLog = {
    time: Float64Array.from(order, (r) => epochs[r]),
    order,
    series: columns.probes.map(({ name, place }, p) => ({ name, place, temps: temps[p] })),
  };
  // Spikes first, for they would hide the rest; what has fallen out may stand still as the air does.
  for (const find of [spikesIn, fallsIn, stuckIn]) {
    for (const series of log.series) {
      for (const doubt of find(series, log)) settle(doubt, series, log, findings);
    }
  }
  const faults = table.faults.map(
    ({ line, ...fault }): LogFinding => ({
      kind: "bad-value",
      place: `line ${line}`,
      ...fault,
      rejected: true,
    }),
  );
  const last = table.rows[table.rows.length - 1].line;
  return {
    ok: true,
    log: {
      time: log.time,
      probes: log.series,
      findings: [...faults, ...findings.all],
      origin: `file ${options.name ?? "CSV"}, lines ${rows[0].line}-${last}`,
    },
    ...(columns.questions.length > 0 ? { needed: columns.questions } : {}),
  };
}

/** The header is the first line that names a time and holds none; loggers often say what they are above it. */
function tableOf(text: string, { columns }: LogOptions): ReturnType<typeof readCsvTable> {
  const told = new Set(
    Object.entries(columns ?? {}).flatMap(([name, use]) =>
      use === "time" || use === "date" || use === "clock" ? [name.trim().toLowerCase()] : [],
    ),
  );
  let searched = 0;
  const isHeader = (cells: readonly string[]) =>
    cells.length > 1 &&
    searched++ < PREAMBLE &&
    cells.every((cell) => kindOfTimeText(cell) === undefined) &&
    cells.some((cell) => namesTime(cell) || told.has(cell.toLowerCase()));
  return readCsvTable(text, isHeader) ?? readCsvTable(text);
}
