import type { PlanDocument } from "../../../documents/index.js";
import type { Words } from "../../words/index.svelte.js";
import { HOUR, timeOf } from "../night/night-model.js";

/** The temperature of a part [°C]: middle of all cases, and the ends that 9 in 10 lie between. */
export interface PartTemp {
  readonly part: string;
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/** [ms] the times of a plan's course. */
export function timesOf({ start, course }: PlanDocument): number[] {
  return course.time_h.map((h) => timeOf(start) + h * HOUR);
}

/** [ms] first and last time of a plan's course. */
export function courseSpan(plan: PlanDocument): { readonly from: number; readonly to: number } {
  const times = timesOf(plan);
  return { from: times[0], to: times[times.length - 1] };
}

/** The times [ms] of a plan that somebody wants to look at, named. */
export function jumpsOf({ plug_in, unplug, departure }: PlanDocument, { print: p }: Words) {
  const start = { label: p.start, time: timeOf(departure) };
  if (plug_in === null) return [start];
  return [{ label: p.plugIn, time: timeOf(plug_in) }, { label: p.unplug, time: timeOf(unplug) }, start];
}

/** Every part at a time [ms], between the samples linearly. */
export function partsAt(plan: PlanDocument, at: number): ReadonlyMap<string, PartTemp> {
  const { course } = plan;
  const hours = (at - Date.parse(plan.start.time)) / HOUR;
  const next = course.time_h.findIndex((t) => t >= hours);
  const i = next < 0 ? course.time_h.length - 1 : Math.max(1, next);
  const [from, to] = [course.time_h[i - 1] ?? course.time_h[i], course.time_h[i]];
  const share = to === from ? 0 : Math.min(1, Math.max(0, (hours - from) / (to - from)));
  const between = (series: readonly number[]) => {
    const before = series[i - 1] ?? series[i];
    return before + (series[i] - before) * share;
  };
  return new Map(
    Object.entries(course.parts).map(([part, band]) => [
      part,
      { part, low: between(band.p05_c), mid: between(band.p50_c), high: between(band.p95_c) },
    ]),
  );
}

/** Parts of the engine proper, in the order heat goes through them. */
const ENGINE = ["oil", "sump", "crankcase", "crankshaft", "cylinders", "heads_front", "heads_rear"];

/** The coldest and the warmest of them. */
export function extremesOf(temps: ReadonlyMap<string, PartTemp>): readonly [PartTemp, PartTemp] | undefined {
  const found = ENGINE.flatMap((part) => temps.get(part) ?? []);
  if (found.length === 0) return undefined;
  const coldest = found.reduce((a, b) => (b.mid < a.mid ? b : a));
  const warmest = found.reduce((a, b) => (b.mid > a.mid ? b : a));
  return [coldest, warmest];
}

/** Parts that are listed, in a fixed order; a heater's single elements stand for themselves in the criteria only. */
export const LISTED = [
  "oil",
  "sump",
  "crankcase",
  "crankshaft",
  "cylinders",
  "heads_front",
  "heads_rear",
  "coolant",
  "accessories",
  "hub",
  "battery",
  "heater_surface",
  "cowl_air",
  "cowl_skin",
  "outside_air",
] as const;
