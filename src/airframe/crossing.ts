/**
 * [same unit as `times`] from when on `values` stay at or below `limit` to the end, linear between samples; Infinity when
 * they end above it.
 */
export function timeLastAbove(times: Float64Array, values: ArrayLike<number>, limit: number): number {
  let s = times.length - 1;
  if (values[s] > limit) return Number.POSITIVE_INFINITY;
  while (s >= 0 && values[s] <= limit) s--;
  return s < 0 ? times[0] : between(times, values, limit, s);
}

/** When `values` first reach `limit` from below, linear between samples; Infinity when they never do. */
export function timeFirstReached(times: Float64Array, values: ArrayLike<number>, limit: number): number {
  for (let s = 0; s < times.length; s++) {
    if (values[s] >= limit) return s === 0 ? times[0] : between(times, values, limit, s - 1);
  }
  return Number.POSITIVE_INFINITY;
}

/** How long `values` lie at or above `limit`, linear between samples. */
export function durationAtLeast(times: Float64Array, values: ArrayLike<number>, limit: number): number {
  let total = 0;
  for (let s = 1; s < times.length; s++) {
    const a = values[s - 1] - limit;
    const b = values[s] - limit;
    const width = times[s] - times[s - 1];
    if (a >= 0 && b >= 0) total += width;
    else if (a >= 0 || b >= 0) total += (width * Math.max(a, b)) / Math.abs(a - b);
  }
  return total;
}

function between(times: Float64Array, values: ArrayLike<number>, limit: number, s: number): number {
  const share = (limit - values[s]) / (values[s + 1] - values[s]);
  return times[s] + share * (times[s + 1] - times[s]);
}
