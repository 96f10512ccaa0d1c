import type { PlanDocument } from "../../documents/index.js";
import type { Said } from "../../findings/index.js";
import type { KnownPlan } from "../../first-screen/index.js";
import type { FirstPlan } from "../worker/first-plan.js";

/** A plan as far as it is known, and whether more of it is on its way. */
export interface PlanState {
  /** The last whole plan. */
  readonly plan?: PlanDocument;
  /** What is known of a newer one that is not whole yet. */
  readonly first?: FirstPlan;
  /** Why there is no plan. */
  readonly reasons?: readonly Said[];
  readonly isBusy: boolean;
  /** [ms] when it was made. */
  readonly at: number;
}

/** The newest answer; what only a whole plan says is missing while a newer one is not whole. */
export function knownPlan(state: PlanState | undefined): KnownPlan | undefined {
  if (state?.reasons !== undefined) return undefined;
  return state?.first ?? state?.plan;
}

/** The whole plan, and whether a newer answer than it stands above. */
export function wholePlan(state: PlanState | undefined): { plan: PlanDocument; isOld: boolean } | undefined {
  if (state?.plan === undefined || state.reasons !== undefined) return undefined;
  return { plan: state.plan, isOld: state.first !== undefined };
}

/** A state with the beginning of a new plan in it, beside the whole plan before it. */
export function withFirst(before: PlanState | undefined, first: FirstPlan, at: number): PlanState {
  const plan = before?.plan;
  return { ...(plan === undefined ? {} : { plan }), first, isBusy: true, at };
}

/** Version of the documents that the screens read. */
const VERSION: PlanDocument["soakline"] = 2;

/** Of plans that were kept, those that an app of this version made. */
export function readablePlans(kept: Readonly<Record<string, PlanState>>): Record<string, PlanState> {
  return Object.fromEntries(
    Object.entries(kept).filter(
      ([, { plan }]) => plan === undefined || (plan.soakline === VERSION && plan.lines !== undefined),
    ),
  );
}
