/** A chance in cases, never more than was counted. @example odds(0.91) // "9 in 10" */
export function odds(share: number): string {
  if (share >= 0.995) return "over 99 in 100";
  if (share >= 0.95) return `${Math.floor(share * 20 + 1e-9)} in 20`;
  if (share >= 0.1) return `${Math.floor(share * 10 + 1e-9)} in 10`;
  if (share >= 0.01) return `${Math.floor(share * 100 + 1e-9)} in 100`;
  return "under 1 in 100";
}
