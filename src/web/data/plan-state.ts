import type { PlanDocument } from "../../documents/index.js";
import type { FirstPlan } from "../worker/first-plan.js";

/** A plan as far as it is known, and whether more of it is on its way. */
export interface PlanState {
  /** The last whole plan; while another departure is tried, with what is known of that laid over it. */
  readonly plan?: PlanDocument;
  /** What is known before there is a whole plan. */
  readonly first?: FirstPlan;
  /** Why there is no plan; the last known one stays beside it. */
  readonly reasons?: readonly string[];
  readonly isBusy: boolean;
  /** [ms] when it was made. */
  readonly at: number;
}

export type KnownPlan = FirstPlan & Partial<PlanDocument>;

export function knownPlan(state: PlanState | undefined): KnownPlan | undefined {
  return state?.plan ?? state?.first;
}

/** A state with the beginning of a new plan in it: what belonged to the old departure alone is not shown with the new one. */
export function withFirst(before: PlanState | undefined, first: FirstPlan, at: number): PlanState {
  const plan = before?.plan;
  return plan === undefined
    ? { first, isBusy: true, at }
    : { plan: { ...plan, ...first, window: null, remedies: [] }, isBusy: true, at };
}
