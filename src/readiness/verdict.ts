import { quantile } from "../numerics/index.js";
import { type Criterion, type EnsembleState, marginOf } from "./criterion.js";

/** One criterion on an ensemble: the value's band, the margin's band and the chance that it holds. */
export interface CriterionVerdict {
  readonly criterion: Criterion;
  readonly value: { readonly low: number; readonly mid: number; readonly high: number };
  /** [SI] 5, 50 and 95 % of the margin; positive when it holds. */
  readonly margin: { readonly low: number; readonly mid: number; readonly high: number };
  /** Share of members in which it holds [0..1]. */
  readonly chance: number;
}

export interface Verdict {
  readonly criteria: readonly CriterionVerdict[];
  /** Share of members in which every criterion holds [0..1]. */
  readonly chance: number;
  /** The criterion that holds in the fewest members; among equals the one with the smallest margin per unit spread. */
  readonly binding: CriterionVerdict;
}

/**
 * Judges an ensemble at the moment of the start, with the heater's ceilings read at the moment of unplugging.
 * @param atUnplug state when the heater was last on; the same as `atStart` when it never was
 */
export function judge(
  criteria: readonly Criterion[],
  atStart: EnsembleState,
  atUnplug: EnsembleState = atStart,
): Verdict {
  const { members } = atStart;
  if (criteria.length === 0) throw new RangeError("missing criteria: none given");
  const allHold = new Uint8Array(members).fill(1);
  const verdicts = criteria.map((criterion) => {
    const values = new Float64Array(members);
    criterion.values(criterion.judged === "at-start" ? atStart : atUnplug, values);
    const margins = values.map((v) => marginOf(criterion, v));
    let holding = 0;
    for (let m = 0; m < members; m++) {
      if (margins[m] >= 0) holding++;
      else allHold[m] = 0;
    }
    return { criterion, value: bandOf(values), margin: bandOf(margins), chance: holding / members };
  });
  let ready = 0;
  for (let m = 0; m < members; m++) ready += allHold[m];
  return { criteria: verdicts, chance: ready / members, binding: verdicts.reduce(tighter) };
}

function tighter(a: CriterionVerdict, b: CriterionVerdict): CriterionVerdict {
  if (a.chance !== b.chance) return a.chance < b.chance ? a : b;
  return tightness(a) <= tightness(b) ? a : b;
}

/** Median margin in units of its own spread. */
function tightness({ margin }: CriterionVerdict): number {
  return margin.mid / Math.max(margin.high - margin.low, 1e-6);
}

function bandOf(values: Float64Array): CriterionVerdict["value"] {
  return { low: quantile(values, 0.05), mid: quantile(values, 0.5), high: quantile(values, 0.95) };
}
