import type { Kit } from "../aircraft/index.js";
import type { Finding } from "../findings/index.js";
import type { FittedAircraft } from "../learning/index.js";
import type { Wish } from "../planning/index.js";
import type { StricterLimits } from "../readiness/index.js";
import type { DrawCorrection, Scenario } from "../simulation/index.js";

/** A wish with the heaters to be used for it. */
export interface WishWithHeaters {
  readonly wish: Wish;
  readonly heaters: readonly string[];
}

/** A fault or doubt: where it is, what belongs there, what stands there. */
export interface SourceIssue {
  readonly path: string;
  readonly expected: string;
  readonly received: string;
}

/**
 * One aircraft and what is wanted of it, with all that was assumed on the way: what every question about an aircraft is
 * asked of, whether it was read from a document or taken from a base's logbook.
 */
export interface AircraftScenario {
  readonly name: string;
  /** IANA zone, or fixed offset, in which times are shown. */
  readonly zone: string;
  readonly scenario: Scenario;
  /** Undefined when nothing is wanted. */
  readonly want: WishWithHeaters | undefined;
  readonly limits: StricterLimits;
  /** Whether a battery is in the aircraft. */
  readonly batteryFitted: boolean;
  /** What was learned of this aircraft; undefined where it is the catalogue's. */
  readonly learned: FittedAircraft | undefined;
  readonly ensemble: Ensemble;
  /** What the temperatures at the start are known from. */
  readonly knownFrom: KnownFrom;
  /** What was left open and what was taken. */
  readonly assumptions: readonly Finding[];
  /** Doubts about the sources that did not keep them from being used. */
  readonly warnings: readonly SourceIssue[];
}

export interface Ensemble {
  readonly members: number;
  readonly seed: number;
  readonly correction?: RecordCorrection;
}

/** What a base's own record asks of its plans. */
export interface RecordCorrection extends DrawCorrection {
  /** Plans that were acted on and could be checked. */
  readonly plans: number;
}

/** Readings, the typical state at a shut-down so many seconds before the start, or nothing but the air. */
export type KnownFrom =
  | { readonly from: "readings" | "air" }
  | { readonly from: "shut-down"; readonly ago: number };

/** Heaters that are on at some time by the scenario's own events. */
export function heatersUsed({ initial, events }: Scenario): string[] {
  const plugged = events.flatMap(({ change }) => (change.do === "plug-in" ? change.heaters : []));
  return [...new Set([...initial.configuration.heatersOn, ...plugged])];
}

/** The kit without heaters that neither the wish nor the scenario's own events switch on: what criteria look at. */
export function usedKit({ scenario, want }: Pick<AircraftScenario, "scenario" | "want">): Kit {
  const used = [...(want?.heaters ?? []), ...heatersUsed(scenario)];
  return { ...scenario.kit, heaters: scenario.kit.heaters.filter((h) => used.includes(h.id)) };
}
