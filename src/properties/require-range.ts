import type { ValidityRange } from "./range.js";

/** Slack for bounds met by conversion: -60 °C becomes 213.14999999999998 K. */
const ROUNDING = 1e-12;

/** Refuses by name a value that is absent, not a number or outside `range`: for what must not be extrapolated. */
export function requireInRange(
  name: string,
  value: number | undefined,
  range: ValidityRange,
): asserts value is number {
  if (value === undefined) throw new TypeError(`missing ${name}: undefined ${expected(range)}`);
  const low = range.min - ROUNDING * Math.abs(range.min);
  const high = range.max + ROUNDING * Math.abs(range.max);
  if (!(value >= low && value <= high)) throw new RangeError(`invalid ${name}: ${value} ${expected(range)}`);
}

function expected({ quantity, min, max, source }: ValidityRange): string {
  return `(expected ${min} to ${max}, ${quantity}, ${source})`;
}
