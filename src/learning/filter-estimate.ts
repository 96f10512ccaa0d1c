import { elementPart } from "../aircraft/index.js";
import { createRandom, lowerCholesky } from "../numerics/index.js";
import type { MultiplierPosterior } from "../simulation/index.js";
import type { Deviation, FilterLayout, FilterSetup, FilterState } from "./filter-state.js";
import { BELIEVED, chanceOf } from "./filter-suspects.js";
import { DISTRUSTED } from "./filter-update.js";
import { isLight } from "./fit-members.js";

/** Where every part stands now, and what seems wrong. */
export interface FilterEstimate {
  /** [s] since the scenario's start. */
  readonly time: number;
  /** Every part of the network, probed or not, and "oil_film", the hottest oil-wetted wall. */
  readonly parts: readonly PartEstimate[];
  readonly findings: readonly FilterFinding[];
}

/** [K] middle and 5 and 95 % values. */
export interface PartEstimate {
  readonly part: string;
  readonly mid: number;
  readonly low: number;
  readonly high: number;
}

interface FilterFinding {
  readonly finding: Deviation | "probe-out";
  readonly probe?: string;
  /** [0..1] */
  readonly chance: number;
  /** Whether the estimate already takes it for true. */
  readonly believed: boolean;
  /** [s] since when, where it can be told. */
  readonly since?: number;
}

/** Half width of the 90 % band of a normal distribution. */
const NINETY_PERCENT = 1.6448536269514722;
/** Chances below this are not worth a word. */
const WORTH_SAYING = 0.2;

/** @param around [K] air where the aircraft is believed to stand */
export function estimateOf(
  layout: FilterLayout,
  state: FilterState,
  setup: FilterSetup,
  around: number,
): FilterEstimate {
  const { size, discrepancy } = layout;
  const parts = layout.parts.map((part, i): PartEstimate => {
    // Contacts that differ within their group keep a part off what neighbours and probes say of it: the floor of the
    // model's error stays beside the filter's own. What has hardly any mass forgets the filter's noise at once, but not
    // the model's error that it stands for.
    const own =
      discrepancy.floor ** 2 + (isLight(part) ? (discrepancy.share * (state.mean[i] - around)) ** 2 : 0);
    const half = NINETY_PERCENT * Math.sqrt(state.covariance[i * size + i] + own);
    return { part, mid: state.mean[i], low: state.mean[i] - half, high: state.mean[i] + half };
  });
  const wetted = [
    "sump",
    ...setup.scenario.kit.heaters.flatMap((heater) =>
      heater.elements.filter((e) => e.in_oil).map((e) => elementPart(heater.id, e.name)),
    ),
  ];
  const film = parts
    .filter(({ part }) => wetted.includes(part))
    .reduce((hottest, one) => (one.mid > hottest.mid ? one : hottest));
  return { time: state.time, parts: [...parts, { ...film, part: "oil_film" }], findings: findingsOf(state) };
}

function findingsOf({ belief, suspects, probes }: FilterState): FilterFinding[] {
  const found: FilterFinding[] = [];
  if (belief.deviation !== undefined) {
    const doubt = suspects.find(({ deviation }) => deviation === undefined);
    const chance = doubt === undefined ? BELIEVED : Math.min(BELIEVED, 1 - chanceOf(doubt));
    found.push({ finding: belief.deviation, chance, believed: true, since: belief.since });
  }
  for (const suspect of suspects) {
    const chance = chanceOf(suspect);
    if (suspect.deviation === undefined || chance < WORTH_SAYING) continue;
    found.push({ finding: suspect.deviation, chance, believed: false, since: suspect.since });
  }
  for (const { name, out } of probes) {
    if (out >= WORTH_SAYING)
      found.push({ finding: "probe-out", probe: name, chance: out, believed: out > DISTRUSTED });
  }
  return found;
}

/** Members drawn from an estimate, to judge it by criteria and to plan on from it. */
export interface SampledState {
  readonly members: number;
  /** [K] parts x members. */
  readonly temps: Float64Array;
  /** Multiplier of each parameter per member [1]. */
  readonly multipliers: ReadonlyMap<string, Float64Array>;
}

/** The multipliers of a state, whatever the temperatures turn out to be. */
export function learnedMultipliers(
  layout: FilterLayout,
  { mean, covariance }: FilterState,
): MultiplierPosterior {
  const { posterior, multipliers: first, size } = layout;
  const n = posterior.names.length;
  const own = Float64Array.from(
    { length: n * n },
    (_, k) => covariance[(first + Math.floor(k / n)) * size + first + (k % n)],
  );
  const root = lowerCholesky(own, n);
  return {
    names: posterior.names,
    mean: mean.slice(first, first + n),
    factor: posterior.names.map((_, i) => Array.from(root.subarray(i * n, (i + 1) * n))),
  };
}

export function sampledState(
  layout: FilterLayout,
  { mean, covariance }: FilterState,
  members: number,
  seed: number,
): SampledState {
  const { size, parts, posterior, multipliers, discrepancy } = layout;
  const factor = lowerCholesky(Float64Array.from(covariance), size);
  const random = createRandom(seed);
  const vectors = Array.from({ length: members }, () => {
    const u = Float64Array.from({ length: size }, () => random.normal());
    return mean.map((x, i) => {
      let sum = x;
      for (let j = 0; j <= i; j++) sum += factor[i * size + j] * u[j];
      return sum;
    });
  });
  const ownError = random.stream("own error of each part");
  return {
    members,
    temps: Float64Array.from(
      { length: parts.length * members },
      (_, k) => vectors[k % members][Math.floor(k / members)] + discrepancy.floor * ownError.normal(),
    ),
    multipliers: new Map(
      posterior.names.map((name, i) => [
        name,
        Float64Array.from(vectors, (x) => Math.exp(x[multipliers + i])),
      ]),
    ),
  };
}
