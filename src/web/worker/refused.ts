/** A question that cannot be answered as things stand; the reasons are for the user. */
export class Refused extends Error {
  readonly reasons: readonly string[];
  constructor(reasons: readonly string[]) {
    super(reasons.join("; "));
    this.reasons = reasons;
  }
}
