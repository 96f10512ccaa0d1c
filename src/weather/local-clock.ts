import { epochFromLocal, type LocalTimeReading } from "./time.js";

const PLAIN_TIME =
  /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,3}))?)?\s?(?:(Z)|([+-])(\d{2}):?(\d{2}))?$/i;
const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Reads the many times of one file as `epochFromLocal` does, a hundred times as quickly: an hour of the clock is looked
 * up once in the zone, and where it is whole (no change of the clock within it) its offset serves all its minutes.
 */
export function createLocalClock(zone?: string): (text: string) => LocalTimeReading {
  /** [s] what the clock is ahead of UTC in the hours met so far; undefined for hours to be read time by time. */
  const offsets = new Map<number, number | undefined>();
  return (text) => {
    const match = PLAIN_TIME.exec(text.trim());
    if (match === null) return epochFromLocal(text, zone);
    const [, year, month, day, hour, minute, second = "0", fraction = "", utc, sign, hours, minutes] = match;
    const clock = clockSeconds(+year, +month, +day, +hour, +minute, +second);
    if (clock === undefined) return epochFromLocal(text, zone);
    const whole = clock + Number(`0.${fraction}0`);
    if (utc !== undefined) return { ok: true, epoch: whole };
    if (sign !== undefined) {
      const ahead = +hours * 3600 + +minutes * 60;
      // Offsets beyond a day are left to the strict reader to refuse.
      if (+hours > 18 || +minutes > 59) return epochFromLocal(text, zone);
      return { ok: true, epoch: sign === "-" ? whole + ahead : whole - ahead };
    }
    if (zone === undefined) return epochFromLocal(text, zone);
    const offset = offsetOfHour(Math.floor(clock / 3600), zone, offsets);
    return offset === undefined ? epochFromLocal(text, zone) : { ok: true, epoch: whole - offset };
  };
}

/** [s] since 1970 of a date and time taken as UTC; undefined where they do not exist. */
function clockSeconds(
  year: number,
  month: number,
  day: number,
  hour: number,
  minute: number,
  second: number,
): number | undefined {
  if (!(month >= 1 && month <= 12 && day >= 1 && hour < 24 && minute < 60 && second < 60)) return undefined;
  const leap = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  if (day > DAYS[month - 1] + (leap ? 1 : 0) || year < 1000) return undefined;
  return Date.UTC(year, month - 1, day, hour, minute, second) / 1000;
}

function offsetOfHour(
  hour: number,
  zone: string,
  offsets: Map<number, number | undefined>,
): number | undefined {
  if (offsets.has(hour)) return offsets.get(hour);
  const [first, last] = [hour * 3600, hour * 3600 + 3599].map((clock) => {
    const reading = epochFromLocal(new Date(clock * 1000).toISOString().slice(0, 19), zone);
    return reading.ok ? clock - reading.epoch : undefined;
  });
  const offset = first === last ? first : undefined;
  offsets.set(hour, offset);
  return offset;
}
