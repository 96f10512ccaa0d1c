import { type CsvRow, createLocalClock, isTimeZone, type LocalTimeReading } from "../weather/index.js";
import { type FindingList, placesWhere, range, runsOf } from "./log-findings.js";
import type { LogIssue, LogOptions } from "./log-options.js";
import { resolveOverlaps } from "./log-overlaps.js";
import type { TimeColumns } from "./log-time-columns.js";
import { type DateOrder, dateOrderOf, epochOfNumber, isoOf } from "./log-time-text.js";

/**
 * [s] since 1970 of each row, NaN where its time is faulty (then a finding says why). Undefined, with issues, where the
 * file cannot be dated at all: no zone, or dates that can be read both ways.
 */
export function epochsOf(
  rows: readonly CsvRow[],
  time: TimeColumns,
  options: LogOptions,
  findings: FindingList,
  issues: LogIssue[],
): Float64Array | undefined {
  const zone = time.zone ?? options.zone;
  const place = `column ${time.name}`;
  if (options.zone !== undefined && !isTimeZone(options.zone)) {
    issues.push({
      place: "zone",
      expected: 'an IANA time zone such as "Europe/Oslo"',
      received: options.zone,
    });
    return undefined;
  }
  const [first, second] = time.indices;
  const texts = rows.map(({ cells }) =>
    second === undefined ? cells[first].trim() : `${cells[first].trim()} ${cells[second].trim()}`,
  );
  const order = dateOrderOf(texts) ?? options.dateOrder;
  const readings = readingsOf(texts, order ?? "day-first", zone);
  const isDated = (reading: LocalTimeReading) => reading.ok || reading.reason !== "invalid";
  if (order === undefined && readings.some(isDated) && texts.some((text) => /^\d+[-/]/.test(text))) {
    issues.push({
      place,
      expected: "the option dateOrder: every date can be read both ways",
      received: texts[0],
    });
  }
  if (readings.some((reading) => !reading.ok && reading.reason === "no zone")) {
    issues.push({
      place,
      expected: "times with an offset, or a time zone for the file",
      received: texts[0],
    });
  }
  if (issues.length > 0) return undefined;
  const epochs = resolveOverlaps(readings, texts, zone, options.overlap, findings);
  rejectFaulty(readings, texts, findings);
  return epochs;
}

function readingsOf(
  texts: readonly string[],
  order: DateOrder,
  zone: string | undefined,
): readonly LocalTimeReading[] {
  const clock = createLocalClock(zone);
  return texts.map((text) => {
    const epoch = text.includes(":") ? undefined : epochOfNumber(text);
    if (epoch !== undefined) return { ok: true, epoch };
    const reading = clock(text);
    if (reading.ok || reading.reason !== "invalid") return reading;
    const iso = isoOf(text, order);
    return iso === undefined ? reading : clock(iso);
  });
}

/** One finding for each stretch of rows whose times are no times, or fall into the hour that the clock skips. */
function rejectFaulty(
  readings: readonly LocalTimeReading[],
  texts: readonly string[],
  findings: FindingList,
): void {
  const faulty = placesWhere(readings, (reading) => !reading.ok && reading.reason !== "overlap");
  for (const [first, last] of runsOf(faulty)) {
    const reading = readings[first];
    findings.add(range(first, last), {
      kind: "bad-time",
      expected: reading.ok ? "" : reading.expected,
      received: texts[first] || "nothing",
      rejected: true,
    });
  }
}
