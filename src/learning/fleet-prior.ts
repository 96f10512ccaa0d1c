import { CALIBRATED } from "../aircraft/index.js";
import { lowerCholesky } from "../numerics/index.js";
import { type MultiplierPosterior, PRIOR } from "../simulation/index.js";
import { type FittedAircraft, posteriorFor, priorOf, type ThermalSetting } from "./fitted-aircraft.js";

/** Another aircraft of the base, with what was learned of it. */
export interface FleetMember {
  readonly name: string;
  readonly learned: FittedAircraft;
}

interface Use {
  readonly setting: ThermalSetting;
  readonly heaters: readonly string[];
}

/**
 * What is known of an aircraft for a use: its own logs, and what others of its kind at its base taught as far as they have it
 * in common (partial pooling: normal hierarchy with the means and the precisions of the others' logs; Gelman et al., Bayesian
 * Data Analysis, 3rd ed. 2013, section 5.4, parameter by parameter). Undefined where nothing is known at all.
 */
export function withFleet(
  own: FittedAircraft | undefined,
  fleet: readonly FleetMember[],
  use: Use,
  installation: string,
): FittedAircraft | undefined {
  const others = fleet.filter(({ learned }) => learned.base === installation);
  if (others.length === 0) return own;
  const taught = others.map(({ learned }) => posteriorFor(learned, use));
  const from = own === undefined ? PRIOR : posteriorFor(own, use);
  const multipliers = narrowed(from, taught);
  if (multipliers === undefined) return own;
  return {
    version: 1,
    base: installation,
    multipliers,
    evidence: [
      ...others.flatMap(({ name, learned }) =>
        // Of another aircraft no probe is this one's.
        learned.evidence.filter((e) => e.of === undefined).map((e) => ({ ...e, of: name, probes: [] })),
      ),
      ...(own?.evidence ?? []),
    ],
  };
}

/** A distribution with what others teach about each of its parameters; undefined where they teach nothing. */
function narrowed(
  { names, mean, factor }: MultiplierPosterior,
  others: readonly MultiplierPosterior[],
): MultiplierPosterior | undefined {
  const n = names.length;
  const middle = [...mean];
  const covariance = Float64Array.from({ length: n * n }, (_, k) =>
    factor[Math.floor(k / n)].reduce((sum, value, j) => sum + value * factor[k % n][j], 0),
  );
  let isTaught = false;
  names.forEach((name, i) => {
    const shared = sharedBy(name, others);
    if (shared === undefined) return;
    isTaught = true;
    // What the others say beyond the prior comes in as one more reading of this parameter.
    const gain = Array.from({ length: n }, (_, j) => covariance[j * n + i]);
    const variance = covariance[i * n + i] + 1 / shared.precision;
    const surprise = (shared.value - middle[i]) / variance;
    gain.forEach((g, j) => {
      middle[j] += g * surprise;
      for (let k = 0; k < n; k++) covariance[j * n + k] -= (g * gain[k]) / variance;
    });
  });
  if (!isTaught) return undefined;
  const root = lowerCholesky(covariance, n);
  return { names, mean: middle, factor: names.map((_, i) => Array.from(root.subarray(i * n, (i + 1) * n))) };
}

/** The least precision, in prior ones, that counts as having learned something. */
const TAUGHT = 0.02;

/** Value and precision that the others' logs give for ln(multiplier) of one more aircraft, beyond its prior. */
function sharedBy(name: string, others: readonly MultiplierPosterior[]) {
  const { mean: usual, sd } = priorOf(name);
  const prior = sd ** 2;
  // What aircraft and their nights do not differ by they have in common: how well the calibration knows its mean.
  const p = PRIOR.names.indexOf(name);
  const between = CALIBRATED.between_aircraft[p] ** 2 + CALIBRATED.between_nights[p] ** 2;
  const common = prior - between;
  let precision = 1 / common;
  let weighed = usual / common;
  for (const { names, mean, factor } of others) {
    const i = names.indexOf(name);
    if (i < 0) continue;
    const variance = factor[i].reduce((sum, value) => sum + value * value, 0);
    // The log's own word, without the prior that its posterior began from.
    const own = 1 / variance - 1 / prior;
    if (own * prior < TAUGHT) continue;
    const value = (mean[i] / variance - usual / prior) / own;
    const weight = 1 / (between + 1 / own);
    precision += weight;
    weighed += weight * value;
  }
  const variance = 1 / precision + between;
  const beyond = 1 / variance - 1 / prior;
  if (!(beyond * prior >= TAUGHT)) return undefined;
  const mean = weighed / precision;
  return { precision: beyond, value: (mean / variance - usual / prior) / beyond };
}
