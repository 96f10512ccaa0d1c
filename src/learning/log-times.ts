import { type CsvRow, createLocalClock, isTimeZone, type LocalTimeReading } from "../weather/index.js";
import { type FindingList, placesWhere, range, runsOf } from "./log-findings.js";
import type { LogIssue, LogOptions } from "./log-options.js";
import { resolveOverlaps } from "./log-overlaps.js";
import type { TimeColumns } from "./log-time-columns.js";
import { type DateOrder, dateOrderOf, epochOfNumber, isoOf, kindOfTimeText } from "./log-time-text.js";

/**
 * [s] since 1970 of each row, NaN where its time is faulty (then a finding says why). Undefined, with issues, where the
 * file cannot be dated at all: no zone, or dates that can be read both ways.
 */
export function epochsOf(
  rows: readonly CsvRow[],
  time: TimeColumns,
  options: LogOptions & { readonly heading: readonly string[] },
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
  const written = rows.map(({ cells }) => time.indices.map((i) => cells[i].trim()).join(" "));
  const texts = datedByHeading(written, options.heading);
  const dateless = texts.every((text) => text === "" || kindOfTimeText(text) === "clock");
  if (dateless && texts.some((text) => text !== "")) {
    const expected = "a date beside the clock times, or in a line above the header, such as Date: 2026-01-31";
    issues.push({ place, expected, received: texts.find((text) => text !== "") ?? "" });
    return undefined;
  }
  const order = dateOrderOf(texts) ?? options.dateOrder ?? orderNear(texts, options.near, zone);
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

/**
 * The order by which the first date lies nearer to a moment, and not after it; undefined where nobody told one, or both
 * orders lie as near.
 */
function orderNear(
  texts: readonly string[],
  near: number | undefined,
  zone: string | undefined,
): DateOrder | undefined {
  if (near === undefined) return undefined;
  const [day, month] = (["day-first", "month-first"] as const).map((order) => {
    const reading = readingsOf(texts, order, zone).find((one) => one.ok);
    const ago = reading?.ok ? near - reading.epoch : Number.NaN;
    // A log a day ahead of its document is one of another day.
    return ago < -SECONDS_OF_DAY ? Number.POSITIVE_INFINITY : Math.abs(ago);
  });
  if (Math.abs(day - month) < SECONDS_OF_DAY || Number.isNaN(day - month)) return undefined;
  return day < month ? "day-first" : "month-first";
}

const SECONDS_OF_DAY = 86_400;

/** Clock times whose date stands above the header; each time the clock goes back, a day has passed. */
function datedByHeading(texts: readonly string[], heading: readonly string[]): readonly string[] {
  const first = texts.find((text) => text !== "");
  if (first === undefined || kindOfTimeText(first) !== "clock") return texts;
  const date = heading
    .map((line) => /\d{4}-\d{2}-\d{2}/.exec(line)?.[0])
    .find((found) => found !== undefined);
  if (date === undefined) return texts;
  let day = 0;
  let before = -1;
  return texts.map((text) => {
    const [, hour, minute] = /^(\d{1,2})[:.h](\d{2})/.exec(text) ?? [];
    const now = 60 * Number(hour) + Number(minute);
    if (now < before - 12 * 60) day++;
    if (now >= 0) before = now;
    const at = new Date(Date.parse(`${date}T00:00Z`) + day * SECONDS_OF_DAY * 1000);
    return `${at.toISOString().slice(0, 10)} ${text}`;
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
