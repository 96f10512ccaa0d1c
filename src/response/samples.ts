import type { Trajectory } from "../simulation/index.js";

/** Samples of a course in single precision, which keeps a temperature to 0.00002 K in half the memory. */
export interface Samples {
  /** [s] ascending. */
  readonly time: readonly number[];
  /** [K] sample s, part i, member m at `[(s * parts + i) * members + m]` */
  readonly temps: Float32Array;
  /** [J] put in since the first sample, sample s and member m at `[s * members + m]` */
  readonly energy: Float32Array;
}

export function samplesOf({ time, temps, energy }: Trajectory): Samples {
  return { time: [...time], temps: Float32Array.from(temps), energy: Float32Array.from(energy) };
}

/** A course and what follows it from its last sample on. */
export function lengthened(samples: Samples, more: Trajectory): Samples {
  const { members } = more;
  const last = samples.energy.subarray(samples.energy.length - members);
  const size = more.parts.length * members;
  const energy = more.energy.subarray(members).map((e, k) => e + last[k % members]);
  return {
    time: [...samples.time, ...more.time.subarray(1)],
    temps: concatenated(samples.temps, more.temps.subarray(size)),
    energy: concatenated(samples.energy, energy),
  };
}

function concatenated(a: Float32Array, b: ArrayLike<number>): Float32Array {
  const out = new Float32Array(a.length + b.length);
  out.set(a);
  out.set(b, a.length);
  return out;
}

/** Writes the row at `t`, linear between the rows of two samples; the ends hold beyond themselves. */
export function interpolate(
  time: readonly number[],
  rows: Float32Array,
  t: number,
  size: number,
  out: Float64Array,
): void {
  let s = 0;
  while (s < time.length - 2 && time[s + 1] < t) s++;
  const next = Math.min(s + 1, time.length - 1);
  const span = time[next] - time[s];
  const w = span === 0 ? 0 : Math.min(1, Math.max(0, (t - time[s]) / span));
  const a = s * size;
  const b = next * size;
  for (let k = 0; k < size; k++) out[k] = (1 - w) * rows[(a + k) | 0] + w * rows[(b + k) | 0];
}
