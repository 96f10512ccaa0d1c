import { quantile } from "../numerics/index.js";
import {
  type Aim,
  type Criterion,
  type EnsembleState,
  isGating,
  isOfLine,
  marginOf,
} from "../readiness/index.js";

/** Of each of the two lines. */
export type ByAim<T> = Readonly<Record<Aim, T>>;

/** For each line, 1 for every member in which all criteria that decide on it hold. */
export function readyMembers(criteria: readonly Criterion[], state: EnsembleState): ByAim<Uint8Array> {
  const { members } = state;
  const least = new Uint8Array(members).fill(1);
  const warm = new Uint8Array(members).fill(1);
  const values = new Float64Array(members);
  for (const criterion of criteria) {
    const gating = isGating(criterion);
    if (!gating && !isOfLine(criterion, "warm-through")) continue;
    criterion.values(state, values);
    for (let m = 0; m < members; m++) {
      if (marginOf(criterion, values[m]) >= 0) continue;
      warm[m] = 0;
      if (gating) least[m] = 0;
    }
  }
  return { least, "warm-through": warm };
}

/** How likely each line is reached. */
export function chancesOf(criteria: readonly Criterion[], state: EnsembleState): ByAim<number> {
  const ready = readyMembers(criteria, state);
  return { least: shareOf(ready.least), "warm-through": shareOf(ready["warm-through"]) };
}

/** Share of the members that are ready [0..1]. */
function shareOf(ready: Uint8Array): number {
  return ready.reduce((sum, r) => sum + r, 0) / ready.length;
}

/** Whether a ceiling is broken in the middle estimate. */
export function overheats(criteria: readonly Criterion[], state: EnsembleState): boolean {
  const values = new Float64Array(state.members);
  return criteria.some((criterion) => {
    if (criterion.judged !== "while-heating") return false;
    criterion.values(state, values);
    return marginOf(criterion, quantile(values, 0.5)) < 0;
  });
}
