/**
 * How many random cases a property is tried with: `few` in `npm test`, `many` in the soak tier, or as many as are asked
 * for by a variable of its own, as a night may have time for.
 */
export function runs(few: number, many: number, asked?: string): number {
  return Number(asked ?? (process.env.TEST_TIER === "soak" ? many : few));
}
