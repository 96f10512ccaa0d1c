import type { Heater } from "../aircraft/index.js";
import type { PlanRequest } from "../planning/index.js";
import type { Course, Holder } from "./candidate.js";
import type { BaseLimits } from "./limits.js";
import type { SolveMilp } from "./milp.js";

/** An aircraft that is wanted. Times are [s] since the start, which all aircraft of a base share. */
export interface BaseAircraft {
  readonly id: string;
  readonly name: string;
  /** As for planning it alone; its own events move no heater and no aircraft. */
  readonly plan: PlanRequest;
  /** Indices of the circuits its lead reaches. */
  readonly circuits: readonly number[];
  /** Heat comes and goes with nobody there: a timer or a switch. */
  readonly switched: boolean;
  /** Circuit its plug is in at the start. */
  readonly connected: number | undefined;
  /** Indices of the carts that may heat it. */
  readonly carts: readonly number[];
  /** What people were told it would do, by the plan before. */
  readonly told: Course | undefined;
}

/** An aircraft that is wanted for nothing but takes up a bay. */
export interface ParkedAircraft {
  readonly id: string;
  readonly name: string;
}

export interface BaseRequest {
  readonly aircraft: readonly BaseAircraft[];
  /** Aircraft in the hangar that stay there. */
  readonly parked: readonly ParkedAircraft[];
  readonly limits: BaseLimits;
  readonly solveMilp: SolveMilp;
  /** Whether work at a time [s] is night work. */
  readonly isNight: (t: number) => boolean;
  /** Called between pieces of work with the share done [0..1]; returning false stops the planning. */
  readonly onProgress?: (done: number) => boolean;
}

/** The part of an aircraft that its demands hang on. */
export function holderOf({ plan, switched, connected, carts }: BaseAircraft, limits: BaseLimits): Holder {
  const { wish, scenario } = plan;
  const heaters = new Map<string, Heater>(scenario.kit.heaters.map((h) => [h.id, h]));
  for (const cart of carts) heaters.set(limits.carts[cart].heater.id, limits.carts[cart].heater);
  return {
    switched,
    connected,
    unplug: wish.departure - wish.unplugBefore,
    exit: exitOf(plan, limits),
    heaters,
  };
}

/** [s] when an aircraft in the hangar is pulled out: engines are started outside. */
export function exitOf({ wish }: PlanRequest, { hangar }: BaseLimits): number {
  return wish.departure - Math.max(wish.coverOffBefore, hangar?.moveTime ?? 0);
}
