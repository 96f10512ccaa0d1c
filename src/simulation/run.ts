import {
  type Configuration,
  ductPower,
  INPUT_NAMES,
  installationNetwork,
  isElementPart,
} from "../aircraft/index.js";
import { type SolveResult, type Step, solve } from "../solver/index.js";
import {
  createThermalSystem,
  type MemberValues,
  type Network,
  type ThermalSystem,
} from "../thermal/index.js";
import { type Draws, multipliersOf, spread } from "./draws.js";
import { createForcing, type Forcing } from "./forcing.js";
import type { Scenario, Timeline } from "./scenario.js";

/** An ensemble of one scenario, prepared once and then run as often as a plan needs. */
export interface EnsembleRun {
  readonly network: Network;
  readonly members: number;
  readonly draws: Draws;
  readonly forcing: Forcing;
  readonly system: ThermalSystem;
  /** [K] initial temperatures, parts x members. */
  readonly initial: Float64Array;
  /** Advances the ensemble from `state` at `from` to `to` through a timeline of configurations. */
  advance(request: AdvanceRequest): SolveResult;
  /** Writes the power [W] all heaters take, per member, elements and duct together. */
  power(configuration: Configuration, t: number, temps: Float64Array, out: Float64Array): void;
  /** Writes every link's heat flow [W], links x members, positive from `from` to `to`. */
  heatFlows(configuration: Configuration, t: number, temps: Float64Array, out: Float64Array): void;
}

export interface AdvanceRequest {
  readonly state: Float64Array;
  /** [s] since scenario start */
  readonly from: number;
  readonly to: number;
  readonly timeline: Timeline;
  readonly sampleTimes?: ArrayLike<number>;
  /** [K] absolute local error allowed per step. */
  readonly tolerance?: number;
  readonly onStep?: (step: Step) => boolean;
}

/** [K] keeps the error of a single trajectory near 0.01 K. */
export const TRAJECTORY_TOLERANCE = 0.005;
/**
 * [K] enough for chances, where members differ by several kelvins: it keeps the error of hourly temperatures near 0.05 K; a
 * heater's own surface may be 0.5 K off for some minutes after a switching.
 */
export const ENSEMBLE_TOLERANCE = 0.1;
/** Temperatures are judged by their absolute error alone. */
const RELATIVE_TOLERANCE = 1e-9;
/** Surfaces and air follow within minutes and are wanted to a degree, not to hundredths: they may err this much more; project judgement. */
const LIGHT_PARTS_FACTOR = 20;

function isLight(part: string): boolean {
  return isElementPart(part) || part === "cowl_air" || part === "cowl_skin";
}

function keyOf({ place, heatersOn, coversOn }: Configuration): string {
  return JSON.stringify([place, [...heatersOn].sort(), [...coversOn].sort()]);
}

export function prepareRun(scenario: Scenario, draws: Draws): EnsembleRun {
  const { network, valuesIn } = installationNetwork(
    scenario.installation,
    scenario.kit,
    scenario.initial.snowOnCowl,
  );
  const { members } = draws;
  const forcing = createForcing(scenario, draws);
  const system = createThermalSystem(network, members, capacityFactors(network, draws));
  const closeness = Float64Array.from(network.parts, ({ name }) => (isLight(name) ? LIGHT_PARTS_FACTOR : 1));
  /** By what is fitted and on, since every timeline brings configurations of its own. */
  const known = new Map<string, MemberValues>();
  const heaterPower = multipliersOf(draws, ["heater_power"]);
  const powers = new Float64Array(network.sources.length * members);
  const left = new Float64Array(INPUT_NAMES.length * members);
  const right = new Float64Array(INPUT_NAMES.length * members);

  function memberValues(configuration: Configuration): MemberValues {
    const key = keyOf(configuration);
    let values = known.get(key);
    if (values === undefined) {
      const { conductance, power } = valuesIn(configuration);
      values = {
        conductance: spread(draws, conductance, network.links),
        power: spread(draws, power, network.sources),
      };
      known.set(key, values);
    }
    return values;
  }

  let inUse: Configuration | undefined;

  function use(configuration: Configuration): void {
    if (inUse === configuration) return;
    inUse = configuration;
    system.configure(memberValues(configuration));
  }

  /** What `right` holds, which the next stretch mostly begins with. */
  let held: { readonly configuration: Configuration; readonly to: number } | undefined;

  function hold(configuration: Configuration, from: number, to: number): void {
    use(configuration);
    if (held?.configuration === configuration && held.to === from) left.set(right);
    else forcing.write(configuration, from, left);
    forcing.write(configuration, to, right);
    held = { configuration, to };
    system.setInputs(from, to, left, right);
  }

  return {
    network,
    members,
    draws,
    forcing,
    system,
    initial: initialTemps(scenario, network, draws),
    power(configuration, t, temps, out) {
      use(configuration);
      system.sourcePowers(temps, powers);
      for (let m = 0; m < members; m++) {
        const air = forcing.tempAirAt(t, m);
        out[m] = heaterPower[m] * ductPower(scenario.kit, configuration, air);
        for (let k = m; k < powers.length; k += members) out[m] += powers[k];
      }
    },
    heatFlows(configuration, t, temps, out) {
      hold(configuration, t, t + 1);
      system.heatFlows(t, temps, out);
    },
    advance({ state, from, to, timeline, sampleTimes = [], tolerance = ENSEMBLE_TOLERANCE, onStep }) {
      const jumps = [...forcing.knots, ...timeline.map((entry) => entry.from)]
        .filter((t) => t > from && t < to)
        .sort((a, b) => a - b)
        .filter((t, i, all) => i === 0 || t > all[i - 1]);
      const switchings = new Set(timeline.map((entry) => entry.from));
      return solve({
        system,
        initial: state,
        start: from,
        end: to,
        tolerance: { absolute: closeness.map((factor) => factor * tolerance), relative: RELATIVE_TOLERANCE },
        jumps,
        // The weather bends at its knots and jumps nowhere.
        isKink: (t) => !switchings.has(t),
        sampleTimes,
        onStretch: (a, b) => hold(configurationAt(timeline, a), a, b),
        ...(onStep === undefined ? {} : { onStep }),
      });
    },
  };
}

/** The configuration in force at time t [s]. */
export function configurationAt(timeline: Timeline, t: number): Configuration {
  let found = timeline[0].configuration;
  for (const entry of timeline) if (entry.from <= t) found = entry.configuration;
  return found;
}

function capacityFactors(network: Network, draws: Draws): Float64Array {
  const { members } = draws;
  const factors = new Float64Array(network.parts.length * members);
  network.parts.forEach(({ parameter }, i) => {
    const names = parameter === undefined ? [] : [parameter];
    factors.set(multipliersOf(draws, names), i * members);
  });
  return factors;
}

function initialTemps({ initial }: Scenario, network: Network, draws: Draws): Float64Array {
  const { members } = draws;
  const temps = new Float64Array(network.parts.length * members);
  network.parts.forEach(({ name }, i) => {
    const central = initial.temps.get(name) ?? initial.tempOthers;
    for (let m = 0; m < members; m++) temps[i * members + m] = central + initial.sd * draws.initialOffset[m];
  });
  return temps;
}
