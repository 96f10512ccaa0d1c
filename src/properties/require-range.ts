import type { ValidityRange } from "./range.js";

/** Slack for bounds met by conversion: -60 °C becomes 213.14999999999998 K. */
const ROUNDING = 1e-12;

/** Refuses by name a value that is absent, not a number or outside `range`: for what must not be extrapolated. */
export function requireInRange(
  name: string,
  value: number | undefined,
  range: ValidityRange,
): asserts value is number {
  const expected = `(expected ${range.min} to ${range.max}, ${range.quantity}, ${range.source})`;
  if (value === undefined) throw new TypeError(`missing ${name}: ${value} ${expected}`);
  const slack = ROUNDING * Math.max(Math.abs(range.min), Math.abs(value));
  if (!(value >= range.min - slack && value <= range.max + slack)) {
    throw new RangeError(`invalid ${name}: ${value} ${expected}`);
  }
}
