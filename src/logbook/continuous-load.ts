/**
 * Share of a breaker, or of what a generator gives, that loads of three hours and more may draw: NEC 210.20(A) and common
 * IEC practice, from memory; the local electrical code decides.
 */
export const CONTINUOUS_SHARE = 0.8;

/** [A] that heaters may draw on a circuit together: one rule for the base plan, the switches and the night's load. */
export function continuousLimit(
  { limit_a }: { readonly limit_a: number },
  share: number = CONTINUOUS_SHARE,
): number {
  return limit_a * share;
}
