import { lowerCholesky } from "../numerics/index.js";
import type { Timeline } from "../simulation/index.js";
import { AIR_ERROR, type Deviation, type FilterLayout, TINY } from "./filter-state.js";
import { deviating } from "./filter-suspects.js";
import type { MemberBatch } from "./fit-members.js";
import { priorOf } from "./fitted-aircraft.js";
import { followedStep, type Reach } from "./sensor.js";

/** Mean, covariance and the suspects' means, carried on in time. */
export interface Forecast {
  readonly mean: Float64Array;
  readonly covariance: Float64Array;
  readonly suspects: readonly Float64Array[];
}

export interface ForecastRequest {
  readonly from: number;
  readonly to: number;
  readonly told: Timeline;
  readonly belief: Deviation | undefined;
  readonly suspected: readonly (Deviation | undefined)[];
}

/** The model could not be carried on; the message says what to do. */
export class FilterTrouble extends Error {
  override readonly name = "FilterTrouble";
}

/** [s] carried on in one go; over a gap the noise of the model comes in piece by piece. */
const LONGEST_PIECE = 600;
/** [K] the filter's own error is a hundred times this. */
const TOLERANCE = 0.05;
/** ln(multipliers) wander by this share of their prior's sd in half a day: clothes shift, snow packs; project judgement. */
const WANDER = { share: 0.1, over: 12 * 3600 } as const;

/**
 * Carries a state on. The columns S of the covariance's Cholesky factor are sent through the model to either side of the
 * mean, (f(x + s) - f(x - s))/2 being the columns of the new factor: the first-order divided-difference filter of Nørgaard,
 * Poulsen & Ravn, Automatica 36 (2000) 1627-1638, with steps of one standard deviation. Like an extended Kalman filter it
 * needs one run for each unknown, here all members of one solve, but it sees how far the model bends within the
 * uncertainty; unlike a drawn ensemble it has no sampling noise and needs no inflation against it. What the model itself
 * gets wrong comes in as noise.
 */
export function forecast(
  batch: MemberBatch,
  layout: FilterLayout,
  state: Forecast,
  request: ForecastRequest,
): Forecast {
  let { from } = request;
  let now = state;
  while (from < request.to) {
    const to = Math.min(request.to, from + LONGEST_PIECE);
    now = piece(batch, layout, now, { ...request, from, to });
    from = to;
  }
  return now;
}

function piece(
  batch: MemberBatch,
  layout: FilterLayout,
  { mean, covariance, suspects }: Forecast,
  { from, to, told, belief, suspected }: ForecastRequest,
): Forecast {
  const { size, multipliers, air, offsets, felt, lags, parts, reaches } = layout;
  const factor = factorOf(covariance, size);
  // Columns from the offsets on move nothing that the model knows.
  const columns = offsets;
  const vectors = [
    mean,
    ...Array.from({ length: columns }, (_, j) => mean.map((x, i) => x + factor[i * size + j])),
    ...Array.from({ length: columns }, (_, j) => mean.map((x, i) => x - factor[i * size + j])),
    ...suspects,
  ];
  const members = vectors.length;
  const row = (read: (x: Float64Array) => number) => Float64Array.from(vectors, read);
  const result = batch.advance({
    members,
    multipliers: new Map(
      layout.posterior.names.map((name, k): [string, Float64Array] => [
        name,
        row((x) => Math.exp(x[multipliers + k])),
      ]),
    ),
    airBias: row((x) => x[air]),
    timelines: [belief, ...suspected].map((deviation) => deviating(told, deviation)),
    variant: vectors.map((_, m) => Math.max(0, m - 2 * columns)),
    state: Float64Array.from(
      { length: parts.length * members },
      (_, k) => vectors[k % members][Math.floor(k / members)],
    ),
    ...{ from, to, tolerance: TOLERANCE, firstStep: to - from },
  });
  if (result.status !== "completed") throw new FilterTrouble(`${result.status}: ${result.remedy}`);

  const span = to - from;
  const kept = Math.exp(-span / AIR_ERROR.correlationTime);
  /** Vector x at `to`, with the part temperatures of member m. */
  const after = (x: Float64Array, m: number) => {
    const next = x.slice();
    for (let i = 0; i < multipliers; i++) next[i] = result.state[i * members + m];
    next[air] *= kept;
    reaches.forEach((reach, p) => {
      const before = meanOver(reach, x);
      next[felt + p] = followedStep(x[felt + p], before, meanOver(reach, next), span, Math.exp(x[lags + p]));
    });
    return next;
  };
  const spread = new Float64Array(size * size);
  for (let j = 0; j < size; j++) {
    const moved = (sign: number) => mean.map((x, i) => x + sign * factor[i * size + j]);
    // Columns beyond those that the model knows leave the parts as in the mean.
    const up = after(j < columns ? vectors[1 + j] : moved(1), j < columns ? 1 + j : 0);
    const down = after(j < columns ? vectors[1 + columns + j] : moved(-1), j < columns ? 1 + columns + j : 0);
    for (let i = 0; i < size; i++) spread[i * size + j] = 0.5 * (up[i] - down[i]);
  }
  const next: Forecast = {
    mean: after(mean, 0),
    covariance: timesItsTranspose(spread, size),
    suspects: suspects.map((x, s) => after(x, 1 + 2 * columns + s)),
  };
  const around = next.mean[air] + batch.tempAirAt(configurationOf(told, belief, from), from);
  addNoise(layout, next, around, span, kept);
  return next;
}

function factorOf(covariance: Float64Array, size: number): Float64Array {
  try {
    return lowerCholesky(covariance, size);
  } catch {
    throw new FilterTrouble(
      "The filter's covariance is no longer positive definite: start the filter afresh.",
    );
  }
}

function configurationOf(told: Timeline, belief: Deviation | undefined, t: number) {
  const timeline = deviating(told, belief);
  return (timeline.findLast((entry) => entry.from <= t) ?? timeline[0]).configuration;
}

/** What is not known of the model: each part's own error as in a fit, slow change of the multipliers, changing air. */
function addNoise(
  { size, multipliers, air, offsets, discrepancy, posterior }: FilterLayout,
  { mean, covariance }: Forecast,
  around: number,
  span: number,
  kept: number,
): void {
  for (let i = 0; i < multipliers; i++) {
    // An error of size σ that forgets itself within τ, fed in as noise of the same strength: 2 σ²/τ.
    const own = discrepancy.floor ** 2 + (discrepancy.share * (mean[i] - around)) ** 2;
    covariance[i * size + i] += (2 * own * span) / discrepancy.correlationTime;
  }
  for (let i = multipliers; i < air; i++) {
    const prior = priorOf(posterior.names[i - multipliers]).sd;
    covariance[i * size + i] += (WANDER.share * prior) ** 2 * (span / WANDER.over);
  }
  covariance[air * size + air] += AIR_ERROR.sd ** 2 * (1 - kept * kept);
  for (let i = offsets; i < size; i++) covariance[i * size + i] += TINY;
}

function meanOver(reach: Reach, x: Float64Array): number {
  let sum = 0;
  for (const row of reach) sum += x[row];
  return sum / reach.length;
}

function timesItsTranspose(a: Float64Array, n: number): Float64Array {
  const product = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = 0; k < n; k++) sum += a[i * n + k] * a[j * n + k];
      product[i * n + j] = sum;
      product[j * n + i] = sum;
    }
  }
  return product;
}
