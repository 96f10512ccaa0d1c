import { createRowMemory, type RowLayout } from "../numerics/index.js";
import type { CompiledNetwork } from "./compiled-network.js";
import { rowsAt } from "./places.js";

/** The numbers of the system that the workspace holds at present, by what they are. */
export interface WorkspaceRows {
  readonly temp: Float64Array;
  readonly rate: Float64Array;
  readonly net: Float64Array;
  readonly inputsAtStart: Float64Array;
  readonly conductance: Float64Array;
  readonly inForce: Float64Array;
  readonly flow: Float64Array;
  readonly inverse: Float64Array;
  readonly result: Float64Array;
  readonly jacobian: Float64Array;
}

/** What all systems compute in, one at a time. */
export const workspace = createRowMemory();

/** The system whose numbers stand in the workspace. */
let current: RowLayout | undefined;

export function isCurrent(lists: RowLayout): boolean {
  return current === lists;
}

/** Gives the workspace to a system, known by its lists. */
export function giveWorkspaceTo(lists: RowLayout): void {
  current = lists;
  workspace.install(lists);
}

/** Where a system finds its numbers: to be asked for again whenever it was brought in, as the memory may have grown. */
export function workspaceRows({ network, layout, places, members }: CompiledNetwork): WorkspaceRows {
  const take = (place: number, count: number) => rowsAt(workspace, place, count * members);
  const { parts, inputs, links } = network;
  const all = parts.length + inputs.length;
  return {
    temp: take(places.temp(0), all),
    rate: take(places.rate(0), all),
    net: take(places.net(0), all),
    inputsAtStart: take(places.inputAtStart(0), inputs.length),
    conductance: take(places.conductance(0), links.length),
    inForce: take(places.inForce(0), links.length),
    flow: take(places.flow(0), links.length),
    inverse: take(places.inverse(0), parts.length),
    result: take(places.result(0), parts.length),
    jacobian: take(places.jacobian(0), layout.pattern.column.length),
  };
}
