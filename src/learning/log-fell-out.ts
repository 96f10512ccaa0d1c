import {
  FALL_EXCESS,
  FALL_LONGEST,
  FALL_SHARE,
  FALL_TIME,
  FOLLOW_TIME,
  FOLLOW_WITHIN,
  placeKind,
} from "./log-rules.js";
import { carriedOn, type Doubt, type JudgedLog, type JudgedSeries, readingsOf } from "./log-series.js";

/**
 * Stretches in which a part's probe has fallen out: its reading goes to that of the air around faster than any part can.
 * The air is that of the log's outside or hangar probes; without one it is the coldest of all that the log shows, which
 * may be another warm part, and the readings are kept with doubt. A probe on a heater element is judged only while a part
 * is well above the air. Cowl air is no measure: it is warm itself. Probes of air, skin and hub are not judged.
 */
export function fallsIn(series: JudgedSeries, log: JudgedLog): readonly Doubt[] {
  const kind = placeKind(series.place);
  if (kind === "exposed") return [];
  const { time } = log;
  const { temps } = series;
  const measured = log.series.filter(({ place }) => typeof place === "string");
  const airs = measured.length > 0 ? measured.map((air) => carriedOn(air.temps)) : [coldestOf(series, log)];
  const warmest = kind === "element" ? warmestPart(log) : undefined;
  const at = readingsOf(temps);
  const doubts: Doubt[] = [];
  let a = 0;
  for (let b = 1; b < at.length; b++) {
    // The one before the last `FALL_TIME`, for the probe may have been falling already when the next one was taken.
    while (a + 1 < b && time[at[b]] - time[at[a + 1]] > FALL_TIME) a++;
    const air = airs.find((one) => falls(a, b, one) || (measured.length > 0 && rises(a, b, one)));
    if (air === undefined) continue;
    const start = firstStep(a, b);
    const end = lastOut(b, temps[at[a]] - temps[at[b]], air);
    doubts.push({
      kind: "fell-out",
      first: at[start],
      last: at[end],
      expected: "no quicker way to the air around than a part can go",
      received: `${(temps[at[b]] - temps[at[start - 1]]).toFixed(1)} K within ${Math.round((time[at[b]] - time[at[start - 1]]) / 60)} min`,
      rejected: measured.length > 0,
    });
    b = end;
    a = end;
  }
  return doubts;

  function falls(from: number, to: number, air: Float64Array): boolean {
    const around = air[at[to]];
    const excess = temps[at[from]] - around;
    if (!hasGone(temps[at[from]] - temps[at[to]], excess, from, to)) return false;
    if (warmest === undefined) return true;
    return temps[at[to]] - around <= FOLLOW_WITHIN && warmest[at[to]] - around >= FALL_EXCESS;
  }

  /** A part colder than the air may be heated past it, a probe in the air stays with it. */
  function rises(from: number, to: number, air: Float64Array): boolean {
    const lack = air[at[to]] - temps[at[from]];
    if (!hasGone(temps[at[to]] - temps[at[from]], lack, from, to)) return false;
    let followed = 0;
    for (let c = to; c < at.length && time[at[c]] - time[at[to]] <= FALL_TIME + FOLLOW_TIME; c++) {
      if (time[at[c]] - time[at[to]] < FALL_TIME) continue;
      if (!(Math.abs(temps[at[c]] - air[at[c]]) <= FOLLOW_WITHIN)) return false;
      followed++;
    }
    return followed >= FOLLOW_READINGS;
  }

  /** Whether `FALL_SHARE` of a difference is gone, and more of it where the readings are further apart than `FALL_TIME`. */
  function hasGone(change: number, difference: number, from: number, to: number): boolean {
    if (!(difference >= FALL_EXCESS && change >= FALL_SHARE * difference)) return false;
    const duration = time[at[to]] - time[at[from]];
    const share = 1 - (1 - FALL_SHARE) ** Math.max(1, duration / FALL_TIME);
    return duration <= FALL_LONGEST && change >= share * difference;
  }

  /** Where a tenth of the jump is first gone in one step. */
  function firstStep(from: number, to: number): number {
    const jump = temps[at[to]] - temps[at[from]];
    let start = from + 1;
    while (start < to && Math.abs(temps[at[start]] - temps[at[start - 1]]) < 0.1 * Math.abs(jump)) start++;
    return start;
  }

  /** The last reading before the probe is back: half the jump made good within `FALL_TIME`, and no longer moving fast. */
  function lastOut(from: number, jump: number, air: Float64Array): number {
    const excess = (c: number) => temps[at[c]] - air[at[c]];
    let behind = from;
    for (let c = from + 1; c < at.length; c++) {
      while (time[at[c]] - time[at[behind]] > FALL_TIME && behind < c - 1) behind++;
      if ((excess(c) - excess(behind)) / jump < 0.5) continue;
      let back = c;
      while (back + 1 < at.length && (temps[at[back + 1]] - temps[at[back]]) / jump > 0.1) back++;
      return back - 1;
    }
    return at.length - 1;
  }
}

const FOLLOW_READINGS = 5;

/** [K] the coldest that any probe shows at each time, or this one ever showed. */
function coldestOf(series: JudgedSeries, { series: all }: JudgedLog): Float64Array {
  let ever = Number.POSITIVE_INFINITY;
  for (const temp of series.temps) if (temp < ever) ever = temp;
  const coldest = new Float64Array(series.temps.length).fill(ever);
  for (const other of all) {
    if (other === series) continue;
    carriedOn(other.temps).forEach((temp, k) => {
      if (temp < coldest[k]) coldest[k] = temp;
    });
  }
  return coldest;
}

/** [K] the warmest part that is no element at each time. */
function warmestPart({ series, time }: JudgedLog): Float64Array {
  const warmest = new Float64Array(time.length).fill(Number.NEGATIVE_INFINITY);
  for (const { place, temps } of series) {
    if (placeKind(place) !== "mass") continue;
    carriedOn(temps).forEach((temp, k) => {
      if (temp > warmest[k]) warmest[k] = temp;
    });
  }
  return warmest;
}
