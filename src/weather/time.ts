import { Temporal } from "temporal-polyfill";

/** A local time read against a zone; a time that the clock change skips or repeats is a failure of its own kind. */
export type LocalTimeReading =
  | { readonly ok: true; readonly epoch: number }
  | {
      readonly ok: false;
      readonly reason: "invalid" | "no zone" | "unknown zone" | "gap";
      readonly expected: string;
    }
  | {
      readonly ok: false;
      readonly reason: "overlap";
      readonly expected: string;
      /** [s] since epoch: the two instants the text may mean. */
      readonly earlier: number;
      readonly later: number;
    };

const ISO_TIME = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?)\s?(Z|[+-]\d{2}:?\d{2})?$/i;

/**
 * [s] since epoch of an ISO 8601 date and time. A text with an offset or Z means that instant; without one it is a
 * local time in `zone` (an IANA name). "2026-03-29T02:30" in "Europe/Oslo" is a gap, "2026-10-25T02:30" an overlap.
 * @example epochFromLocal("2026-01-10T05:00", "Europe/Oslo") // { ok: true, epoch: 1768017600 }
 */
export function epochFromLocal(text: string, zone?: string): LocalTimeReading {
  const match = ISO_TIME.exec(text.trim());
  if (match === null) return failure("invalid", "a date and time such as 2026-01-10T05:00");
  const [, date, clock, offset] = match;
  try {
    if (offset !== undefined) return found(Temporal.Instant.from(`${date}T${clock}${offset.toUpperCase()}`));
    const plain = Temporal.PlainDateTime.from(`${date}T${clock}`, { overflow: "reject" });
    if (zone === undefined)
      return failure("no zone", "an offset such as +01:00, or a time zone for the file");
    if (!isTimeZone(zone)) return failure("unknown zone", 'an IANA time zone such as "Europe/Oslo"');
    return inZone(plain, zone);
  } catch {
    return failure("invalid", "a date and time that exist, such as 2026-01-10T05:00");
  }
}

/** Whether `zone` is a time zone name that can be resolved here. */
export function isTimeZone(zone: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return true;
  } catch {
    return false;
  }
}

/**
 * Local date and time to the minute with its offset, so that the two passes of a repeated hour stay distinct.
 * @example localText(1768017600, "Europe/Oslo") // "2026-01-10T05:00+01:00"
 */
export function localText(epoch: number, zone: string): string {
  requireEpoch("epoch", epoch);
  if (!isTimeZone(zone)) throw new RangeError(`unknown zone: ${zone} (expected an IANA time zone)`);
  return Temporal.Instant.fromEpochMilliseconds(Math.round(epoch / 60) * 60_000)
    .toZonedDateTimeISO(zone)
    .toString({ timeZoneName: "never", smallestUnit: "minute" });
}

/**
 * [s] since epoch of the same local time some months on; the last day of a month where it has no such day.
 * @example monthsLater(1769900400, "Europe/Oslo", 2) // 1774994400, from 1 February to 1 April, both at midnight
 */
export function monthsLater(epoch: number, zone: string, months: number): number {
  requireEpoch("epoch", epoch);
  if (!isTimeZone(zone)) throw new RangeError(`unknown zone: ${zone} (expected an IANA time zone)`);
  const start = Temporal.Instant.fromEpochMilliseconds(Math.round(epoch * 1000)).toZonedDateTimeISO(zone);
  return start.add({ months }).epochMilliseconds / 1000;
}

/** UTC date and time to the minute. @example utcText(1768017600) // "2026-01-10T04:00Z" */
export function utcText(epoch: number): string {
  return `${new Date(Math.round(epoch / 60) * 60_000).toISOString().slice(0, 16)}Z`;
}

/**
 * [s] since epoch of a day of the month, hour (24 allowed) and minute in UTC, in the month that puts it nearest to
 * `reference`; undefined where no neighbouring month has that day or the clock time does not exist.
 */
export function epochNear(day: number, hour: number, minute: number, reference: number): number | undefined {
  if (!(hour >= 0 && hour <= 24 && minute >= 0 && minute <= 59 && (hour < 24 || minute === 0)))
    return undefined;
  const base = new Date(reference * 1000);
  let nearest: number | undefined;
  for (const shift of [-1, 0, 1]) {
    const midnight = new Date(Date.UTC(base.getUTCFullYear(), base.getUTCMonth() + shift, day));
    if (midnight.getUTCDate() !== day) continue;
    const epoch = midnight.getTime() / 1000 + hour * 3600 + minute * 60;
    if (nearest === undefined || Math.abs(epoch - reference) < Math.abs(nearest - reference)) nearest = epoch;
  }
  return nearest;
}

export function requireEpoch(name: string, epoch: number): void {
  // A Date holds 1e8 days either side of 1970; a number of milliseconds by mistake is caught far earlier.
  if (!(Math.abs(epoch) < 1e11)) {
    throw new RangeError(`invalid ${name}: ${epoch} (expected seconds since 1970-01-01T00:00Z)`);
  }
}

function inZone(plain: Temporal.PlainDateTime, zone: string): LocalTimeReading {
  const earlier = plain.toZonedDateTime(zone, { disambiguation: "earlier" });
  const later = plain.toZonedDateTime(zone, { disambiguation: "later" });
  if (earlier.epochMilliseconds === later.epochMilliseconds) return found(earlier);
  // In a gap neither instant reads back as the given wall time; in an overlap both do.
  if (!earlier.toPlainDateTime().equals(plain)) {
    return failure("gap", `a time that exists in ${zone}: the clock is put forward across this one`);
  }
  return {
    ok: false,
    reason: "overlap",
    expected: `an offset: the clock in ${zone} passes this time twice`,
    earlier: earlier.epochMilliseconds / 1000,
    later: later.epochMilliseconds / 1000,
  };
}

function found(instant: { readonly epochMilliseconds: number }): LocalTimeReading {
  return { ok: true, epoch: instant.epochMilliseconds / 1000 };
}

function failure(reason: "invalid" | "no zone" | "unknown zone" | "gap", expected: string): LocalTimeReading {
  return { ok: false, reason, expected };
}
