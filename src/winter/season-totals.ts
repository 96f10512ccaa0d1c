import type { KitChoice } from "../documents/index.js";
import type { HeaterSchedule } from "./heater-schedule.js";
import { attendedTime } from "./switching.js";

/** [s] */
const HOUR = 3600;

/** What one habit did in one winter, summed up. */
export interface SeasonTotals {
  /** [J] electric and burnt, per member */
  readonly energy: Float64Array;
  readonly fuel: Float64Array;
  /** [s] with the heaters switched on; the longest in one go */
  heaterTime: number;
  longestOn: number;
  /** 0 where it was never on. */
  shortestOn: number;
  switchOns: number;
  /** [s] that somebody was there for it */
  attendedTime: number;
  /** [K] per member */
  readonly hottestSurface: Float64Array;
  readonly hottestFilm: Float64Array;
  /** Departures that each member was ready for, and of those warm through. */
  readonly ready: Float64Array;
  readonly warm: Float64Array;
  /** How often a criterion failed, over departures and drawn members. */
  readonly failing: Map<string, number>;
  tooHot: number;
  givenUp: number;
  /** [s] the middle aircraft's inner walls were wet or frosted, of the wall wet longest, and of those frosted */
  wetTime: number;
  frostTime: number;
  /** [kg] frozen in the breather at most */
  breatherFrost: number;
  readonly months: Map<string, MonthTotals>;
}

export interface MonthTotals {
  departures: number;
  /** Summed over the drawn members' shares. */
  ready: number;
  /** [J] mean over the drawn members */
  energy: number;
  /** [s] */
  heaterTime: number;
  wetTime: number;
}

/** [s] a time with the heaters on, since the start. */
export interface TimeOn {
  readonly from: number;
  readonly to: number;
}

/** Totals of a habit whose switchings are counted and nothing else yet. */
export function switchingTotals(
  schedule: HeaterSchedule,
  on: readonly TimeOn[],
  { draws, choice, monthOf }: { draws: number; choice: KitChoice; monthOf: (t: number) => string },
): SeasonTotals {
  const totals = emptyTotals(draws);
  for (const { from, to } of on) {
    totals.heaterTime += to - from;
    totals.longestOn = Math.max(totals.longestOn, to - from);
    totals.shortestOn = totals.shortestOn > 0 ? Math.min(totals.shortestOn, to - from) : to - from;
    totals.attendedTime += attendedTime(choice, to - from);
    for (let at = from; at < to; ) {
      const until = Math.min(to, at + HOUR);
      monthTotals(totals, monthOf(at)).heaterTime += until - at;
      at = until;
    }
  }
  totals.switchOns = on.length;
  totals.givenUp = schedule.givenUp.filter(Boolean).length;
  return totals;
}

export function monthTotals({ months }: SeasonTotals, key: string): MonthTotals {
  const found = months.get(key) ?? { departures: 0, ready: 0, energy: 0, heaterTime: 0, wetTime: 0 };
  months.set(key, found);
  return found;
}

function emptyTotals(draws: number): SeasonTotals {
  const zeros = () => new Float64Array(draws);
  return {
    energy: zeros(),
    fuel: zeros(),
    heaterTime: 0,
    longestOn: 0,
    shortestOn: 0,
    switchOns: 0,
    attendedTime: 0,
    hottestSurface: zeros(),
    hottestFilm: zeros(),
    ready: zeros(),
    warm: zeros(),
    failing: new Map(),
    tooHot: 0,
    givenUp: 0,
    wetTime: 0,
    frostTime: 0,
    breatherFrost: 0,
    months: new Map(),
  };
}
