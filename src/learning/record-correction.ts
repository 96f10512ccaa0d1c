import { normalProbability, normalQuantile } from "../numerics/index.js";
import type { DrawCorrection } from "../simulation/index.js";
import type { CheckedPlan } from "./track-record.js";

/**
 * Corrects plans by what came of earlier ones. In standard deviations of what was said, parts come out at bias + spread z with z
 * standard normal; a plan of chance p then holds with Φ((Φ⁻¹(p) + bias)/spread). Readings and starts together give the joint
 * posterior of both on a grid, shrunk towards no correction by the priors. The bias goes into plans as an error of the outside
 * air, which moves every part of an aircraft on the ramp alike.
 */

/** Fewer plans ask for nothing; only with many may a plan get bolder. Project judgement. */
const FEW = 5;
const MANY = 30;
/** Standard deviations of the priors; project judgement: a base is off by half a standard deviation at most as a rule. */
const BIAS_SD = 0.5;
const SPREAD_LOG_SD = 0.35;
/** [K] of plans whose bands were not written down: about what plans say of an engine some hours ahead. Project judgement. */
const USUAL_SD = 4;
/** Whatever a plan says, one start in fifty fails for another reason; project judgement. */
const MOST_SAID = 0.98;
/** How sure a bias to the cold has to be. */
const SURE = 0.8;
/** Bounds and steps of what is applied: [K] and [1]. Bolder plans get half of what the cautious end of the posterior gives. */
const COLDEST = -8;
const WARMEST = 2;
const STEP_K = 0.5;
const WIDEST = 2;
const NARROWEST = 0.8;
const STEP_SPREAD = 0.05;

const BIASES = Array.from({ length: 46 }, (_, i) => -3 + 0.1 * i);
const LOG_SPREADS = Array.from({ length: 35 }, (_, i) => -0.5 + 0.05 * i);

export function correctionFrom(
  plans: readonly CheckedPlan[],
): (DrawCorrection & { readonly plans: number }) | undefined {
  if (plans.length < FEW) return undefined;
  const evidence = plans.map(evidenceOf);
  const isMuch = plans.length >= MANY;
  const { biases, spreads } = posterior(evidence);
  const isCold = quantileOf(BIASES, biases, SURE) < 0;
  const bold = isMuch ? 0.5 * Math.max(0, quantileOf(BIASES, biases, 0.05)) : 0;
  const bias = isCold ? meanOf(BIASES, biases) : bold;
  const wide = Math.exp(meanOf(LOG_SPREADS, spreads));
  const narrow = Math.exp(quantileOf(LOG_SPREADS, spreads, 0.95));
  const spread = wide > 1 ? wide : isMuch ? Math.min(1, narrow) : 1;
  const sd = meanSd(evidence);
  const airShift = STEP_K * Math.round(clamp(bias * sd, COLDEST, WARMEST) / STEP_K);
  const rounded = STEP_SPREAD * Math.round(clamp(spread, NARROWEST, WIDEST) / STEP_SPREAD);
  if (airShift === 0 && Math.abs(rounded - 1) < STEP_SPREAD / 2) return undefined;
  return { airShift: airShift + 0, spread: Number(rounded.toFixed(2)), plans: plans.length };
}

interface Evidence {
  /** Standard deviations by which the reading nearest to the departure lay off what an uncorrected plan says. */
  readonly off: number | undefined;
  /** Φ⁻¹ of the chance that an uncorrected plan says, and whether it held. */
  readonly said: number | undefined;
  readonly held: boolean;
  /** [K] */
  readonly sd: number | undefined;
}

function evidenceOf({ chance, held, readings, place, corrected }: CheckedPlan): Evidence {
  const spread = corrected?.spread ?? 1;
  // Only on the ramp does the outside air move what is said.
  const shift = place === "ramp" ? (corrected?.airShift ?? 0) : 0;
  const last = readings.filter(({ at }) => at === readings[readings.length - 1].at);
  const sd = last.length === 0 ? undefined : meanOver(last.map((reading) => reading.sd / spread));
  const off =
    sd === undefined
      ? undefined
      : meanOver(last.map((reading) => (reading.off + shift) / (reading.sd / spread)));
  const told = clamp(chance, 1 - MOST_SAID, MOST_SAID);
  const said = held === undefined ? undefined : spread * normalQuantile(told) - shift / (sd ?? USUAL_SD);
  return { off, said, held: held === true, sd };
}

/** Marginal weights of both on their grids. */
function posterior(evidence: readonly Evidence[]): { biases: number[]; spreads: number[] } {
  const logs = BIASES.map((bias) =>
    LOG_SPREADS.map((log) => {
      const spread = Math.exp(log);
      let sum = -0.5 * (bias / BIAS_SD) ** 2 - 0.5 * (log / SPREAD_LOG_SD) ** 2;
      for (const { off, said, held } of evidence) {
        if (off !== undefined) sum += -log - 0.5 * ((off - bias) / spread) ** 2;
        if (said === undefined) continue;
        const chance = clamp(normalProbability((said + bias) / spread), 1 - MOST_SAID, MOST_SAID);
        sum += Math.log(held ? chance : 1 - chance);
      }
      return sum;
    }),
  );
  const most = Math.max(...logs.map((row) => Math.max(...row)));
  const weights = logs.map((row) => row.map((log) => Math.exp(log - most)));
  return {
    biases: weights.map((row) => row.reduce((a, b) => a + b)),
    spreads: LOG_SPREADS.map((_, j) => weights.reduce((sum, row) => sum + row[j], 0)),
  };
}

function meanOf(grid: readonly number[], weights: readonly number[]): number {
  const total = weights.reduce((a, b) => a + b);
  return grid.reduce((sum, value, i) => sum + value * weights[i], 0) / total;
}

function quantileOf(grid: readonly number[], weights: readonly number[], share: number): number {
  const wanted = share * weights.reduce((a, b) => a + b);
  let sum = 0;
  for (const [i, weight] of weights.entries()) {
    sum += weight;
    if (sum >= wanted) return grid[i];
  }
  return grid[grid.length - 1];
}

function meanSd(evidence: readonly Evidence[]): number {
  const read = evidence.flatMap(({ sd }) => sd ?? []);
  return read.length === 0 ? USUAL_SD : meanOver(read);
}

function meanOver(values: readonly number[]): number {
  return values.reduce((a, b) => a + b) / values.length;
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}
