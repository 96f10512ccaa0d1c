import type { PlanDocument } from "../../documents/index.js";
import type { Said } from "../../findings/index.js";
import type { Basis } from "../../planning/index.js";
import type { FirstPlan } from "./first-plan.js";
import type { TASKS } from "./tasks.js";
import type { baseView, coverView, heaterView } from "./views.js";

// What page and planning worker say to each other. All values are plain data; times are [ms] since 1970 UTC.

type Tasks = typeof TASKS;
/** A question by name: each is a function in tasks.ts. */
export type WorkKind = keyof Tasks;
export type Ask<K extends WorkKind> = Parameters<Tasks[K]>[0];
export type Answer<K extends WorkKind> =
  ReturnType<Tasks[K]> extends Generator<unknown, infer A> ? A : Awaited<ReturnType<Tasks[K]>>;
/** What comes before the answer; never, for most kinds. */
export type Part<K extends WorkKind> =
  Parameters<Tasks[K]> extends [unknown, unknown, (part: infer P) => void] ? P : never;

/** Kinds that ask nothing of the logbook and take milliseconds: no form waits for plans because of them. */
export const QUICK_WORK: ReadonlySet<WorkKind> = new Set<WorkKind>([
  "catalogue",
  "topics",
  "why",
  "forecast",
]);

/** Kinds that calculate in one piece for longer than a second; they run in a worker of their own, which is ended to stop them. */
export const LONG_WORK: ReadonlySet<WorkKind> = new Set<WorkKind>([
  "thaw",
  "learn",
  "kit",
  "planOf",
  "winter",
  "basePlan",
]);

export interface ReplanAsk {
  readonly now: number;
  /** Drawn cases of decisions and whole plans. The same in all questions, so that what was played serves again. */
  readonly members: number;
  /** In the order they are to be answered. */
  readonly aircraft: readonly ReplanAsked[];
  /** Every wind of the forecast times this. */
  readonly windFactor?: number;
  /** The last grade wanted; the whole plan when left out. */
  readonly until?: "first" | "decided";
}

export interface ReplanAsked {
  readonly id: string;
  /** Tried instead of what the logbook has; nothing is kept. */
  readonly departure?: number;
  readonly chance?: number;
  /** Covers on from now, of the aircraft's kit. */
  readonly covers?: readonly string[];
}

/**
 * What is known of one aircraft's plan. "first": at once, read or carried over from what was played before; "decided": the
 * plug-in as the whole plan will have it; "whole": all of it.
 */
export type ReplanPart = { readonly aircraft: string } & (
  | { readonly grade: "first"; readonly basis: Basis; readonly plan: FirstPlan }
  | { readonly grade: "decided"; readonly plan: FirstPlan }
  | { readonly grade: "whole"; readonly plan: PlanDocument }
  | { readonly grade: "refused"; readonly reasons: readonly Said[] }
);

/** One message to the worker. */
export type ToWorker =
  | { readonly id: number; readonly kind: WorkKind; readonly ask: unknown }
  /** Work not yet begun is dropped, and what goes in pieces is stopped after the piece. */
  | { readonly id: number; readonly kind: "cancel" };

/** One message from the worker. Exactly one but "progress" and "part" ends a question. */
export type FromWorker = { readonly id: number } & (
  | { readonly is: "progress"; readonly done: number }
  | { readonly is: "part"; readonly part: unknown }
  | { readonly is: "done"; readonly answer: unknown }
  | { readonly is: "refused"; readonly reasons: readonly Said[] }
  | { readonly is: "failed"; readonly message: string }
);

export interface Named {
  readonly id: string;
  readonly name: string;
}

export type Catalogue = Answer<"catalogue">;
export type BaseView = ReturnType<typeof baseView>;
export type CircuitView = BaseView["circuits"][number];
export type AircraftView = BaseView["aircraft"][number];
export type WeatherView = NonNullable<BaseView["weather"]>;
export type HeaterView = ReturnType<typeof heaterView>;
export type CautionView = ReturnType<typeof coverView>["cautions"][number];
export type FrostView = Answer<"frost">;
export type ForecastView = Answer<"forecast">;
export type AwayAsk = Ask<"away">;
