/** The few members that are played in a new situation, for all of them. */
export interface Carriers {
  /** Members that are played, by their index among all. */
  readonly members: Int32Array;
  /** For every member, the position in `members` of the one that it is taken to do like. */
  readonly likes: Int32Array;
}

/**
 * Carries what few members did over to all of them, from a situation alike (another cover, another wind) that all of them
 * were played in. Each member does as its like did, moved by as much as the two differed before, times the slope of the
 * few's new temperatures over their old ones. The like is the same in every row, so that what goes together stays
 * together; the few themselves keep what was played.
 * @param few [K] rows x few: the new temperatures
 * @param old [K] rows x members: the temperatures in the situation alike
 */
export function spreadOver(
  few: Float64Array,
  old: Float64Array,
  carriers: Carriers,
  out: Float64Array,
): void {
  const { members: played, likes } = carriers;
  const members = likes.length;
  const count = played.length;
  const rows = old.length / members;
  for (let row = 0; row < rows; row++) {
    const f = row * count;
    const o = row * members;
    const slope = slopeOf(few, f, old, o, played);
    for (let m = 0; m < members; m++) {
      const like = likes[m];
      out[o + m] = few[f + like] + slope * (old[o + m] - old[o + played[like]]);
    }
  }
}

/** The first members, each for those that stand a whole number of them further on. */
export function firstCarriers(count: number, members: number): Carriers {
  return {
    members: Int32Array.from({ length: count }, (_, i) => i),
    likes: Int32Array.from({ length: members }, (_, m) => m % count),
  };
}

/**
 * Carriers for the question how many members hold: half of them closest to the one on whom the wanted chance hangs, the
 * others over all ranks; each for the members nearest in rank.
 * @param margins of all members in the situation alike
 * @param wanted chance [0..1]
 */
export function decisiveCarriers(count: number, margins: Float64Array, wanted: number): Carriers {
  const members = margins.length;
  const ranked = Int32Array.from(margins.keys()).sort((a, b) => margins[a] - margins[b]);
  const near = count >> 1;
  const span = NEAR_SPACING * near;
  const decisive = Math.floor((1 - wanted) * members);
  const first = Math.max(0, Math.min(members - span, decisive - (span >> 1)));
  const ranks = new Set<number>();
  for (let i = 0; i < near; i++) ranks.add(first + NEAR_SPACING * i);
  const far = count - near;
  for (let i = 0; i < far; i++) ranks.add(Math.floor(((i + 0.5) / far) * members));
  const chosen = [...ranks].filter((rank) => rank < members).sort((a, b) => a - b);
  const likes = new Int32Array(members);
  for (let rank = 0, k = 0; rank < members; rank++) {
    while (k + 1 < chosen.length && chosen[k + 1] - rank <= rank - chosen[k]) k++;
    likes[ranked[rank]] = k;
  }
  return { members: Int32Array.from(chosen, (rank) => ranked[rank]), likes };
}

/** Ranks from one of the close carriers to the next. */
const NEAR_SPACING = 2;
/** A slope beyond this is an accident of few members. */
const STEEPEST = 2;
/** [K2] variance below which a row says nothing of a slope; it then counts as unchanged. */
const LEAST_VARIANCE = 1e-6;

function slopeOf(few: Float64Array, f: number, old: Float64Array, o: number, played: Int32Array): number {
  const count = played.length;
  let sumX = 0;
  let sumY = 0;
  for (let k = 0; k < count; k++) {
    sumX += old[o + played[k]];
    sumY += few[f + k];
  }
  const meanX = sumX / count;
  const meanY = sumY / count;
  let xx = 0;
  let xy = 0;
  for (let k = 0; k < count; k++) {
    const dx = old[o + played[k]] - meanX;
    xx += dx * dx;
    xy += dx * (few[f + k] - meanY);
  }
  return xx < LEAST_VARIANCE * count ? 1 : Math.min(STEEPEST, Math.max(0, xy / xx));
}
