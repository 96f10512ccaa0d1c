interface Point {
  /** [s] */
  readonly lead: number;
  /** [s] */
  readonly wet: number;
}

/**
 * Wet hours [s] by how long before the end something is done: they grow with it, so where the longest is dry, so are the
 * others.
 * @param most [s] the longest that is worked out
 */
export function wetCurve(most: () => number, wetTime: (lead: number) => number): (lead: number) => number {
  let points: readonly Point[] | undefined;
  const pointAt = (lead: number): Point => ({ lead, wet: wetTime(lead) });
  const worked = (): readonly Point[] => {
    const longest = pointAt(most());
    if (longest.wet === 0) return [{ lead: 0, wet: 0 }, longest];
    return [pointAt(0), pointAt(longest.lead / 2), longest];
  };
  return (lead) => {
    points ??= worked();
    const after = points.findIndex((p) => p.lead >= lead);
    const [a, b] = points.slice(after < 0 ? -2 : Math.max(0, after - 1));
    return a.wet + ((Math.min(lead, b.lead) - a.lead) / (b.lead - a.lead)) * (b.wet - a.wet);
  };
}
