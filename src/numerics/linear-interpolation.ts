/**
 * y at `at`, linear between the points (x, y), x strictly ascending. Outside the points it throws: whoever wants to
 * extrapolate must say how.
 * @example interpolateLinear([0, 10, 20], [0, 1, 5], 15) // 3
 */
export function interpolateLinear(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  const last = x.length - 1;
  if (last < 0 || y.length !== x.length)
    throw new RangeError(
      `invalid y: ${y.length} values (expected as many as x has, ${x.length}, and at least 1)`,
    );
  if (!(at >= x[0] && at <= x[last]))
    throw new RangeError(`invalid at: ${at} (expected ${x[0]} to ${x[last]})`);
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle] <= at) low = middle;
    else high = middle;
  }
  if (at === x[low]) return y[low];
  if (at === x[high]) return y[high];
  return y[low] + ((at - x[low]) / (x[high] - x[low])) * (y[high] - y[low]);
}
