import type { Finding } from "../findings/index.js";
import type { AircraftFit } from "./fit-aircraft.js";
import { contradictions } from "./fit-contradictions.js";
import type { Unknown } from "./fit-unknowns.js";
import { logMultiplier } from "./fit-unknowns.js";
import { priorOf } from "./fitted-aircraft.js";

/** What a log taught, what it could not, and how well model and readings agree. */
export interface FitReport {
  readonly multipliers: readonly LearnedMultiplier[];
  /** Everything else that was unknown: snow, air, initial temperatures, probes. */
  readonly others: readonly LearnedUnknown[];
  /** Labels of what the log could not tell: it left more than 80 % of the prior's uncertainty. */
  readonly untold: readonly Finding[];
  /** Labels of what went more than 2.5 standard deviations off: doubt the probe's place, the events or the kit first. */
  readonly suspicious: readonly Finding[];
  readonly probes: readonly ProbeReport[];
  /** Readings used; log rows outside the scenario; rows passed over in a long log. */
  readonly readings: number;
  readonly outside: number;
  readonly thinned: number;
  /** [1] by which the model's own error turned out larger than assumed. */
  readonly discrepancyScale: number;
}

interface LearnedMultiplier {
  readonly name: string;
  readonly label: Finding;
  /** Middle of the posterior. */
  readonly multiplier: number;
  /** Factor that 90 % lie within: multiplier divided and multiplied by it. */
  readonly within: number;
  /** Change from the prior's middle, in the prior's standard deviations. */
  readonly moved: number;
  /** Standard deviation left, as a share of the parameter's own prior's. */
  readonly left: number;
}

interface LearnedUnknown {
  readonly unknown: Unknown;
  /** [K], or a factor for snow; lag [s]. */
  readonly value: number;
  /** In units of the value; of the logarithm for snow and lag. */
  readonly sd: number;
  readonly moved: number;
  readonly left: number;
}

interface ProbeReport {
  readonly name: string;
  readonly readings: number;
  /** [K] mean and root mean square of reading less model. */
  readonly bias: number;
  readonly rms: number;
  /** [K] the largest difference, and when [s since the scenario's start]. */
  readonly worst: { readonly difference: number; readonly at: number };
  /** [1] root mean square after whitening: 1 when the errors are as assumed. */
  readonly whitenedRms: number;
  /** Share of the readings within the 90 % band of model and noise [0..1]. */
  readonly coverage: number;
  /** [K] noise that the readings show. */
  readonly noise: number;
  /** Readings that no aircraft like this one explains, and the worst of them; undefined where there are none. */
  readonly contradicts?: Contradiction;
}

interface Contradiction {
  readonly count: number;
  /** [s] since the scenario's start. */
  readonly at: number;
  /** [K] */
  readonly reading: number;
  readonly model: number;
}

/** Standard deviations left, as a share of the prior's, above which the log taught nothing worth naming. */
const UNTOLD = 0.8;
/** Moves in the prior's standard deviations that ask for another look. */
const SUSPICIOUS = 2.5;
/** Half width of the 90 % band of a normal distribution. */
const NINETY_PERCENT = 1.6448536269514722;
export function reportOf(fit: AircraftFit): FitReport {
  const { unknowns, z, covariance, posterior, data, scales } = fit;
  const n = z.length;
  const multipliers = posterior.names.map((name, i): LearnedMultiplier => {
    const prior = priorOf(name);
    const sd = Math.hypot(...posterior.factor[i]);
    return {
      name,
      label: unknowns.list[i].label,
      multiplier: Math.exp(logMultiplier(unknowns.posterior, i, z)),
      within: Math.exp(NINETY_PERCENT * sd),
      moved: (posterior.mean[i] - prior.mean) / prior.sd,
      left: sd / prior.sd,
    };
  });
  const others = unknowns.list.slice(unknowns.multipliers).map((unknown, k): LearnedUnknown => {
    const j = unknowns.multipliers + k;
    const left = Math.sqrt(covariance[j * n + j]);
    return {
      unknown,
      value: valueAt(fit, j),
      sd: left * unknown.priorSd,
      moved: z[j],
      left,
    };
  });
  const all = [
    ...multipliers.map(({ label, moved, left }) => ({ label, moved, left })),
    ...others.map(({ unknown, moved, left }) => ({ label: unknown.label, moved, left })),
  ];
  return {
    multipliers,
    others,
    untold: all.filter(({ left }) => left > UNTOLD).map(({ label }) => label),
    suspicious: all.filter(({ moved }) => Math.abs(moved) > SUSPICIOUS).map(({ label }) => label),
    probes: data.probes.map((_, p) => probeReport(fit, p)),
    readings: data.probes.reduce((sum, { rows }) => sum + rows.length, 0),
    outside: data.outside,
    thinned: data.thinned,
    discrepancyScale: scales.discrepancy,
  };
}

function valueAt({ unknowns, z }: AircraftFit, j: number): number {
  const { kind, of, priorSd } = unknowns.list[j];
  if (kind === "snow") return Math.exp(priorSd * z[j]);
  if (kind === "lag" || kind === "offset") {
    const probe = unknowns.sensors.findIndex(({ name }) => name === of);
    return unknowns.sensorAt(z, probe)[kind];
  }
  return priorSd * z[j];
}

function probeReport(fit: AircraftFit, p: number): ProbeReport {
  const { data, linearisation, whitenings, scales } = fit;
  const { sensor, readings } = data.probes[p];
  const expected = linearisation.prediction[p];
  const { sd } = whitenings[p];
  const rows = [...whitenings[p].rows];
  const differences = readings.map((reading, k) => reading - expected[k]);
  const at = rows.map((row) => differences[row]);
  const whitened = new Float64Array(rows.length);
  whitenings[p].apply(
    differences.map((d) => (Number.isNaN(d) ? 0 : d)),
    whitened,
  );
  const worst = rows.reduce((a, b) => (Math.abs(differences[b]) > Math.abs(differences[a]) ? b : a), rows[0]);
  return {
    name: sensor.name,
    readings: rows.length,
    bias: meanOf(at),
    rms: Math.sqrt(meanOf(at.map((d) => d * d))),
    worst: { difference: differences[worst], at: data.time[worst] },
    whitenedRms: Math.sqrt(meanOf(Array.from(whitened, (r) => r * r))),
    coverage: meanOf(at.map((d, k) => (Math.abs(d) <= NINETY_PERCENT * sd[k] ? 1 : 0))),
    noise: sensor.noise * scales.noise[p],
    ...contradictionOf(fit, p),
  };
}

function contradictionOf({ data, linearisation, discrepancy }: AircraftFit, p: number) {
  const { readings } = data.probes[p];
  const model = linearisation.prediction[p];
  const rows = contradictions(data, linearisation.prediction, discrepancy)[p];
  if (rows.length === 0) return {};
  const off = (row: number) => Math.abs(readings[row] - model[row]);
  const worst = rows.reduce((a, b) => (off(b) > off(a) ? b : a));
  return {
    contradicts: { count: rows.length, at: data.time[worst], reading: readings[worst], model: model[worst] },
  };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}
