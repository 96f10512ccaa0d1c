import { type Configuration, isElementPart } from "../aircraft/index.js";
import type { KitChoice, ReadWinter } from "../documents/index.js";
import type { Surrounding } from "./group-inputs.js";
import type { Groups } from "./groups.js";
import { heaterPower } from "./heater-power.js";
import type { HeaterSchedule } from "./heater-schedule.js";
import type { Readiness } from "./readiness-count.js";
import {
  type MonthTotals,
  monthTotals,
  type SeasonTotals,
  switchingTotals,
  type TimeOn,
} from "./season-totals.js";
import { type Outside, WaterTally } from "./water-tally.js";

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

export function createSeasonTally(request: TallyRequest): SeasonTally {
  return new HabitTally(request);
}

class HabitTally implements SeasonTally {
  readonly totals: SeasonTotals;
  private readonly size: number;
  /** Of the group's first member among all. */
  private readonly first: number;
  private readonly elements: readonly number[];
  private readonly sump: number;
  private readonly power;
  private readonly on: readonly TimeOn[];
  private readonly water: WaterTally;
  /** The first of `on` that has not ended. */
  private next = 0;

  constructor(private readonly request: TallyRequest) {
    const { read, choice, groups, group, heated, schedules, exact } = request;
    const { parts, members, draws } = groups;
    this.size = parts.length * members;
    this.first = group * draws;
    this.elements = parts.flatMap((name, i) => (isElementPart(name) ? [i] : []));
    this.sump = parts.indexOf("sump");
    this.power = heaterPower(groups, choice.kit, heated);
    this.on = schedules.on.map(({ from, to }) => ({ from: from - read.start, to: to - read.start }));
    this.water = new WaterTally(read.installation, parts, members, exact);
    this.totals = switchingTotals(schedules, this.on, { draws, choice, monthOf: (t) => this.monthName(t) });
  }

  parked(times: Float64Array, samples: Float64Array, outside: Outside): void {
    for (let s = 0; s < times.length; s++) {
      const at = s * this.size + this.first;
      if (s > 0 && this.isHeated(times[s - 1]!, times[s]!)) {
        this.addEnergy(times, samples, s);
        this.noteHottest(samples, at);
      }
      this.water.keep(times, s, samples, at, outside);
    }
  }

  departure(index: number, { ready, warm, chance, failing, tooHot }: Readiness): void {
    const { totals } = this;
    const { read, groups } = this.request;
    for (let d = 0; d < groups.draws; d++) {
      totals.ready[d]! += ready[d]!;
      totals.warm[d]! += warm[d]!;
    }
    for (const [id, count] of failing) totals.failing.set(id, (totals.failing.get(id) ?? 0) + count);
    if (tooHot) totals.tooHot++;
    const month = this.monthOf(read.departures[index]! - read.start);
    month.departures++;
    month.ready += chance;
  }

  returned(): void {
    this.takeWater();
  }

  close(): void {
    this.takeWater();
  }

  private takeWater(): void {
    const found = this.water.take();
    if (found === undefined) return;
    const { from, moisture, worst } = found;
    this.totals.wetTime = worst.wet;
    this.totals.frostTime = worst.frosted;
    this.totals.breatherFrost = Math.max(this.totals.breatherFrost, moisture.breatherFrost);
    this.monthOf(from).wetTime += moisture.wetTimeMost;
  }

  private monthOf(t: number): MonthTotals {
    return monthTotals(this.totals, this.monthName(t));
  }

  /** The month by the base's clock. */
  private monthName(t: number): string {
    const { read, monthName } = this.request;
    // The last moment is not the first of another month.
    return monthName(Math.min(read.start + t, read.end - 60));
  }

  /** Whether the heaters are on between two neighbouring samples. */
  private isHeated(from: number, to: number): boolean {
    const { on } = this;
    while (this.next < on.length && on[this.next]!.to <= from) this.next++;
    return this.next < on.length && on[this.next]!.from <= from && on[this.next]!.to >= to;
  }

  private addEnergy(times: Float64Array, samples: Float64Array, s: number): void {
    const { power, size, totals } = this;
    const { groups, group, around } = this.request;
    const { draws } = groups;
    const [from, to] = [times[s - 1]!, times[s]!];
    const half = 0.5 * (to - from);
    const month = this.monthOf(from);
    for (let d = 0; d < draws; d++) {
      const taken = (at: number) => power.elements(samples, at * size, group, d);
      const elements = half * (taken(s - 1) + taken(s));
      const duct = half * (power.duct(from, around[group]!, d) + power.duct(to, around[group]!, d));
      totals.energy[d]! += elements + (power.ductBurns ? 0 : duct);
      totals.fuel[d]! += power.ductBurns ? duct : 0;
      if (d > 0) month.energy += (elements + duct) / (draws - 1);
    }
  }

  /** While heated, of every member. */
  private noteHottest(samples: Float64Array, at: number): void {
    const { hottestFilm, hottestSurface } = this.totals;
    const { members, draws } = this.request.groups;
    for (let d = 0; d < draws; d++) {
      const film = samples[at + this.sump * members + d]!;
      if (film > hottestFilm[d]!) hottestFilm[d] = film;
      for (const i of this.elements) {
        const surface = samples[at + i * members + d]!;
        if (surface > hottestSurface[d]!) hottestSurface[d] = surface;
      }
    }
  }
}
