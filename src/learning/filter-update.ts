import type { Forecast } from "./filter-forecast.js";
import type { FilterLayout, ProbeState } from "./filter-state.js";

/** A state after readings, with what they said about suspects and probes. */
export interface Updated extends Forecast {
  readonly probes: readonly ProbeState[];
  /** Logarithm of how much better each suspect expected the readings than the belief did. */
  readonly evidence: readonly number[];
  /** What became of every probe's reading. */
  readonly used: readonly ReadingUse[];
  /** [K] what the model said each probe would read, before it read; NaN for those without a reading. */
  readonly expected: readonly number[];
}

export type ReadingUse = "used" | "none" | "gated" | "probe-out";

/** Readings further off than this many standard deviations do not move the state; project judgement. */
const GATE = 4;
/** Most that one reading may say for or against anything, so that it takes several; project judgement. */
const MOST_SAID = 2;
/** [s] Readings closer together than this are not independent, and count the less about suspects; project judgement. */
const INDEPENDENT = 170;
/** [1/s] how often probes fall out, and how soon somebody notices and puts them back; project judgement. */
const FALLS_OUT = 1 / (500 * 3600);
const PUT_BACK = 1 / (6 * 3600);
/** [K] scatter of a probe that hangs in the air, around the air under the cowl or outside; project judgement. */
const LOOSE_SD = 4;
/** [1/K] density of a reading that has nothing to do with any temperature here. */
const NONSENSE = 1e-3;
/** Chance of being out from which a probe's readings are left aside. */
export const DISTRUSTED = 0.5;

export interface Readings {
  /** [K] of each probe; NaN for none. */
  readonly temps: readonly number[];
  /** [K] air measured where the aircraft stands; leave out when not measured. */
  readonly air?: number;
  /** [s] since the last update. */
  readonly span: number;
  /** [K] air where the aircraft is believed to stand, before its lasting error. */
  readonly airTold: number;
}

/** [K] a thermometer for the air near the aircraft; project judgement. */
const AIR_NOISE = 0.7;

/** Kalman update, one reading after the other. Gelb (ed.), Applied Optimal Estimation, 1974, table 4.2-1, from memory. */
export function updated(
  layout: FilterLayout,
  forecast: Forecast,
  before: readonly ProbeState[],
  readings: Readings,
): Updated {
  const { size, air, offsets, felt, parts, sensors } = layout;
  const state = {
    mean: forecast.mean.slice(),
    covariance: forecast.covariance.slice(),
    suspects: forecast.suspects.map((x) => x.slice()),
  };
  const evidence = state.suspects.map(() => 0);
  const share = 1 - Math.exp(-readings.span / INDEPENDENT);
  const used: ReadingUse[] = [];
  const expected: number[] = [];
  const cowlAir = parts.indexOf("cowl_air");
  if (readings.air !== undefined) {
    const row = new Float64Array(size);
    row[air] = 1;
    const seen = readings.air - readings.airTold;
    correct(state, row, (x) => seen - x[air], AIR_NOISE ** 2, size);
  }
  const probes = sensors.map((sensor, p): ProbeState => {
    const { out: outBefore, name } = before[p];
    const out =
      outBefore + (1 - outBefore) * FALLS_OUT * readings.span - outBefore * PUT_BACK * readings.span;
    const reading = readings.temps[p];
    if (Number.isNaN(reading)) {
      used.push("none");
      expected.push(Number.NaN);
      return { name, out: Math.min(0.999, Math.max(0, out)) };
    }
    const row = new Float64Array(size);
    row[felt + p] = 1;
    row[offsets + p] = 1;
    expected.push(dot(row, state.mean));
    const noise = sensor.noise ** 2;
    const innovation = (x: Float64Array) => reading - dot(row, x);
    const variance = noise + quadratic(state.covariance, row, size);
    // Before a probe is thought to have fallen out, whatever else might go on must fail to explain its reading.
    const seated = Math.max(...[state.mean, ...state.suspects].map((x) => density(innovation(x), variance)));
    const outside = readings.airTold + state.mean[air];
    const loose =
      NONSENSE +
      0.5 *
        density(reading - state.mean[cowlAir], LOOSE_SD ** 2 + state.covariance[cowlAir * size + cowlAir]) +
      0.5 * density(reading - outside, LOOSE_SD ** 2);
    const said = clamp(Math.log(loose / Math.max(seated, 1e-300)), MOST_SAID);
    const odds = (Math.max(out, 1e-9) / (1 - out)) * Math.exp(said);
    const chance = Math.min(0.999, odds / (1 + odds));
    const surprise = innovation(state.mean) ** 2 / variance;
    if (chance > DISTRUSTED) used.push("probe-out");
    else {
      state.suspects.forEach((x, s) => {
        const better = 0.5 * (surprise - innovation(x) ** 2 / variance);
        evidence[s] += share * clamp(better, MOST_SAID);
      });
      used.push(surprise > GATE ** 2 ? "gated" : "used");
      if (surprise <= GATE ** 2) correct(state, row, innovation, noise, size);
    }
    return { name, out: chance };
  });
  return { ...state, probes, evidence, used, expected };
}

/** One scalar reading: the suspects take the belief's gain. */
function correct(
  { mean, covariance, suspects }: { mean: Float64Array; covariance: Float64Array; suspects: Float64Array[] },
  row: Float64Array,
  innovation: (x: Float64Array) => number,
  noise: number,
  n: number,
): void {
  const cross = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) if (row[j] !== 0) cross[i] += covariance[i * n + j] * row[j];
  }
  const variance = noise + dot(row, cross);
  for (const x of [mean, ...suspects]) {
    const gained = innovation(x) / variance;
    for (let i = 0; i < n; i++) x[i] += cross[i] * gained;
  }
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) covariance[i * n + j] -= (cross[i] * cross[j]) / variance;
  }
}

function quadratic(covariance: Float64Array, row: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) {
    if (row[i] === 0) continue;
    for (let j = 0; j < n; j++) sum += row[i] * covariance[i * n + j] * row[j];
  }
  return sum;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

function density(difference: number, variance: number): number {
  return Math.exp((-0.5 * difference * difference) / variance) / Math.sqrt(2 * Math.PI * variance);
}

function clamp(value: number, most: number): number {
  return Math.max(-most, Math.min(most, value));
}
