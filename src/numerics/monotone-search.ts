/**
 * Where a condition that holds up to some x and not beyond stops holding, between `from` and `to`: the greatest x known to
 * hold, within `tolerance` of the boundary. `to` when it holds there too; undefined when it fails already at `from`.
 */
export function lastWhere(
  holds: (x: number) => boolean,
  from: number,
  to: number,
  tolerance: number,
): number | undefined {
  if (!(tolerance > 0)) throw new RangeError(`invalid tolerance: ${tolerance} (expected > 0)`);
  if (!(to >= from)) throw new RangeError(`invalid to: ${to} (expected ≥ from ${from})`);
  if (!holds(from)) return undefined;
  if (holds(to)) return to;
  let good = from;
  let bad = to;
  while (bad - good > tolerance) {
    const middle = good + 0.5 * (bad - good);
    if (middle === good || middle === bad) break;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
