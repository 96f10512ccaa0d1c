import { finding } from "../findings/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { epochFromLocal, isTimeZone, localText } from "../weather/index.js";
import type { Path } from "./issue.js";
import { fault, type Notes } from "./reading.js";
import type { ScenarioSections } from "./scenario-schema.js";

/** When a scenario runs. Times are [s] since 1970-01-01T00:00Z. */
export interface Clock {
  readonly start: number;
  readonly end: number;
  /** IANA zone, or the fixed offset of the start where the document names none. */
  readonly zone: string;
}

/** A time as documents give it: hours from the start, or a date and time. */
export interface Moment {
  readonly at_h?: number;
  readonly time?: string;
}

export function clockOf(
  { start, zone, hours }: Pick<ScenarioSections, "start" | "zone" | "hours">,
  notes: Notes,
): Clock | undefined {
  const zoneKnown = zone === undefined || isTimeZone(zone);
  if (!zoneKnown) fault(notes, ["zone"], 'an IANA time zone such as "Europe/Oslo"', zone);
  if (start === undefined) return undefined;
  const reading = epochFromLocal(start);
  if (!reading.ok) return fault(notes, ["start"], START_FORM, start);
  if (!zoneKnown || hours === undefined) return undefined;
  const offset = offsetOf(start);
  if (zone === undefined) {
    notes.assumptions.push(finding("zone-of-start", { offset: offset === "UTC" ? "UTC" : `UTC${offset}` }));
  }
  return { start: reading.epoch, end: reading.epoch + hours * SECONDS_OF_HOUR, zone: zone ?? offset };
}

const START_FORM = "a date and time with offset, such as 2026-01-14T18:00+01:00";

/** [s] since epoch of a moment; undefined, with an issue, when it says nothing or two things. */
export function epochOfMoment(
  { at_h, time }: Moment,
  path: Path,
  clock: Clock,
  notes: Notes,
): number | undefined {
  if ((at_h === undefined) === (time === undefined)) {
    return fault(notes, path, "either at_h or time", at_h === undefined ? "neither" : "both");
  }
  if (at_h !== undefined) return clock.start + at_h * SECONDS_OF_HOUR;
  return epochOfText(time ?? "", [...path, "time"], clock, notes);
}

export function epochOfText(text: string, path: Path, { zone }: Clock, notes: Notes): number | undefined {
  const reading = epochFromLocal(text, zone);
  return reading.ok ? reading.epoch : fault(notes, path, reading.expected, text);
}

/**
 * [s] since epoch of a departure: a date and time, or HH:MM, which is the next time after the start that the clock
 * shows it.
 */
export function epochOfDeparture(text: string, path: Path, clock: Clock, notes: Notes): number | undefined {
  if (!/^\d{1,2}:\d{2}$/.test(text)) {
    if (/^\d{4}-/.test(text)) return epochOfText(text, path, clock, notes);
    return fault(notes, path, "HH:MM, or a date and time such as 2026-01-15T10:00+01:00", text);
  }
  const today = localText(clock.start, clock.zone).slice(0, 10);
  const hhmm = text.padStart(5, "0");
  for (const date of [today, dayAfter(today), dayAfter(dayAfter(today))]) {
    const reading = epochFromLocal(`${date}T${hhmm}`, clock.zone);
    if (!reading.ok) return fault(notes, path, reading.expected, text);
    if (reading.epoch > clock.start) return reading.epoch;
  }
  return undefined;
}

function dayAfter(date: string): string {
  const [year, month, day] = date.split("-").map(Number);
  return new Date(Date.UTC(year, month - 1, day + 1)).toISOString().slice(0, 10);
}

/** "+01:00" of a text that ends in an offset, "UTC" for Z. */
function offsetOf(text: string): string {
  const offset = /([+-]\d{2}):?(\d{2})\s*$/.exec(text);
  return offset === null ? "UTC" : `${offset[1]}:${offset[2]}`;
}
