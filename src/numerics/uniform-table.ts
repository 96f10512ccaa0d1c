import { add, floor, max, min, mul, num, type Statements, shared, sub, type Term } from "./row-kernel.js";

/**
 * A smooth function on [from, to] tabulated on a uniform grid, with its slope, for hot loops: C1 cubic Hermite pieces
 * between the nodes, continued in a straight line outside. Node slopes are those of the quartic through five nodes
 * (Abramowitz & Stegun 1964, table 25.2), so the error falls as the fourth power of the spacing.
 */
export class UniformTable {
  readonly #from: number;
  readonly #perSpacing: number;
  readonly #intervals: number;
  /** a, b, c, d of a + b s + c s² + d s³ with s in 0 … 1, for each interval. */
  readonly #pieces: Float64Array;
  /** All of it, for loops: the start of the range, intervals per unit, their number, zero, then the pieces. */
  readonly numbers: Float64Array;

  constructor(f: (x: number) => number, from: number, to: number, intervals: number) {
    if (!(Number.isFinite(from) && Number.isFinite(to) && to > from))
      throw new RangeError(`invalid to: ${to} (expected > from ${from})`);
    if (!(Number.isInteger(intervals) && intervals >= 4))
      throw new RangeError(`invalid intervals: ${intervals} (expected a whole number ≥ 4)`);
    const spacing = (to - from) / intervals;
    const nodes = Float64Array.from({ length: intervals + 1 }, (_, i) =>
      f(i === intervals ? to : from + i * spacing),
    );
    const fault = nodes.findIndex((value) => !Number.isFinite(value));
    if (fault >= 0)
      throw new RangeError(
        `invalid f(${from + fault * spacing}): ${nodes[fault]} (expected a finite number)`,
      );
    this.#from = from;
    this.#perSpacing = 1 / spacing;
    this.#intervals = intervals;
    this.numbers = new Float64Array(HEADER + 4 * intervals);
    this.numbers.set([from, this.#perSpacing, intervals]);
    this.#pieces = this.numbers.subarray(HEADER);
    for (let i = 0; i < intervals; i++) {
      const rise = nodes[i + 1] - nodes[i];
      const slope0 = slopeAtNode(nodes, i);
      const slope1 = slopeAtNode(nodes, i + 1);
      this.#pieces.set([nodes[i], slope0, 3 * rise - 2 * slope0 - slope1, slope0 + slope1 - 2 * rise], 4 * i);
    }
  }

  value(x: number): number {
    const p = this.#pieces;
    const position = (x - this.#from) * this.#perSpacing;
    if (position < 0) return p[0] + position * p[1];
    if (position >= this.#intervals) {
      const last = p.length - 4;
      const beyond = position - this.#intervals;
      const slope = p[last + 1] + 2 * p[last + 2] + 3 * p[last + 3];
      return p[last] + p[last + 1] + p[last + 2] + p[last + 3] + beyond * slope;
    }
    const i = Math.floor(position);
    const s = position - i;
    const k = 4 * i;
    return p[k] + s * (p[k + 1] + s * (p[k + 2] + s * p[k + 3]));
  }

  /** Derivative with respect to x. */
  slope(x: number): number {
    const p = this.#pieces;
    const position = Math.min(this.#intervals, Math.max(0, (x - this.#from) * this.#perSpacing));
    const i = Math.min(this.#intervals - 1, Math.floor(position));
    const s = position - i;
    const k = 4 * i;
    return (p[k + 1] + s * (2 * p[k + 2] + 3 * s * p[k + 3])) * this.#perSpacing;
  }
}

/** Numbers before the pieces. */
const HEADER = 4;

/** A table's value and slope in a loop over members. @param table the shared operand at the place of its numbers */
export function lookUp(table: Term, x: Term, { keep, find }: Statements): { value: Term; slope: Term } {
  const [from, perSpacing, intervals] = [shared(table, 0), shared(table, 1), shared(table, 2)];
  const position = keep(mul(sub(x, from), perSpacing));
  const held = keep(max(num(0), min(position, intervals)));
  const interval = keep(min(floor(held), sub(intervals, num(1))));
  const s = keep(sub(held, interval));
  const entry = find(table, mul(num(4), interval));
  const [a, b, c, d] = [
    entry(HEADER),
    keep(entry(HEADER + 1)),
    keep(entry(HEADER + 2)),
    keep(entry(HEADER + 3)),
  ];
  const slope = keep(add(b, mul(s, add(mul(num(2), c), mul(num(3), s, d)))));
  // Outside, in a straight line from the end.
  const value = add(a, mul(s, add(b, mul(s, add(c, mul(s, d))))), mul(sub(position, held), slope));
  return { value, slope: mul(slope, perSpacing) };
}

/** Weights of five neighbouring nodes for the slope at the first, second … fifth of them, times 12 spacings. */
const WEIGHTS = [
  [-25, 48, -36, 16, -3],
  [-3, -10, 18, -6, 1],
  [1, -8, 0, 8, -1],
  [-1, 6, -18, 10, 3],
  [3, -16, 36, -48, 25],
];

/** Slope at node i per spacing. */
function slopeAtNode(nodes: Float64Array, i: number): number {
  const first = Math.min(nodes.length - 5, Math.max(0, i - 2));
  const weights = WEIGHTS[i - first];
  let sum = 0;
  for (let k = 0; k < 5; k++) sum += weights[k] * nodes[first + k];
  return sum / 12;
}
