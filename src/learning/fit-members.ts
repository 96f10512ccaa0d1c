import { type Configuration, INPUT_NAMES, installationNetwork, isElementPart } from "../aircraft/index.js";
import { interpolateLinear } from "../numerics/index.js";
import {
  centralDraws,
  configurationAt,
  createForcing,
  type Forcing,
  type Scenario,
  type Timeline,
} from "../simulation/index.js";
import { type SolveResult, type Step, solve } from "../solver/index.js";
import { createThermalSystem, type Network } from "../thermal/index.js";

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

interface BatchRequest {
  readonly members: number;
  /** Multiplier of each named parameter per member [1]; what is not named stays at 1. */
  readonly multipliers: ReadonlyMap<string, Float64Array>;
  /** [K] lasting error of the air, outside and hangar alike, per member; the sky goes with it. */
  readonly airBias?: Float64Array;
  /** What is done with the aircraft; member m follows timelines[variant[m]], all the first one without `variant`. */
  readonly timelines: readonly Timeline[];
  readonly variant?: ArrayLike<number>;
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

export interface BatchSetting {
  readonly scenario: Scenario;
  /** [K] measured in the hangar, at times [s] since the scenario's start; replaces the site's one value. */
  readonly hangarAir?: { readonly time: readonly number[]; readonly temps: readonly number[] };
  /** Weather with errors of its own for each member; the scenario's own weather for all of them without it. */
  readonly forcing?: { readonly forcing: Forcing; readonly members: number };
}

/** Name under which the snow or ice lying on the cowl is multiplied, with the light skin that carries it. */
export const SNOW_LOAD = "snow_load";

/** Elements, air and skin follow within minutes. */
export function isLight(part: string): boolean {
  return isElementPart(part) || part === "cowl_air" || part === "cowl_skin";
}

/** Light parts are wanted to a degree: they may err this much more; project judgement. */
const LIGHT_PARTS_FACTOR = 20;
const TEMPERATURE_INPUTS = (["outside_air", "cowl_surroundings", "supply_air"] as const).map((name) =>
  INPUT_NAMES.indexOf(name),
);

export function createBatch(setting: BatchSetting): MemberBatch {
  const { scenario, hangarAir } = setting;
  const { installation, kit, initial, site } = scenario;
  const { network: plain, valuesIn } = installationNetwork(installation, kit, initial.snowOnCowl);
  const network: Network = {
    ...plain,
    parts: plain.parts.map((part) =>
      part.latentHeat === undefined ? part : { ...part, parameter: SNOW_LOAD },
    ),
  };
  const { forcing, members: forced } = setting.forcing ?? {
    forcing: createForcing(scenario, centralDraws(scenario.weather)),
    members: 1,
  };
  const known = new WeakMap<Configuration, ReturnType<typeof valuesIn>>();
  const scratch = new Float64Array(INPUT_NAMES.length * forced);
  const tolerances = network.parts.map(({ name }) => (isLight(name) ? LIGHT_PARTS_FACTOR : 1));

  /** [K] measured hangar air less the site's. */
  function hangarOffset({ place }: Configuration, t: number): number {
    if (place !== "hangar" || hangarAir === undefined) return 0;
    return interpolateHeld(hangarAir.time, hangarAir.temps, t) - site.tempHangar;
  }

  function writeInputs(request: BatchRequest, stretchFrom: number, t: number, out: Float64Array): void {
    const { members, airBias, timelines } = request;
    timelines.forEach((timeline, v) => {
      const configuration = configurationAt(timeline, stretchFrom);
      const offset = hangarOffset(configuration, t);
      forcing.write(configuration, t, scratch);
      for (let m = 0; m < members; m++) {
        if ((request.variant?.[m] ?? 0) !== v) continue;
        const column = forced === 1 ? 0 : m;
        for (let i = 0; i < INPUT_NAMES.length; i++) out[i * members + m] = scratch[i * forced + column];
        for (const i of TEMPERATURE_INPUTS) out[i * members + m] += offset + (airBias?.[m] ?? 0);
      }
    });
  }

  return {
    network,
    parts: network.parts.map((part) => part.name),
    tempAirAt: (configuration, t) =>
      configuration.place === "hangar"
        ? site.tempHangar + hangarOffset(configuration, t)
        : forcing.tempAirAt(t, 0),
    advance(request) {
      const { members, from, to, timelines, multipliers, tolerance } = request;
      const linkFactors = factorsOf(
        network.links.map((link) => link.parameters),
        multipliers,
        members,
        request.linkFactors,
      );
      const powerFactors = factorsOf(
        network.sources.map((source) => source.parameters),
        multipliers,
        members,
      );
      const stores = factorsOf(
        network.parts.map(({ parameter }) => (parameter === undefined ? [] : [parameter])),
        multipliers,
        members,
        request.capacityFactors,
      );
      const system = createThermalSystem(network, members, stores);
      const left = new Float64Array(INPUT_NAMES.length * members);
      const right = new Float64Array(INPUT_NAMES.length * members);

      function hold(stretchFrom: number, stretchTo: number): void {
        const variants = timelines.map((timeline) => {
          const configuration = configurationAt(timeline, stretchFrom);
          const values = known.get(configuration) ?? valuesIn(configuration);
          known.set(configuration, values);
          return values;
        });
        const spread = (factors: Float64Array, kind: "conductance" | "power") =>
          factors.map((factor, k) => {
            const values = variants[request.variant?.[k % members] ?? 0][kind];
            return factor * values[Math.floor(k / members)];
          });
        system.configure({
          conductance: spread(linkFactors, "conductance"),
          power: spread(powerFactors, "power"),
        });
        writeInputs(request, stretchFrom, stretchFrom, left);
        writeInputs(request, stretchFrom, stretchTo, right);
        system.setInputs(stretchFrom, stretchTo, left, right);
      }

      const jumps = [
        ...forcing.knots,
        ...(hangarAir?.time ?? []),
        ...timelines.flatMap((timeline) => timeline.map((entry) => entry.from)),
      ]
        .filter((t) => t > from && t < to)
        .sort((a, b) => a - b)
        .filter((t, i, all) => i === 0 || t > all[i - 1]);
      return solve({
        system,
        initial: request.state,
        start: from,
        end: to,
        tolerance: {
          absolute: Float64Array.from(tolerances, (factor) => factor * tolerance),
          relative: 1e-9,
        },
        jumps,
        sampleTimes: request.sampleTimes ?? [],
        onStretch: hold,
        ...(request.firstStep === undefined ? {} : { firstStep: request.firstStep }),
        ...(request.onStep === undefined ? {} : { onStep: request.onStep }),
      });
    },
  };
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

/** Linear between the points, held at the first and last value beyond them. */
export function interpolateHeld(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  return interpolateLinear(x, y, Math.max(x[0], Math.min(x[x.length - 1], at)));
}
