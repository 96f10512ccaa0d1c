// Clock times in the base's zone, 24 h. Times are [ms] since 1970 UTC.

const clocks = new Map<string, Intl.DateTimeFormat>();

function formatOf(key: string, language: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const known = clocks.get(key);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat(language, options);
  clocks.set(key, made);
  return made;
}

/** @example "07:05" */
export function clockText(at: number, zone: string): string {
  // One language for all: digits with a colon are read everywhere.
  return formatOf(`clock ${zone}`, "en-GB", {
    timeZone: zone,
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
  }).format(at);
}

/** @example "Thu 15 Jan" */
export function dayText(at: number, zone: string, language: string): string {
  return formatOf(`day ${zone} ${language}`, language, {
    timeZone: zone,
    weekday: "short",
    day: "numeric",
    month: "short",
  }).format(at);
}

export function weekdayText(at: number, zone: string, language: string): string {
  return formatOf(`weekday ${zone} ${language}`, language, { timeZone: zone, weekday: "short" }).format(at);
}

/** [ms] within which a clock time can mean but one moment. */
const WITHIN_A_DAY = 22 * 3_600_000;

/** Clock time, with the weekday where it lies more than a day off the time one speaks at. @example "Wed 23:35" */
export function clockBeside(at: number, now: number, zone: string, language: string): string {
  const clock = clockText(at, zone);
  const isClear = at - now < WITHIN_A_DAY && (at >= now || dayKey(at, zone) === dayKey(now, zone));
  return isClear ? clock : `${weekdayText(at, zone, language)} ${clock}`;
}

/** @example "2026-01-15" */
export function dayKey(at: number, zone: string): string {
  return formatOf(`key ${zone}`, "sv-SE", { timeZone: zone }).format(at);
}

/** Local hour [0..23]. */
export function hourOf(at: number, zone: string): number {
  return Number(clockText(at, zone).slice(0, 2));
}

/** The first full local hour at or before a time; offsets of half hours are kept. */
export function fullHour(at: number, zone: string): number {
  const minutes = Number(clockText(at, zone).slice(3));
  return Math.floor(at / 60_000) * 60_000 - minutes * 60_000;
}

/** The next moment after `after` at which the clock of the zone shows HH:MM. */
export function nextClock(text: string, after: number, zone: string): number | undefined {
  const match = /^(\d{1,2}):(\d{2})$/.exec(text);
  if (match === null || Number(match[1]) > 23 || Number(match[2]) > 59) return undefined;
  const wanted = text.padStart(5, "0");
  const minute = 60_000;
  const first = Math.floor(after / minute) * minute + minute;
  // Two days by minutes: rare, and right over every change of the clock.
  for (let at = first; at < first + 2 * 24 * 60 * minute; at += minute) {
    if (clockText(at, zone) === wanted) return at;
  }
  return undefined;
}

/** @example isoOf(0) // "1970-01-01T00:00:00.000Z" */
export function isoOf(at: number): string {
  return new Date(at).toISOString();
}

/** For an input of kind datetime-local. @example "2026-01-15T10:00" */
export function localInput(at: number, zone: string): string {
  return `${dayKey(at, zone)}T${clockText(at, zone)}`;
}

/** The moment a datetime-local input means in the zone: the first that shows it, where a clock shows it twice. */
export function momentOfInput(text: string, zone: string): number | undefined {
  const guess = Date.parse(`${text}Z`);
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(text) || Number.isNaN(guess)) return undefined;
  for (let quarter = -15 * 4; quarter <= 15 * 4; quarter++) {
    const at = guess + quarter * 15 * 60_000;
    if (localInput(at, zone) === text) return at;
  }
  return undefined;
}
