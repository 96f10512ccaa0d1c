import {
  type Configuration,
  INPUT_NAMES,
  type Installation,
  installationNetwork,
  type Kit,
} from "../aircraft/index.js";
import { type Draws, type Forcing, multipliersOf, spread } from "../simulation/index.js";
import {
  createThermalSystem,
  type MemberValues,
  type Network,
  type ThermalSystem,
} from "../thermal/index.js";

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

/** Weather around a group: common to all draws, or one for each. */
export interface Surrounding {
  readonly forcing: Forcing;
  readonly each: boolean;
}

export interface GroupsRequest {
  readonly installation: Installation;
  readonly kit: Kit;
  readonly groups: number;
  readonly draws: Draws;
}

/** Inputs kept: both ends of a stretch in the few configurations there are. */
const KEPT = 8;

export function createGroups({ installation, kit, groups, draws }: GroupsRequest): Groups {
  const { network, valuesIn } = installationNetwork(installation, kit);
  const each = draws.members;
  const members = groups * each;
  const factors = new Float64Array(network.parts.length * members);
  network.parts.forEach(({ parameter }, i) => {
    const names = parameter === undefined ? [] : [parameter];
    const own = multipliersOf(draws, names);
    for (let m = 0; m < members; m++) factors[i * members + m] = own[m % each]!;
  });
  const system = createThermalSystem(network, members, factors);
  const inForce: MemberValues = {
    conductance: new Float64Array(network.links.length * members),
    power: new Float64Array(network.sources.length * members),
  };
  const known = new Map<Configuration, MemberValues>();
  const current: (Configuration | undefined)[] = new Array(groups).fill(undefined);
  const left = new Float64Array(INPUT_NAMES.length * members);
  const right = new Float64Array(INPUT_NAMES.length * members);
  const drawn = new Float64Array(INPUT_NAMES.length * each);
  const lately: { forcing: Forcing; configuration: Configuration; t: number; inputs: Float64Array }[] = [];
  let next = 0;

  function valuesOf(configuration: Configuration): MemberValues {
    const found = known.get(configuration);
    if (found !== undefined) return found;
    const { conductance, power } = valuesIn(configuration);
    const made = {
      conductance: spread(draws, conductance, network.links),
      power: spread(draws, power, network.sources),
    };
    known.set(configuration, made);
    return made;
  }

  function configure(configurations: readonly Configuration[]): void {
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
  }

  /** Rows of one group's draws into its columns. */
  function putBlock(block: Float64Array, into: Float64Array, g: number): void {
    for (let row = 0; row * each < block.length; row++) {
      into.set(block.subarray(row * each, (row + 1) * each), row * members + g * each);
    }
  }

  function writeSide(
    configurations: readonly Configuration[],
    surroundings: readonly Surrounding[],
    t: number,
    out: Float64Array,
  ): void {
    configurations.forEach((configuration, g) => {
      const { forcing, each: perDraw } = surroundings[g]!;
      if (perDraw) forcing.write(configuration, t, drawn);
      const shared = perDraw ? undefined : inputsAt(forcing, configuration, t);
      for (let i = 0; i < INPUT_NAMES.length; i++) {
        const at = i * members + g * each;
        if (shared === undefined) out.set(drawn.subarray(i * each, (i + 1) * each), at);
        else out.fill(shared[i]!, at, at + each);
      }
    });
  }

  /** What is common to all draws is worked out once a time and configuration: groups share it, and so do neighbouring stretches. */
  function inputsAt(forcing: Forcing, configuration: Configuration, t: number): Float64Array {
    const known = lately.find(
      (one) => one.t === t && one.configuration === configuration && one.forcing === forcing,
    );
    if (known !== undefined) return known.inputs;
    const inputs = new Float64Array(INPUT_NAMES.length);
    forcing.write(configuration, t, inputs);
    lately[next] = { forcing, configuration, t, inputs };
    next = (next + 1) % KEPT;
    return inputs;
  }

  return {
    network,
    parts: network.parts.map(({ name }) => name),
    groups,
    draws: each,
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
      writeSide(configurations, surroundings, from, left);
      writeSide(configurations, surroundings, to, right);
      system.setInputs(from, to, left, right);
    },
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
