/**
 * Carries what few members did over to all of them, from a situation alike (another cover, another wind) that all members
 * and thus the few were played in. Each member is given one of the few as its like, the same in every row, so that what
 * goes together stays together: it does as its like did, moved by as much as the two differed before, times the slope of
 * the few's new temperatures over their old ones. The few themselves keep what was played.
 * @param few [K] rows x few: the new temperatures; the few are the first of the members
 * @param old [K] rows x members: the temperatures in the situation alike
 */
export function spreadOver(few: Float64Array, old: Float64Array, members: number, out: Float64Array): void {
  const rows = old.length / members;
  const count = few.length / rows;
  for (let row = 0; row < rows; row++) {
    const f = row * count;
    const o = row * members;
    const slope = slopeOf(few, f, old, o, count);
    for (let m = 0; m < members; m++) {
      const like = m % count;
      out[o + m] = few[f + like] + slope * (old[o + m] - old[o + like]);
    }
  }
}

/** A slope beyond this is an accident of few members. */
const STEEPEST = 2;
/** [K2] variance below which a row says nothing of a slope; it then counts as unchanged. */
const LEAST_VARIANCE = 1e-6;

function slopeOf(few: Float64Array, f: number, old: Float64Array, o: number, count: number): number {
  let sumX = 0;
  let sumY = 0;
  for (let m = 0; m < count; m++) {
    sumX += old[o + m];
    sumY += few[f + m];
  }
  const meanX = sumX / count;
  const meanY = sumY / count;
  let xx = 0;
  let xy = 0;
  for (let m = 0; m < count; m++) {
    const dx = old[o + m] - meanX;
    xx += dx * dx;
    xy += dx * (few[f + m] - meanY);
  }
  return xx < LEAST_VARIANCE * count ? 1 : Math.min(STEEPEST, Math.max(0, xy / xx));
}
