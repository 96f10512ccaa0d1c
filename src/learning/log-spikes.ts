import { FASTEST, placeKind, SPIKE, SPIKE_DEVIATIONS, SPIKE_READINGS } from "./log-rules.js";
import { type Doubt, type JudgedLog, type JudgedSeries, readingsOf } from "./log-series.js";

/**
 * Readings that jump away and come back: up to `SPIKE_READINGS` of them that stand out on both sides, in one direction, by
 * more than noise, on one side at least faster than the place can change; and the readings around agree with each other.
 */
export function spikesIn({ place, temps }: JudgedSeries, { time }: JudgedLog): readonly Doubt[] {
  const at = readingsOf(temps);
  const least = Math.max(SPIKE, SPIKE_DEVIATIONS * noiseOf(temps, at));
  const { up, down } = FASTEST[placeKind(place)];
  const doubts: Doubt[] = [];
  for (let a = 1; a < at.length - 1; a++) {
    if (!(Math.abs(temps[at[a]] - temps[at[a - 1]]) > least)) continue;
    for (let length = 1; length <= SPIKE_READINGS && a + length < at.length; length++) {
      if (!standsOut(a, a + length - 1)) continue;
      const [first, last] = [at[a], at[a + length - 1]];
      const [rise, fall] = edges(a, a + length - 1);
      doubts.push({
        kind: "spike",
        first,
        last,
        expected: `a change that ${placeKind(place) === "mass" ? "such a part" : "its place"} can make`,
        received: `${rise > 0 ? "+" : ""}${rise.toFixed(1)} K and back ${(-fall).toFixed(1)} K`,
        rejected: true,
      });
      a += length;
      break;
    }
  }
  return doubts;

  /** [K] jump into readings a…b and, as it would be backwards in time, out of them. */
  function edges(a: number, b: number): readonly [number, number] {
    return [temps[at[a]] - temps[at[a - 1]], temps[at[b]] - temps[at[b + 1]]];
  }

  function standsOut(a: number, b: number): boolean {
    const [into, out] = edges(a, b);
    if (!(Math.min(Math.abs(into), Math.abs(out)) > least && into > 0 === out > 0)) return false;
    if (Math.abs(temps[at[a - 1]] - temps[at[b + 1]]) > 0.5 * Math.min(Math.abs(into), Math.abs(out)))
      return false;
    for (let c = a; c <= b; c++) {
      const away = Math.min(
        Math.abs(temps[at[c]] - temps[at[a - 1]]),
        Math.abs(temps[at[c]] - temps[at[b + 1]]),
      );
      if (!(away > least)) return false;
    }
    const upward = into > 0;
    const before = time[at[a]] - time[at[a - 1]];
    const after = time[at[b + 1]] - time[at[b]];
    return (
      Math.abs(into) > least + (upward ? up : down) * before ||
      Math.abs(out) > least + (upward ? down : up) * after
    );
  }
}

/** [K] standard deviation of single readings about the mean of their neighbours, from the median so that spikes do not count. */
function noiseOf(temps: Float64Array, at: Int32Array): number {
  if (at.length < 10) return 0;
  const departures = new Float64Array(at.length - 2);
  for (let i = 1; i + 1 < at.length; i++) {
    departures[i - 1] = Math.abs(temps[at[i]] - (temps[at[i - 1]] + temps[at[i + 1]]) / 2);
  }
  departures.sort();
  // 1.4826 turns a median of normal departures into their deviation; a reading less a mean of two has 1.5 variances.
  return (1.4826 * departures[Math.floor(departures.length / 2)]) / Math.sqrt(1.5);
}
