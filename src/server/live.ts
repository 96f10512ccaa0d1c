import type { NowDocument, PlanDocument } from "../documents/index.js";
import type { Finding } from "../findings/index.js";
import type { BaseState, LogbookEvent, ProbeReading } from "../logbook/index.js";
import type { AppendReadingsResult, AppendResult } from "../store/index.js";

// What the server asks of the running keeper. Everything that changes the base goes through it, so that the keeper
// hears of it first; what only has to be looked up, the server reads from the store.

/** The newest plan made for an aircraft's next departure. */
export interface StandingPlan {
  /** Id of the departure-wanted event it answers. */
  readonly departure: string;
  readonly document: PlanDocument;
}

export interface HandSwitching {
  readonly aircraft: string;
  readonly switch: string;
  readonly to: "on" | "off";
  /** [min] until it goes off again; only with `to: "on"`. */
  readonly minutes?: number;
  /** Who asked, as it is written into the logbook. */
  readonly by: string;
}

export type HandOutcome =
  | { readonly status: "done" }
  | { readonly status: "unknown" }
  | { readonly status: "refused"; readonly reason: Finding };

export type LiveChange =
  /** Events were kept; `sequence` is the highest of them. */
  | { readonly what: "logbook"; readonly sequence: number }
  | { readonly what: "plan"; readonly aircraft: string }
  | { readonly what: "now"; readonly aircraft: string };

export interface LiveHealth {
  /** The keeper's loop runs, and the heaters it is to switch can be reached. */
  readonly ready: boolean;
  /** Empty when ready and nothing else is amiss. */
  readonly reasons: readonly Finding[];
}

export interface Live {
  /** What stands at the base; undefined before its set-up was kept. */
  state(): BaseState | undefined;
  /** By aircraft id; only aircraft with a plan. */
  plans(): ReadonlyMap<string, StandingPlan>;
  /** By aircraft id; only aircraft with an estimate. */
  now(): ReadonlyMap<string, NowDocument>;
  /** Appends to the store, in the order given, and takes the events into the state before it answers. */
  record(events: readonly LogbookEvent[]): Promise<AppendResult>;
  /** Appends to the store and takes the readings as live ones. */
  ingest(readings: readonly ProbeReading[]): Promise<AppendReadingsResult>;
  /** Writes fault-cleared for a fault that is open, by whom. */
  acknowledge(fault: string, by: string): Promise<HandOutcome>;
  switchByHand(order: HandSwitching): Promise<HandOutcome>;
  /** Calls `listener` after every change, until the function it returns is called. */
  onChange(listener: (change: LiveChange) => void): () => void;
  health(): LiveHealth;
}
