import { type Configuration, INPUT_NAMES, installationNetwork, isElementPart } from "../aircraft/index.js";
import { configurationAt } from "../simulation/index.js";
import { type SolveResult, type Step, solve } from "../solver/index.js";
import { createThermalSystem, type Network, type NetworkValues } from "../thermal/index.js";
import { type BatchSetting, createSurroundings, type Surrounded } from "./batch-surroundings.js";

/**
 * Members of one aircraft that may differ in everything that is fitted or watched for: multipliers (among them of a
 * snow load), an error of the air around it that lasts, and what was really switched on and fitted. One solve gives
 * them all.
 */
export interface MemberBatch {
  readonly network: Network;
  readonly parts: readonly string[];
  /** [K] air around the aircraft that the members are given before their own error, in a configuration at time t. */
  tempAirAt(configuration: Configuration, t: number): number;
  advance(request: BatchRequest): SolveResult;
}

interface BatchRequest extends Surrounded {
  /** Multiplier of each named parameter per member [1]; what is not named stays at 1. */
  readonly multipliers: ReadonlyMap<string, Float64Array>;
  /** [K] parts x members. */
  readonly state: Float64Array;
  /** [s] since the scenario's start. */
  readonly from: number;
  readonly to: number;
  readonly sampleTimes?: ArrayLike<number>;
  /** [K] absolute local error allowed per step. */
  readonly tolerance: number;
  readonly firstStep?: number;
  readonly onStep?: (step: Step) => boolean;
  /** Further multipliers of every link (links x members) and heat capacity (parts x members), for made aircraft. */
  readonly linkFactors?: Float64Array;
  readonly capacityFactors?: Float64Array;
}

/** Name under which the snow or ice lying on the cowl is multiplied, with the light skin that carries it. */
export const SNOW_LOAD = "snow_load";

/** Elements, air and skin follow within minutes. */
export function isLight(part: string): boolean {
  return isElementPart(part) || part === "cowl_air" || part === "cowl_skin";
}

/** Light parts are wanted to a degree: they may err this much more; project judgement. */
const LIGHT_PARTS_FACTOR = 20;

export function createBatch(setting: BatchSetting): MemberBatch {
  const { scenario, hangarAir } = setting;
  const { installation, kit, initial } = scenario;
  const { network: plain, valuesIn } = installationNetwork(installation, kit, initial.snowOnCowl);
  const network = withSnowLoad(plain);
  const surroundings = createSurroundings(setting);
  const known = new WeakMap<Configuration, NetworkValues>();

  function valuesOf(configuration: Configuration): NetworkValues {
    const values = known.get(configuration) ?? valuesIn(configuration);
    known.set(configuration, values);
    return values;
  }

  return {
    network,
    parts: network.parts.map((part) => part.name),
    tempAirAt: surroundings.tempAirAt,
    advance(request) {
      const { from, to } = request;
      const { system, configure } = createMembers(network, request, valuesOf);
      const left = new Float64Array(INPUT_NAMES.length * request.members);
      const right = new Float64Array(INPUT_NAMES.length * request.members);
      return solve({
        system,
        initial: request.state,
        start: from,
        end: to,
        tolerance: toleranceOf(network, request.tolerance),
        jumps: jumpsBetween(from, to, [
          ...surroundings.knots,
          ...(hangarAir?.time ?? []),
          ...request.timelines.flatMap((timeline) => timeline.map((entry) => entry.from)),
        ]),
        sampleTimes: request.sampleTimes ?? [],
        onStretch: (stretchFrom, stretchTo) => {
          configure(stretchFrom);
          surroundings.write(request, stretchFrom, stretchFrom, left);
          surroundings.write(request, stretchFrom, stretchTo, right);
          system.setInputs(stretchFrom, stretchTo, left, right);
        },
        ...(request.firstStep === undefined ? {} : { firstStep: request.firstStep }),
        ...(request.onStep === undefined ? {} : { onStep: request.onStep }),
      });
    },
  };
}

/** What lies on the cowl melts: its part is multiplied by the snow load. */
function withSnowLoad(plain: Network): Network {
  return {
    ...plain,
    parts: plain.parts.map((part) =>
      part.latentHeat === undefined ? part : { ...part, parameter: SNOW_LOAD },
    ),
  };
}

function toleranceOf(network: Network, tolerance: number) {
  const factors = network.parts.map(({ name }) => (isLight(name) ? LIGHT_PARTS_FACTOR : 1));
  return { absolute: Float64Array.from(factors, (factor) => factor * tolerance), relative: 1e-9 };
}

/** [s] each moment within a stretch once, in order. */
function jumpsBetween(from: number, to: number, times: readonly number[]): number[] {
  return times
    .filter((t) => t > from && t < to)
    .sort((a, b) => a - b)
    .filter((t, i, all) => i === 0 || t > all[i - 1]);
}

/** The thermal system of a request's members, each with its own factors; `configure` follows their timelines. */
function createMembers(
  network: Network,
  request: BatchRequest,
  valuesOf: (configuration: Configuration) => NetworkValues,
) {
  const { members, timelines, multipliers } = request;
  const factors = (owners: readonly (readonly string[])[], further?: Float64Array) =>
    factorsOf(owners, multipliers, members, further);
  const linkFactors = factors(
    network.links.map((link) => link.parameters),
    request.linkFactors,
  );
  const powerFactors = factors(network.sources.map((source) => source.parameters));
  const capacityFactors = factors(
    network.parts.map(({ parameter }) => (parameter === undefined ? [] : [parameter])),
    request.capacityFactors,
  );
  const system = createThermalSystem(network, members, capacityFactors);

  function configure(t: number): void {
    const variants = timelines.map((timeline) => valuesOf(configurationAt(timeline, t)));
    const spread = (factors: Float64Array, kind: "conductance" | "power") =>
      factors.map((factor, k) => {
        const values = variants[request.variant?.[k % members] ?? 0][kind];
        return factor * values[Math.floor(k / members)];
      });
    system.configure({
      conductance: spread(linkFactors, "conductance"),
      power: spread(powerFactors, "power"),
    });
  }

  return { system, configure };
}

/** Product of the parameters' multipliers, owner k and member m at `[k * members + m]`. */
function factorsOf(
  owners: readonly (readonly string[])[],
  multipliers: ReadonlyMap<string, Float64Array>,
  members: number,
  further?: Float64Array,
): Float64Array {
  const factors = further === undefined ? new Float64Array(owners.length * members).fill(1) : further.slice();
  owners.forEach((names, k) => {
    for (const name of names) {
      const values = multipliers.get(name);
      if (values === undefined) continue;
      for (let m = 0; m < members; m++) factors[k * members + m] *= values[m];
    }
  });
  return factors;
}
