import type { BaseLimits, BasePlan, Course } from "../base-plan/index.js";
import { rounded } from "../documents/index.js";
import { JOULE_OF_KILOWATT_HOUR, SECONDS_OF_HOUR } from "../units/index.js";
import { localText } from "../weather/index.js";
import type { ReadBase } from "./base-reading.js";
import type { MomentOf } from "./explanation.js";

/** A moment of the plan, as documents have it. */
export interface Stamp {
  readonly at_h: number;
  readonly time: string;
}

/** What is told, with times as they are told. */
export interface Telling {
  readonly plan: BasePlan;
  readonly limits: BaseLimits;
  /** @param t [s] since the start of the base's document */
  readonly stamp: (t: number) => Stamp;
  readonly moment: MomentOf;
}

export function tellingOf(plan: BasePlan, { limits, start, zone, document }: ReadBase): Telling {
  const time = (t: number) => localText(start + t, zone);
  return {
    plan,
    limits,
    stamp: (t) => ({ at_h: rounded(t / SECONDS_OF_HOUR, 4), time: time(t) }),
    moment: (t) => ({ time: time(t), within_day: document.hours <= 24 }),
  };
}

export const hours = (seconds: number) => rounded(seconds / SECONDS_OF_HOUR, 3);
export const kwh = (joules: number) => rounded(joules / JOULE_OF_KILOWATT_HOUR, 3);
export const heatedHours = ({ blocks }: Course) => hours(blocks.reduce((s, b) => s + b.to - b.from, 0));
