/** Throws unless `low <= value <= high`; written so that NaN fails. */
export function requireInside(name: string, value: number, low: number, high: number, unit: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`invalid ${name}: ${value} (expected ${low} to ${high} ${unit})`);
  }
}

/** Throws unless `value` is finite and above zero; written so that NaN fails. */
export function requirePositive(name: string, value: number, unit: string): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`invalid ${name}: ${value} (expected above 0 ${unit})`);
  }
}

/** Throws unless `value` is finite and not below zero; written so that NaN fails. */
export function requireNotNegative(name: string, value: number, unit: string): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`invalid ${name}: ${value} (expected 0 ${unit} or more)`);
  }
}
