import type { BaseProbe } from "../logbook/index.js";
import { celsiusFromFahrenheit, celsiusFromKelvin } from "../units/index.js";

/** [°C] Outside it no part of an aircraft can be; the logbook's own limits. */
const COLDEST_C = -90;
const HOTTEST_C = 400;
/** [ms] A reading from later than this after its arrival has a wrong clock. Project judgement. */
const FUTURE_MS = 120_000;
/** [ms] 2020-01-01: before it a device's clock was never set. */
const PAST_MS = Date.UTC(2020, 0, 1);

/** What a probe said that is no reading. */
export class Unreadable extends Error {
  constructor(
    /** Place in the message; empty for the whole. */
    readonly at: string,
    readonly expected: string,
    readonly received: unknown,
  ) {
    super(expected);
  }
}

/** [°C] of what a probe said at a place of its message. Throws Unreadable. */
export function celsiusFrom(probe: BaseProbe, value: unknown, at: string): number {
  const number = numberFrom(value);
  if (number === undefined) throw new Unreadable(at, "a number", value);
  const tempC = IN_CELSIUS[probe.unit](number) + (probe.offset_c ?? 0);
  if (tempC >= COLDEST_C && tempC <= HOTTEST_C) return tempC;
  throw new Unreadable(at, `a temperature of ${COLDEST_C} to ${HOTTEST_C} °C`, `${tempC} °C`);
}

const IN_CELSIUS: Record<BaseProbe["unit"], (value: number) => number> = {
  c: (value) => value,
  f: celsiusFromFahrenheit,
  k: celsiusFromKelvin,
};

/** [ms] The time at a place of a message. Throws Unreadable. */
export function timeFrom(raw: unknown, at: string, arrived: number): number {
  const time = millisecondsFrom(raw);
  if (time === undefined) throw new Unreadable(at, "ISO 8601 with offset, or seconds since 1970", raw);
  if (time > arrived + FUTURE_MS)
    throw new Unreadable(at, `a time no later than ${FUTURE_MS / 1000} s after its arrival`, raw);
  if (time < PAST_MS) throw new Unreadable(at, "a time since 2020", raw);
  return time;
}

/** Numbers only: an empty text, true or null would all pass as 0 or 1 otherwise. */
function numberFrom(raw: unknown): number | undefined {
  if (typeof raw === "string" && !/^\s*[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i.test(raw)) return undefined;
  const value = typeof raw === "string" || typeof raw === "number" ? Number(raw) : Number.NaN;
  return Number.isFinite(value) ? value : undefined;
}

const ISO = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:?\d{2})$/;

function millisecondsFrom(raw: unknown): number | undefined {
  const seconds = numberFrom(raw);
  if (seconds !== undefined) return seconds * 1000;
  if (typeof raw !== "string" || !ISO.test(raw)) return undefined;
  const time = Date.parse(raw);
  return Number.isFinite(time) ? time : undefined;
}
