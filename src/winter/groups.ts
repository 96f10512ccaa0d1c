import {
  type Configuration,
  INPUT_NAMES,
  type Installation,
  installationNetwork,
  type Kit,
} from "../aircraft/index.js";
import { type Draws, multipliersOf, spread } from "../simulation/index.js";
import {
  createThermalSystem,
  type MemberValues,
  type Network,
  type NetworkValues,
  type ThermalSystem,
} from "../thermal/index.js";
import { inputWriter, type Surrounding } from "./group-inputs.js";

/**
 * Groups of the same drawn aircraft side by side in one ensemble: each group in its own weather or configuration, so that
 * many nights, or several habits, share the solver's steps. Member d of group g is member g * draws + d.
 */
export interface Groups {
  readonly network: Network;
  readonly parts: readonly string[];
  readonly groups: number;
  readonly draws: number;
  readonly members: number;
  /** The aircraft of each group. */
  readonly drawn: Draws;
  readonly system: ThermalSystem;
  /** The numbers of a configuration: links and sources x draws. */
  valuesOf(configuration: Configuration): MemberValues;
  /**
   * Sets configurations and surroundings, one of each a group, for the stretch from `from` to `to` [s on the forcings' clock].
   */
  hold(
    configurations: readonly Configuration[],
    surroundings: readonly Surrounding[],
    from: number,
    to: number,
  ): void;
}

export interface GroupsRequest {
  readonly installation: Installation;
  readonly kit: Kit;
  readonly groups: number;
  readonly draws: Draws;
}

export function createGroups(request: GroupsRequest): Groups {
  const { installation, kit, groups, draws } = request;
  const { network, valuesIn } = installationNetwork(installation, kit);
  const members = groups * draws.members;
  const system = createThermalSystem(network, members, capacityFactors(network, draws, members));
  const valuesOf = valuesByConfiguration(network, draws, valuesIn);
  const configure = groupConfigurer(system, network, request, valuesOf);
  const writeInputs = inputWriter(draws.members, members);
  const left = new Float64Array(INPUT_NAMES.length * members);
  const right = new Float64Array(INPUT_NAMES.length * members);
  return {
    network,
    parts: network.parts.map(({ name }) => name),
    groups,
    draws: draws.members,
    members,
    drawn: draws,
    system,
    valuesOf,
    hold(configurations, surroundings, from, to) {
      if (configurations.length !== groups || surroundings.length !== groups) {
        throw new RangeError(
          `invalid groups: ${configurations.length} configurations, ${surroundings.length} surroundings (expected ${groups})`,
        );
      }
      configure(configurations);
      writeInputs(configurations, surroundings, from, left);
      writeInputs(configurations, surroundings, to, right);
      system.setInputs(from, to, left, right);
    },
  };
}

/** The drawn multipliers of the heat capacities, alike in all groups. */
function capacityFactors(network: Network, draws: Draws, members: number): Float64Array {
  const factors = new Float64Array(network.parts.length * members);
  network.parts.forEach(({ parameter }, i) => {
    const own = multipliersOf(draws, parameter === undefined ? [] : [parameter]);
    for (let m = 0; m < members; m++) factors[i * members + m] = own[m % draws.members]!;
  });
  return factors;
}

function valuesByConfiguration(
  network: Network,
  draws: Draws,
  valuesIn: (configuration: Configuration) => NetworkValues,
): (configuration: Configuration) => MemberValues {
  const known = new Map<Configuration, MemberValues>();
  return (configuration) => {
    const found = known.get(configuration);
    if (found !== undefined) return found;
    const { conductance, power } = valuesIn(configuration);
    const made = {
      conductance: spread(draws, conductance, network.links),
      power: spread(draws, power, network.sources),
    };
    known.set(configuration, made);
    return made;
  };
}

/** Gives the system each group's configuration, as far as it changed. */
function groupConfigurer(
  system: ThermalSystem,
  network: Network,
  { groups, draws }: GroupsRequest,
  valuesOf: (configuration: Configuration) => MemberValues,
): (configurations: readonly Configuration[]) => void {
  const each = draws.members;
  const members = groups * each;
  const current: (Configuration | undefined)[] = new Array(groups).fill(undefined);
  const inForce: MemberValues = {
    conductance: new Float64Array(network.links.length * members),
    power: new Float64Array(network.sources.length * members),
  };

  /** Rows of one group's draws into its columns. */
  function putBlock(block: Float64Array, into: Float64Array, g: number): void {
    for (let row = 0; row * each < block.length; row++) {
      into.set(block.subarray(row * each, (row + 1) * each), row * members + g * each);
    }
  }

  return (configurations) => {
    let changed = false;
    configurations.forEach((configuration, g) => {
      if (current[g] === configuration) return;
      current[g] = configuration;
      changed = true;
      const { conductance, power } = valuesOf(configuration);
      putBlock(conductance, inForce.conductance, g);
      putBlock(power, inForce.power, g);
    });
    if (changed) system.configure(inForce);
  };
}

/** [K] parts x draws of one group. */
export function blockOf(state: Float64Array, g: number, { parts, members, draws }: Groups): Float64Array {
  const block = new Float64Array(parts.length * draws);
  for (let i = 0; i < parts.length; i++) {
    const at = i * members + g * draws;
    block.set(state.subarray(at, at + draws), i * draws);
  }
  return block;
}

/** The middle aircraft alone. */
export function middleOf(block: Float64Array, { parts, draws }: Groups): Float64Array {
  return Float64Array.from(parts, (_, i) => block[i * draws]!);
}

/** The drawn members alone. */
export function withoutMiddle(block: Float64Array, { parts, draws }: Groups): Float64Array {
  if (draws === 1) return block;
  const out = new Float64Array(parts.length * (draws - 1));
  for (let i = 0; i < parts.length; i++)
    out.set(block.subarray(i * draws + 1, (i + 1) * draws), i * (draws - 1));
  return out;
}
