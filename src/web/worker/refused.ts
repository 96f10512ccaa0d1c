import type { Said } from "../../findings/index.js";
import { english } from "../../words/index.js";
/** A question that cannot be answered as things stand; the reasons are for the user. */
export class Refused extends Error {
  readonly reasons: readonly Said[];
  constructor(reasons: readonly Said[]) {
    super(reasons.map(english).join("; "));
    this.reasons = reasons;
  }
}
