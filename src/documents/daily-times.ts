import { createLocalClock, epochFromLocal, localText } from "../weather/index.js";

const WEEKDAYS = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/**
 * [s] since epoch of "HH:MM" local time on every day from `start` to `end`, or on some weekdays only. Where the clock is put
 * forward across it, the moment of the change; where it comes twice, the first.
 */
export function dailyTimes(
  clock: string,
  { start, end, zone }: { readonly start: number; readonly end: number; readonly zone: string },
  days: readonly Weekday[] = WEEKDAYS,
): number[] {
  const read = createLocalClock(zone);
  const first = localText(start, zone).slice(0, 10);
  const last = localText(end, zone).slice(0, 10);
  const times: number[] = [];
  for (let date = first; date <= last; date = dayAfter(date)) {
    const weekday = WEEKDAYS[new Date(`${date}T00:00Z`).getUTCDay()];
    if (!days.includes(weekday)) continue;
    const reading = read(`${date}T${clock}`);
    const epoch = reading.ok ? reading.epoch : changed(reading, date, zone);
    if (epoch >= start && epoch <= end) times.push(epoch);
  }
  return times;
}

function changed(reading: ReturnType<typeof epochFromLocal>, date: string, zone: string): number {
  if (reading.ok) return reading.epoch;
  if (reading.reason === "overlap") return reading.earlier;
  // A gap: the first local time of the day after it, to the minute.
  for (let minute = 1; minute < 24 * 60; minute++) {
    const text = `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
    const before = epochFromLocal(`${date}T${text}`, zone);
    if (!before.ok && before.reason === "gap") {
      for (let after = minute + 1; after < 24 * 60; after++) {
        const hhmm = `${String(Math.floor(after / 60)).padStart(2, "0")}:${String(after % 60).padStart(2, "0")}`;
        const found = epochFromLocal(`${date}T${hhmm}`, zone);
        if (found.ok) return found.epoch;
      }
    }
  }
  throw new RangeError(`invalid clock: ${date} in ${zone} (expected a time of that day)`);
}

function dayAfter(date: string): string {
  return new Date(Date.parse(`${date}T00:00Z`) + 86_400_000).toISOString().slice(0, 10);
}
