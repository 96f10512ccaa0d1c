/**
 * A root of a continuous function whose values at `from` and `to` differ in sign, to ±tolerance in x; undefined when
 * they do not differ. Interpolate-truncate-project method: no more evaluations than bisection plus one, few for smooth
 * functions. Oliveira & Takahashi, ACM Trans. Math. Softw. 47 (2021) article 5, algorithm 1 with κ1 = 0.2/(b-a), κ2 = 2, n0 = 1.
 */
export function findRoot(
  f: (x: number) => number,
  from: number,
  to: number,
  tolerance: number,
): number | undefined {
  if (!(tolerance > 0)) throw new RangeError(`invalid tolerance: ${tolerance} (expected > 0)`);
  let a = from;
  let b = to;
  let valueA = f(a);
  let valueB = f(b);
  if (valueA === 0) return a;
  if (valueB === 0) return b;
  if (!(valueA < 0 !== valueB < 0) || Number.isNaN(valueA + valueB)) return undefined;
  const rising = valueA < 0 ? 1 : -1;
  const width = Math.abs(b - a);
  const truncation = 0.2 / width;
  const most = Math.max(0, Math.ceil(Math.log2(width / (2 * tolerance)))) + 1;
  for (let j = 0; j <= most && Math.abs(b - a) > 2 * tolerance; j++) {
    const middle = 0.5 * (a + b);
    const radius = Math.max(0, tolerance * 2 ** (most - j) - 0.5 * Math.abs(b - a));
    const falsePosition = (valueB * a - valueA * b) / (valueB - valueA);
    const towards = Math.sign(middle - falsePosition);
    const shift = truncation * (b - a) * (b - a);
    const truncated = shift <= Math.abs(middle - falsePosition) ? falsePosition + towards * shift : middle;
    const x = Math.abs(truncated - middle) <= radius ? truncated : middle - towards * radius;
    const value = f(x);
    if (value === 0) return x;
    if (value * rising > 0) {
      b = x;
      valueB = value;
    } else {
      a = x;
      valueA = value;
    }
  }
  return 0.5 * (a + b);
}
