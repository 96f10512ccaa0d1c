import { type Band, bandOf } from "../numerics/index.js";
import { type Criterion, type EnsembleState, isGating, isOfLine, marginOf } from "./criterion.js";

/** One criterion on an ensemble: the value's band, the margin's band and the chance that it holds. */
export interface CriterionVerdict {
  readonly criterion: Criterion;
  /** 5, 50 and 95 % over the members. */
  readonly value: Band;
  /** The same of the margin; positive when the criterion holds. */
  readonly margin: Band;
  /** Share of members in which it holds [0..1]. */
  readonly chance: number;
}

export interface Verdict {
  readonly criteria: readonly CriterionVerdict[];
  /** On the line of the least: share of members in which everything that decides on a start holds [0..1]. */
  readonly chance: number;
  /** The one of those that holds in the fewest members; among equals the one with the tightest margin. */
  readonly weakest: CriterionVerdict;
  /** The same on the line of warm through; like the least where no criterion asks for it. */
  readonly warm: { readonly chance: number; readonly weakest: CriterionVerdict };
  /** Ceilings that heating breaks in the middle estimate: such a course must not be planned, whatever its chance. */
  readonly tooHot: readonly CriterionVerdict[];
}

/**
 * Judges an ensemble at the moment of the start, with the heater's ceilings read at the moment of unplugging. Ceilings
 * do not enter the chance of being ready: how hot a pad gets is known far less well than whether the engine is warm,
 * and the answer to a pad that may be too hot is to look at it.
 * @param atUnplug state when the heater was last on; the same as `atStart` when it never was
 */
export function judge(
  criteria: readonly Criterion[],
  atStart: EnsembleState,
  atUnplug: EnsembleState = atStart,
): Verdict {
  const { members } = atStart;
  const holds = new Uint8Array(members).fill(1);
  const isWarm = new Uint8Array(members).fill(1);
  const verdicts = criteria.map((criterion) => {
    const values = new Float64Array(members);
    const gating = isGating(criterion);
    const gatingWarm = gating || isOfLine(criterion, "warm-through");
    criterion.values(criterion.judged === "at-start" ? atStart : atUnplug, values);
    const margins = values.map((v) => marginOf(criterion, v));
    let holding = 0;
    for (let m = 0; m < members; m++) {
      if (margins[m] >= 0) holding++;
      else {
        if (gating) holds[m] = 0;
        if (gatingWarm) isWarm[m] = 0;
      }
    }
    return { criterion, value: bandOf(values), margin: bandOf(margins), chance: holding / members };
  });
  const starts = verdicts.filter((v) => isGating(v.criterion));
  const warm = verdicts.filter((v) => isGating(v.criterion) || isOfLine(v.criterion, "warm-through"));
  if (starts.length === 0) throw new RangeError("missing criteria: none judged at the start");
  return {
    criteria: verdicts,
    chance: shareOf(holds),
    weakest: starts.reduce(tighter),
    warm: { chance: shareOf(isWarm), weakest: warm.reduce(tighter) },
    tooHot: verdicts.filter((v) => v.criterion.judged === "while-heating" && v.margin.mid < 0),
  };
}

function shareOf(holds: Uint8Array): number {
  return holds.reduce((sum, h) => sum + h, 0) / holds.length;
}

function tighter(a: CriterionVerdict, b: CriterionVerdict): CriterionVerdict {
  if (a.chance !== b.chance) return a.chance < b.chance ? a : b;
  return tightness(a) <= tightness(b) ? a : b;
}

/** Median margin in units of its own spread. */
function tightness({ margin }: CriterionVerdict): number {
  return margin.mid / Math.max(margin.high - margin.low, 1e-6);
}
