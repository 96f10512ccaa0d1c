/** Between a number and its unit, so that they stay on one line; printed as a space. */
const NBSP = "\u00a0";

/** Local time with offset. */
interface Moment {
  readonly time: string;
}

/** Local clock time; with the day where it is not the day one is speaking of. @example "Wed 23:35" */
export function clock(stamp: Moment, sameDayAs: Moment): string {
  const time = stamp.time.slice(11, 16);
  return dateOf(stamp) === dateOf(sameDayAs) ? time : `${weekday(stamp)}${NBSP}${time}`;
}

/** @example "Thu 15 Jan 2026" */
export function day(stamp: Moment): string {
  const [year, month, date] = dateOf(stamp).split("-").map(Number);
  return `${weekday(stamp)} ${date} ${MONTHS[month - 1]} ${year}`;
}

function weekday(stamp: Moment): string {
  const [year, month, date] = dateOf(stamp).split("-").map(Number);
  return WEEKDAYS[new Date(Date.UTC(year, month - 1, date)).getUTCDay()];
}

function dateOf({ time }: Moment): string {
  return time.slice(0, 10);
}

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
