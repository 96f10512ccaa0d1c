import { type Configuration, isElementPart } from "../aircraft/index.js";
import type { KitChoice, ReadWinter } from "../documents/index.js";
import { caseGeometry, caseMoisture, type PartCourse, WATER_IN_OIL_WINTER } from "../starting/index.js";
import type { Groups, Surrounding } from "./groups.js";
import { heaterPower } from "./heater-power.js";
import type { HeaterSchedule } from "./heater-schedule.js";
import type { Readiness } from "./readiness-count.js";
import { attendedTime } from "./switching.js";

/** [s] */
const HOUR = 3600;

/** What one habit did in one winter. Arrays over members have the middle aircraft first. */
export interface SeasonTally {
  /** Takes in a stretch on the ground. @param times [s] since the start, samples as the solver gives them */
  parked(times: Float64Array, samples: Float64Array, outside: Outside): void;
  departure(index: number, readiness: Readiness): void;
  /** The middle aircraft flew: the water in its case is that of a new flight. */
  returned(): void;
  close(): void;
  readonly totals: SeasonTotals;
}

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

interface Outside {
  readonly tempAir: Float64Array;
  readonly tempDewPoint: Float64Array;
}

export interface TallyRequest {
  readonly read: ReadWinter;
  readonly choice: KitChoice;
  readonly groups: Groups;
  readonly group: number;
  readonly around: readonly Surrounding[];
  /** The configuration with the heaters on. */
  readonly heated: Configuration;
  readonly schedules: HeaterSchedule;
  readonly exact: boolean;
  /** Of a moment [s since epoch], by the base's clock. */
  readonly monthName: (epoch: number) => string;
}

/** [s] longest step of the water's balance in a winter; what it costs against a minute is in docs/winter.md. */
const WATER_STEP = 3600;
const EXACT_WATER_STEP = 60;
const WET_PARTS = ["oil", "crankcase", "crankshaft", "barrels"] as const;

export function createSeasonTally(request: TallyRequest): SeasonTally {
  const { read, choice, groups, group, around, heated, schedules } = request;
  const { parts, members, draws } = groups;
  const size = parts.length * members;
  const first = group * draws;
  const elements = parts.flatMap((name, i) => (isElementPart(name) ? [i] : []));
  const sump = parts.indexOf("sump");
  const wetRows = WET_PARTS.map((part) => parts.indexOf(part));
  const geometry = caseGeometry(read.installation);
  const power = heaterPower(groups, choice.kit, heated);
  const totals = emptyTotals(draws);
  const on = schedules.on.map(({ from, to }) => ({ from: from - read.start, to: to - read.start }));
  const wetByWall = new Map<string, { wet: number; frosted: number }>();
  let course: { time: number[]; temps: number[]; air: number[]; dew: number[] } = emptyCourse();
  let next = 0;

  for (const { from, to } of on) {
    totals.heaterTime += to - from;
    totals.longestOn = Math.max(totals.longestOn, to - from);
    totals.shortestOn = totals.shortestOn > 0 ? Math.min(totals.shortestOn, to - from) : to - from;
    totals.attendedTime += attendedTime(choice, to - from);
    for (let at = from; at < to; ) {
      const until = Math.min(to, at + HOUR);
      monthOf(at).heaterTime += until - at;
      at = until;
    }
  }
  totals.switchOns = on.length;
  totals.givenUp = schedules.givenUp.filter(Boolean).length;

  /** The month by the base's clock. */
  function monthOf(t: number): MonthTotals {
    // The last moment is not the first of another month.
    const epoch = Math.min(read.start + t, read.end - 60);
    return monthOfKey(request.monthName(epoch));
  }

  function monthOfKey(key: string): MonthTotals {
    const found = totals.months.get(key) ?? { departures: 0, ready: 0, energy: 0, heaterTime: 0, wetTime: 0 };
    totals.months.set(key, found);
    return found;
  }

  /** Whether the heaters are on between two neighbouring samples. */
  function isHeated(from: number, to: number): boolean {
    while (next < on.length && on[next]!.to <= from) next++;
    return next < on.length && on[next]!.from <= from && on[next]!.to >= to;
  }

  function addEnergy(times: Float64Array, samples: Float64Array, s: number): void {
    const [from, to] = [times[s - 1]!, times[s]!];
    const half = 0.5 * (to - from);
    const month = monthOf(from);
    for (let d = 0; d < draws; d++) {
      const taken = (at: number) => power.elements(samples, at * size, group, d);
      const elements = half * (taken(s - 1) + taken(s));
      const duct = half * (power.duct(from, around[group]!, d) + power.duct(to, around[group]!, d));
      totals.energy[d]! += elements + (power.ductBurns ? 0 : duct);
      totals.fuel[d]! += power.ductBurns ? duct : 0;
      if (d > 0) month.energy += (elements + duct) / (draws - 1);
    }
  }

  return {
    totals,
    parked(times, samples, outside) {
      for (let s = 0; s < times.length; s++) {
        const at = s * size + first;
        const isOn = s > 0 && isHeated(times[s - 1]!, times[s]!);
        if (isOn) addEnergy(times, samples, s);
        for (let d = 0; d < draws; d++) {
          const film = samples[at + sump * members + d]!;
          if (isOn && film > totals.hottestFilm[d]!) totals.hottestFilm[d] = film;
          for (const i of elements) {
            const surface = samples[at + i * members + d]!;
            if (isOn && surface > totals.hottestSurface[d]!) totals.hottestSurface[d] = surface;
          }
        }
        if (s === 0 && course.time.length > 0) continue;
        course.time.push(times[s]!);
        for (const i of wetRows) course.temps.push(samples[at + i * members]!);
        course.air.push(outside.tempAir[s]!);
        course.dew.push(outside.tempDewPoint[s]!);
      }
    },
    departure(index, { ready, warm, chance, failing, tooHot }) {
      for (let d = 0; d < draws; d++) {
        totals.ready[d]! += ready[d]!;
        totals.warm[d]! += warm[d]!;
      }
      for (const [id, count] of failing) totals.failing.set(id, (totals.failing.get(id) ?? 0) + count);
      if (tooHot) totals.tooHot++;
      const month = monthOf(read.departures[index]! - read.start);
      month.departures++;
      month.ready += chance;
    },
    returned: takeWater,
    close: takeWater,
  };

  /** The water's balance over what was kept since the last flight, then afresh. */
  function takeWater(): void {
    const { time, temps, air, dew } = course;
    if (time.length > 1) {
      const along: PartCourse = { time, parts: WET_PARTS, members: 1, temps };
      const found = caseMoisture(
        geometry,
        along,
        { tempAir: air, tempDewPoint: dew },
        { inOil: WATER_IN_OIL_WINTER * geometry.oilMass, onSurfaces: 0 },
        0,
        request.exact ? EXACT_WATER_STEP : WATER_STEP,
      );
      for (const [wall, wet] of found.wetTime) {
        const before = wetByWall.get(wall) ?? { wet: 0, frosted: 0 };
        const frosted = found.frostTime.get(wall)!;
        wetByWall.set(wall, {
          wet: before.wet + wet[wet.length - 1]!,
          frosted: before.frosted + frosted[frosted.length - 1]!,
        });
      }
      const worst = [...wetByWall.values()].reduce((most, wall) => (wall.wet > most.wet ? wall : most));
      totals.wetTime = worst.wet;
      totals.frostTime = worst.frosted;
      totals.breatherFrost = Math.max(totals.breatherFrost, found.breatherFrost);
      monthOf(time[0]!).wetTime += found.wetTimeMost;
    }
    course = emptyCourse();
  }
}

function emptyCourse() {
  return { time: [], temps: [], air: [], dew: [] };
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
