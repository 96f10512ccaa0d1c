/** Throws unless `low <= value <= high`; written so that NaN fails. */
export function requireInside(name: string, value: number, low: number, high: number, unit: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`invalid ${name}: ${value} (expected ${low} to ${high} ${unit})`);
  }
}
