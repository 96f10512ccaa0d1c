import type { Criterion } from "../readiness/index.js";
import type { Draws, Scenario } from "../simulation/index.js";
import type { BarredHeater, HeatingNow } from "./heater-use.js";

/** When the aircraft is wanted and how sure that must be. */
export interface Wish {
  /** [s] since scenario start: the moment the engine is to be started. */
  readonly departure: number;
  /** Chance of being ready that is wanted [0..1]. */
  readonly chance: number;
  /** [s] before departure at which the heaters are unplugged. */
  readonly unplugBefore: number;
  /** [s] before departure at which covers come off. */
  readonly coverOffBefore: number;
  /** Whether the aircraft is pulled out to the ramp when covers come off. */
  readonly pulledOut: boolean;
}

/** What stands before any planning: heaters that may not be used, and heat that is on already. */
export interface Settled {
  readonly barred: readonly BarredHeater[];
  readonly heating: HeatingNow | undefined;
}

export interface PlanRequest {
  /** The scenario from now until well after departure; its own events are what happens anyway. */
  readonly scenario: Scenario;
  readonly wish: Wish;
  /** Heaters that may be used, by id. */
  readonly heaters: readonly string[];
  readonly criteria: readonly Criterion[];
  readonly draws: Draws;
  /** What was settled before planning; prepareRequest sets it. */
  readonly settled?: Settled;
  /** Called between pieces of work with the share done [0..1]; returning false stops the planning. */
  readonly onProgress?: (done: number) => boolean;
}
