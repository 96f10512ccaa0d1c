import {
  STUCK_LIVELY,
  STUCK_OTHERS_MOVE,
  STUCK_READINGS,
  STUCK_RESOLUTION,
  STUCK_TIME,
} from "./log-rules.js";
import { type Doubt, type JudgedLog, type JudgedSeries, readingsOf } from "./log-series.js";

/**
 * The same reading over and over while another probe moves. Kept with doubt, for what is settled or coarsely shown also
 * stands still; left out, but for its first, where the column is fine and the readings around it keep changing.
 */
export function stuckIn(series: JudgedSeries, log: JudgedLog): readonly Doubt[] {
  const { temps } = series;
  const at = readingsOf(temps);
  const doubts: Doubt[] = [];
  for (let a = 0; a < at.length; ) {
    let b = a;
    while (b + 1 < at.length && temps[at[b + 1]] === temps[at[a]]) b++;
    const [first, last] = [at[a], at[b]];
    const time = log.time[last] - log.time[first];
    if (b - a + 1 >= STUCK_READINGS && time >= STUCK_TIME) {
      const moved = greatestMove(series, log, first, last);
      if (moved >= STUCK_OTHERS_MOVE) {
        const rejected = isLivelyAround(temps, at, a, b) && resolutionOf(temps, at) <= STUCK_RESOLUTION;
        doubts.push({
          kind: "stuck",
          first: rejected ? at[a + 1] : first,
          last,
          expected: `some change while another probe moves by ${moved.toFixed(0)} K`,
          received: `the same reading for ${Math.round(time / 60)} min`,
          rejected,
        });
      }
    }
    a = b + 1;
  }
  return doubts;
}

function greatestMove(series: JudgedSeries, log: JudgedLog, first: number, last: number): number {
  let greatest = 0;
  for (const other of log.series) {
    if (other === series) continue;
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let k = first; k <= last; k++) {
      const temp = other.temps[k];
      if (temp < low) low = temp;
      if (temp > high) high = temp;
    }
    greatest = Math.max(greatest, high - low);
  }
  return greatest;
}

/** Readings looked at on either side of a stretch. */
const AROUND = 10;

function isLivelyAround(temps: Float64Array, at: Int32Array, a: number, b: number): boolean {
  let pairs = 0;
  let different = 0;
  const count = (i: number) => {
    pairs++;
    if (temps[at[i]] !== temps[at[i + 1]]) different++;
  };
  for (let i = Math.max(0, a - AROUND); i < a; i++) count(i);
  for (let i = b; i < Math.min(at.length - 1, b + AROUND); i++) count(i);
  return pairs >= AROUND && different >= STUCK_LIVELY * pairs;
}

/** [K] the smallest step between two readings in a row that is one. */
function resolutionOf(temps: Float64Array, at: Int32Array): number {
  let smallest = Number.POSITIVE_INFINITY;
  for (let i = 1; i < at.length; i++) {
    const step = Math.abs(temps[at[i]] - temps[at[i - 1]]);
    if (step > 1e-6 && step < smallest) smallest = step;
  }
  return smallest;
}
