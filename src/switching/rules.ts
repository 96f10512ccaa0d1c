import { requireNotNegative, requirePositive } from "../units/index.js";
import { type SwitchDescription, sendsOnTime } from "./description.js";

/** A probe that watches what a switch heats: the heater is on only while it speaks and is below its limit. */
export interface Guard {
  readonly probe: string;
  /** [°C] off above it. */
  readonly atMostC: number;
  /** [s] lost when silent for longer; 600 where left out. */
  readonly silentAfterS?: number;
}

/** What one switch is held to. Times in [s]. */
export interface SwitchRules {
  readonly longestOnS: number;
  readonly restS: number;
  readonly confirmWithinS: number;
  readonly onTimeS: number | null;
  /** The on command carries the on-time, so the last ones can be shorter. */
  readonly sendsOnTime: boolean;
  readonly guards: readonly (Guard & { readonly silentAfterS: number })[];
}

/** [s] The contract of `rest_min`: 30 min where left out. @internal for tests */
export const REST_DEFAULT_S = 30 * 60;
/** [s] Project judgement: a switch on a local network answers within 2 s, one over the phone network within 10 s. */
export const CONFIRM_DEFAULT_S = 15;
/** [s] The contract of `silent_after_s`. @internal for tests */
export const SILENT_DEFAULT_S = 600;
/**
 * [s] of unbroken on-time in which a guarding probe gave exactly the same value again and again. Project judgement: near
 * a heater no part stays within a hundredth of a degree for an hour; a coarse probe (1 °C steps) at balance may, and is
 * then called stuck on the safe side.
 */
export const STUCK_AFTER_S = 3600;
/** [s] Wall clock against monotonic clock; project judgement: time servers step from 0.128 s up, a switch is in no hurry. */
export const CLOCK_TOLERANCE_S = 2;
/** Share of elapsed time by which both clocks may part without a step: far above a quartz's 100 ppm. */
export const CLOCK_DRIFT = 0.001;
/** [s] Both clocks must agree for so long after a jump before the plan's hours are believed. Project judgement. */
export const CLOCK_STEADY_S = 60;
/** [s] Off is repeated after 2, 4, 8 … s, at least once in a minute, until confirmed. Project judgement. */
export const REPEAT_FIRST_S = 2;
export const REPEAT_LONGEST_S = 60;

export function switchRules(of: SwitchDescription, guards: readonly Guard[]): SwitchRules {
  requirePositive("longest_on_min", of.longest_on_min, "min");
  requireNotNegative("rest_min", of.rest_min ?? 0, "min");
  for (const guard of guards) {
    if (!Number.isFinite(guard.atMostC)) {
      throw new RangeError(
        `invalid atMostC of ${guard.probe}: ${guard.atMostC} (expected a temperature in °C)`,
      );
    }
  }
  return {
    longestOnS: of.longest_on_min * 60,
    restS: of.rest_min === undefined ? REST_DEFAULT_S : of.rest_min * 60,
    confirmWithinS: of.confirm_within_s ?? CONFIRM_DEFAULT_S,
    onTimeS: of.on_time_s ?? null,
    sendsOnTime: sendsOnTime(of.via),
    guards: guards.map((guard) => ({ ...guard, silentAfterS: guard.silentAfterS ?? SILENT_DEFAULT_S })),
  };
}

/**
 * [s] Off is commanded so long before `longest_on_min` is used up, because it takes time to arrive: the time a
 * confirmation may take, but no more than a tenth of the whole.
 */
export function offMarginS(rules: SwitchRules): number {
  return Math.min(rules.confirmWithinS, rules.longestOnS / 10);
}
