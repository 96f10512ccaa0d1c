import type { LogFinding } from "./log.js";
import { columnsOf, type ProbeColumn } from "./log-columns.js";
import { fallsIn } from "./log-fell-out.js";
import { createFindingList } from "./log-findings.js";
import type { LogIssue, LogOptions, LogReading } from "./log-options.js";
import { orderOf } from "./log-order.js";
import { type JudgedLog, type JudgedSeries, settle } from "./log-series.js";
import { coolDownsIn, runningOf } from "./log-signals.js";
import { spikesIn } from "./log-spikes.js";
import { stuckIn } from "./log-stuck.js";
import { logTableOf } from "./log-table.js";
import { epochsOf } from "./log-times.js";
import { temperaturesOf } from "./log-values.js";

/**
 * Reads logged temperatures from a CSV of any data logger or engine monitor: a header line, one row for each time, one
 * column for each probe. What columns are is taken from their names (log-words.ts), units and values, or told in the
 * options, and all of it is in `taken` to be confirmed; what stays open is asked in `needed`, and those columns are left out
 * meanwhile. Times: ISO 8601 or day, month and year in any usual order, in one
 * column or date and clock in two, with an offset, in the zone of the options, or seconds or milliseconds since 1970.
 * Every cell of the probes' columns is either in the log or in a finding that names its line and column.
 * @example readTemperatureLog("time,oil_c\n2026-01-10T05:00Z,-27.5\n2026-01-10T05:01Z,-27.4\n")
 */
export function readTemperatureLog(text: string, options: LogOptions = {}): LogReading {
  const issues: LogIssue[] = [];
  const refused = (): LogReading => ({ ok: false, issues });
  const table = logTableOf(text, options);
  if (table === undefined) {
    issues.push({
      place: "file",
      expected: "a line of column names and rows below",
      received: "fewer lines",
    });
    return refused();
  }
  const { rows, heading } = table;
  const columns = columnsOf(table.header.cells, table.units, rows, options, issues);
  if (columns === undefined) return refused();

  const findings = createFindingList(rows.map(({ line }) => line));
  const epochs = epochsOf(rows, columns.time, { ...options, heading }, findings, issues);
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
  const probes = withMeans(log.series, columns.probes);
  const running = runningOf(rows, order, columns.signals);
  const coolDowns = coolDownsIn(log.time, running, (k) =>
    probes.some(({ place, temps }) => typeof place === "object" && !Number.isNaN(temps[k])),
  );
  const first = running.indexOf(true);
  const last = rows[rows.length - 1].line;
  const { questions, taken, engine } = columns;
  return {
    ok: true,
    log: {
      time: log.time,
      probes,
      findings: [...faults, ...findings.all],
      origin: `file ${options.name ?? "CSV"}, lines ${rows[0].line}-${last}`,
      taken,
      ...(engine === undefined ? {} : { engine }),
      ...(coolDowns.length > 0 ? { coolDowns } : {}),
      ...(first >= 0 ? { ranFrom: log.time[first] } : {}),
    },
    ...(questions.length > 0 ? { needed: questions } : {}),
  };
}

/** [K] the mean of each group where all of it that ever reads has a reading, in place of its columns. */
function withMeans(
  series: readonly JudgedSeries[],
  columns: readonly ProbeColumn[],
): readonly JudgedSeries[] {
  const done = new Set<string>();
  return series.flatMap((one, p) => {
    const { group } = columns[p];
    if (group === undefined) return [one];
    if (done.has(group)) return [];
    done.add(group);
    const all = series.filter((_, q) => columns[q].group === group);
    const read = all.filter(({ temps }) => temps.some((temp) => !Number.isNaN(temp)));
    const temps = one.temps.map((_, k) => read.reduce((sum, r) => sum + r.temps[k], 0) / read.length);
    return [{ name: group, place: one.place, temps }];
  });
}
