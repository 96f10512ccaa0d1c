import type { Heater } from "../aircraft/index.js";
import type { Block } from "../response/index.js";
import { type BaseLimits, type Grid, peopleIn, type Resource, stepAt, stepFrom } from "./limits.js";

/** What one aircraft would do. Times are [s] since the start. */
export interface Course {
  /** Index into the circuits; undefined when nothing is plugged in. */
  readonly circuit: number | undefined;
  /** Index into the carts; undefined: its own heaters alone. */
  readonly cart: number | undefined;
  readonly heaters: readonly string[];
  /** When the heaters are on, ascending. */
  readonly blocks: readonly Block[];
  /** In the hangar; undefined: on the ramp throughout. */
  readonly stay: Stay | undefined;
  /** Its plug is pulled as soon as somebody is there after each heating, not only before departure. */
  readonly givesUpOutlet: boolean;
}

/** `from` undefined: it stands inside at the start. Moving in begins at `from` and moving out at `to`. */
export interface Stay {
  readonly from: number | undefined;
  readonly to: number;
}

/** A course with what it brings. */
export interface Candidate extends Course {
  /** Of the least that makers ask for. */
  readonly chance: number;
  /** Below the wanted chance of that, or something would get too hot. */
  readonly missed: boolean;
  /** Below the wanted chance of being warm through. */
  readonly missesWarm: boolean;
  /** [s] heater hours and wet hours. */
  readonly harm: number;
  /** [J] */
  readonly energy: number;
}

/** What of an aircraft its demands hang on. */
export interface Holder {
  /** Switches through a timer or a switch: heat comes and goes with nobody there. */
  readonly switched: boolean;
  /** Circuit its plug is in at the start. */
  readonly connected: number | undefined;
  /** [s] when it is unplugged at the latest, by whoever flies it. */
  readonly unplug: number;
  /** [s] when it is pulled out of a hangar at the latest, by whoever flies it and who else it takes. */
  readonly exit: number;
  readonly heaters: ReadonlyMap<string, Heater>;
}

/** So much of a resource in each of the steps from `from` up to before `to`. */
export interface Demand {
  readonly resource: Resource;
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

/** Something a person does at a time [s]. */
export interface ManualTask {
  readonly at: number;
  readonly do: "plug-in" | "unplug" | "move-in" | "move-out";
  /** Done by whoever flies: nobody of the base is needed. */
  readonly byPilot: boolean;
}

/** [W] that a heater takes from its outlet: a burner's fan and glow are not in its data and count as nothing. */
export function electricPower({ elements, duct }: Heater): number {
  const blown = duct !== undefined && duct.energy === "electric" ? duct.power_w : 0;
  return elements.reduce((sum, e) => sum + e.power_w, blown);
}

/** [A] with everything on, rounded up to whole milliamperes, so that sums are exact to well below the solver's tolerance. */
export function currentOf({ heaters, circuit }: Course, holder: Holder, limits: BaseLimits): number {
  if (circuit === undefined) return 0;
  const power = heaters.reduce((sum, id) => sum + electricPower(heaterOf(holder, id)), 0);
  return Math.ceil((1000 * power) / limits.circuits[circuit].voltage - 1e-6) / 1000;
}

/** When its plug is in an outlet, ascending; empty when it never is. */
export function connectionsOf(course: Course, holder: Holder, limits: BaseLimits, grid: Grid): Block[] {
  const { blocks, circuit, givesUpOutlet } = course;
  const plugged = holder.connected;
  if (circuit === undefined || blocks.length === 0) {
    // What is plugged in at the start stays so until somebody comes.
    return plugged === undefined ? [] : [{ from: 0, to: nextPerson(0) }];
  }
  if (needsPerson(course, holder, limits)) return [...blocks];
  const last = blocks[blocks.length - 1].to;
  const heated = givesUpOutlet ? blocks : [{ from: blocks[0].from, to: last }];
  const connections: Block[] = [];
  heated.forEach((block, i) => {
    const from = i === 0 && plugged === circuit ? 0 : personBefore(block.from);
    const to = givesUpOutlet ? nextPerson(block.to) : holder.unplug;
    const before = connections.at(-1);
    if (before !== undefined && before.to >= from) connections[connections.length - 1] = { ...before, to };
    else connections.push({ from, to });
  });
  return connections;

  function nextPerson(t: number): number {
    for (let k = stepFrom(grid, t); k < stepAt(grid, holder.unplug); k++) {
      if (peopleIn(limits, grid, k) > 0) return Math.max(0, grid.origin + k * grid.width);
    }
    return holder.unplug;
  }

  /** The plug of a switched outlet goes in when somebody is last there; where nobody ever is, the demand shows it. */
  function personBefore(t: number): number {
    for (let k = stepAt(grid, t); k >= 0; k--) {
      const at = grid.origin + k * grid.width;
      if (at < 0) break;
      if (peopleIn(limits, grid, k) > 0) return at;
    }
    return t;
  }
}

/** Heat comes and goes by hand: without a switch, from a cart, or from a generator, which somebody must start. */
export function needsPerson({ circuit, cart }: Course, { switched }: Holder, limits: BaseLimits): boolean {
  return !switched || cart !== undefined || (circuit !== undefined && limits.circuits[circuit].generator);
}

/** What people do for a course, in order of time. */
export function manualTasksOf(course: Course, holder: Holder, limits: BaseLimits, grid: Grid): ManualTask[] {
  const tasks: ManualTask[] = [];
  const { blocks, stay } = course;
  const connections = connectionsOf(course, holder, limits, grid);
  // Whoever flies it makes it ready: unplugs it at the latest, and before pulling it out.
  const crewThere =
    stay !== undefined && stay.to >= holder.exit ? Math.min(stay.to, holder.unplug) : holder.unplug;
  // Without a plug it burns fuel: somebody lights it and puts it out.
  const spans = connections.length === 0 && course.heaters.length > 0 ? blocks : connections;
  spans.forEach(({ from, to }, i) => {
    const isIn = i === 0 && from === 0 && holder.connected !== undefined;
    if (!isIn) tasks.push({ at: from, do: "plug-in", byPilot: false });
    tasks.push({ at: to, do: "unplug", byPilot: to >= crewThere });
  });
  if (stay !== undefined) {
    if (stay.from !== undefined) tasks.push({ at: stay.from, do: "move-in", byPilot: false });
    tasks.push({ at: stay.to, do: "move-out", byPilot: stay.to >= holder.exit });
  }
  return tasks.sort((a, b) => a.at - b.at);
}

/** Everything a course takes of what the base shares. */
export function demandsOf(course: Course, holder: Holder, limits: BaseLimits, grid: Grid): Demand[] {
  const demands: Demand[] = [];
  const { circuit, cart, blocks, stay } = course;
  const take = (resource: Resource, from: number, to: number, amount: number) => {
    const first = Math.max(0, stepAt(grid, from));
    const last = Math.min(grid.steps, stepFrom(grid, to));
    if (last > first && amount > 0) demands.push({ resource, from: first, to: last, amount });
  };
  const current = currentOf(course, holder, limits);
  const connections = connectionsOf(course, holder, limits, grid);
  const index = circuit ?? holder.connected ?? 0;
  for (const { from, to } of connections) take({ of: "outlet", index }, from, to, 1);
  if (circuit !== undefined) {
    for (const { from, to } of blocks) take({ of: "current", index }, from, to, current);
  }
  if (cart !== undefined) {
    const { moveTime } = limits.carts[cart];
    for (const { from, to } of blocks) take({ of: "cart", index: cart }, from, to + moveTime, 1);
  }
  if (stay !== undefined) {
    const { moveTime } = requireHangar(limits);
    take({ of: "bay", index: 0 }, stay.from ?? 0, stay.to + moveTime, 1);
  }
  if (course.heaters.some((id) => heaterOf(holder, id).attended)) {
    for (const { from, to } of blocks) take({ of: "people", index: 0 }, from, to, 1);
  }
  for (const task of manualTasksOf(course, holder, limits, grid)) {
    const moving = task.do === "move-in" || task.do === "move-out";
    const duration = moving ? requireHangar(limits).moveTime : grid.width;
    const hands = (moving ? requireHangar(limits).movePeople : 1) - (task.byPilot ? 1 : 0);
    take({ of: "people", index: 0 }, task.at, task.at + Math.max(duration, 1), hands);
  }
  return demands;
}

function requireHangar({ hangar }: BaseLimits) {
  if (hangar === undefined) throw new RangeError("missing hangar: a course stays in one");
  return hangar;
}

function heaterOf({ heaters }: Holder, id: string): Heater {
  const heater = heaters.get(id);
  if (heater === undefined) throw new RangeError(`unknown heater: ${id}`);
  return heater;
}
