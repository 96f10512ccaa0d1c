import { PARAMETERS } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import { type MultiplierPosterior, PRIOR, type Scenario } from "../simulation/index.js";
import { SNOW_LOAD } from "./fit-members.js";
import { reachOf, type Sensor } from "./sensor.js";

/** Something the log may teach. All of them are counted in standard deviations of their priors, z ~ N(0, 1). */
export interface Unknown {
  readonly kind: "multiplier" | "snow" | "air" | "initial" | "offset" | "lag";
  /** Parameter, part or probe it belongs to; empty for what all parts share. */
  readonly of: string;
  readonly label: Finding;
  /** Standard deviation of the prior: of a logarithm for multipliers, snow and lag, else [K]. */
  readonly priorSd: number;
}

/** Priors of a fit besides those of the parameters and probes. */
export interface FitPriors {
  /** What earlier logs taught; the parameters' own priors without it. */
  readonly multipliers?: MultiplierPosterior;
  /** [K] lasting error of the air around the aircraft. */
  readonly airSd: number;
  /** [K] by which a part with a probe may start off the initial temperature given for it, beyond what all share. */
  readonly initialPartSd: number;
  /** [K] the same for single parts, probed or not, where it is known better. */
  readonly initialParts?: ReadonlyMap<string, number>;
  /** Standard deviation of ln(snow load), where there is snow. */
  readonly snowLogSd: number;
}

/** The unknowns of a fit, in order: first those that change the course of temperatures, then those of the probes. */
export interface Unknowns {
  readonly list: readonly Unknown[];
  /** How many change the course of temperatures. */
  readonly physical: number;
  /** How many, the first ones, are multipliers. */
  readonly multipliers: number;
  readonly posterior: MultiplierPosterior;
  readonly sensors: readonly Sensor[];
  /** Members of a batch from vectors z, one for each member. */
  membersAt(zs: readonly Float64Array[]): UnknownMembers;
  /** [K] offset and [s] lag of a probe at z. */
  sensorAt(z: ArrayLike<number>, probe: number): { readonly offset: number; readonly lag: number };
}

interface UnknownMembers {
  readonly members: number;
  readonly multipliers: ReadonlyMap<string, Float64Array>;
  readonly airBias: Float64Array;
  readonly state: Float64Array;
}

export function unknownsOf(
  scenario: Scenario,
  parts: readonly string[],
  sensors: readonly Sensor[],
  priors: FitPriors,
): Unknowns {
  const posterior = priors.multipliers ?? PRIOR;
  const { initial } = scenario;
  const probed = [...new Set(sensors.map(({ place }) => partOf(place)))];
  const own = new Map([
    ...probed.map((part) => [part, priors.initialPartSd] as const),
    ...(priors.initialParts ?? []),
  ]);
  const reaches = [...own.keys()].map((part) => reachOf(part, parts));
  const list: Unknown[] = [
    ...posterior.names.map((name, i) => ({
      kind: "multiplier" as const,
      of: name,
      label: labelOf(name),
      priorSd: Math.hypot(...posterior.factor[i]),
    })),
    ...((initial.snowOnCowl ?? 0) > 0
      ? [{ kind: "snow" as const, of: "", label: finding("unknown-snow", {}), priorSd: priors.snowLogSd }]
      : []),
    { kind: "air", of: "", label: finding("unknown-air", {}), priorSd: priors.airSd },
    { kind: "initial", of: "", label: finding("unknown-start", { part: null }), priorSd: initial.sd },
    ...[...own].map(([part, priorSd]) => ({
      kind: "initial" as const,
      of: part,
      label: finding("unknown-start", { part }),
      priorSd,
    })),
  ];
  const physical = list.length;
  list.push(
    ...sensors.map(({ name, offsetSd }) => ({
      kind: "offset" as const,
      of: name,
      label: finding("unknown-offset", { probe: name }),
      priorSd: offsetSd,
    })),
    ...sensors.map(({ name, lagLogSd }) => ({
      kind: "lag" as const,
      of: name,
      label: finding("unknown-lag", { probe: name }),
      priorSd: lagLogSd,
    })),
  );
  const air = list.findIndex(({ kind }) => kind === "air");
  const snow = list.findIndex(({ kind }) => kind === "snow");
  const central = Float64Array.from(parts, (part) => initial.temps.get(part) ?? initial.tempOthers);

  return {
    list,
    physical,
    multipliers: posterior.names.length,
    posterior,
    sensors,
    membersAt(zs) {
      const members = zs.length;
      const each = (value: (z: Float64Array) => number) => Float64Array.from(zs, value);
      const multipliers = new Map(
        posterior.names.map((name, i): [string, Float64Array] => [
          name,
          each((z) => Math.exp(logMultiplier(posterior, i, z))),
        ]),
      );
      if (snow >= 0)
        multipliers.set(
          SNOW_LOAD,
          each((z) => Math.exp(list[snow].priorSd * z[snow])),
        );
      const state = new Float64Array(parts.length * members);
      parts.forEach((_, row) => {
        for (let m = 0; m < members; m++) {
          const common = list[air + 1].priorSd * zs[m][air + 1];
          state[row * members + m] = central[row] + common;
        }
      });
      reaches.forEach((reach, p) => {
        const at = air + 2 + p;
        for (const row of reach)
          for (let m = 0; m < members; m++) state[row * members + m] += list[at].priorSd * zs[m][at];
      });
      return { members, multipliers, airBias: each((z) => list[air].priorSd * z[air]), state };
    },
    sensorAt(z, probe) {
      const { offset, offsetSd, lag, lagLogSd } = sensors[probe];
      return {
        offset: offset + offsetSd * z[physical + probe],
        lag: lag * Math.exp(lagLogSd * z[physical + sensors.length + probe]),
      };
    },
  };
}

/** ln(multiplier) i at z. */
export function logMultiplier(
  { mean, factor }: MultiplierPosterior,
  i: number,
  z: ArrayLike<number>,
): number {
  let log = mean[i];
  for (let j = 0; j <= i; j++) log += factor[i][j] * z[j];
  return log;
}

export function partOf(place: Sensor["place"]): string {
  if (typeof place === "object") return place.part;
  throw new RangeError(`invalid place of a probe on a part: ${place} (expected a part)`);
}

function labelOf(name: string): Finding {
  const known = PARAMETERS.find((parameter) => parameter.name === name)?.name;
  return known === undefined ? finding("own-words", { text: name }) : finding("parameter", { name: known });
}
