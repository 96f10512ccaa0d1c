/** A stretch of missing values, as indices of the first and last missing one. */
export interface Hole {
  readonly first: number;
  readonly last: number;
}

/** Stretches of `values` that are NaN. */
export function holesOf(values: readonly number[]): Hole[] {
  const holes: Hole[] = [];
  for (let i = 0; i < values.length; i++) {
    if (!Number.isNaN(values[i])) continue;
    const first = i;
    while (Number.isNaN(values[i + 1])) i++;
    holes.push({ first, last: i });
  }
  return holes;
}

/** `values` at `time` with every NaN replaced: by the straight line between its neighbours, at the ends by the nearest value. Needs one value that is not NaN. */
export function bridged(time: readonly number[], values: readonly number[]): number[] {
  const filled = [...values];
  for (const { first, last } of holesOf(values)) {
    const before = values[first - 1];
    const after = values[last + 1];
    for (let i = first; i <= last; i++) {
      const share =
        before === undefined || after === undefined
          ? 0
          : (time[i]! - time[first - 1]!) / (time[last + 1]! - time[first - 1]!);
      filled[i] = before === undefined ? after! : before + share * ((after ?? before) - before);
    }
  }
  return filled;
}
