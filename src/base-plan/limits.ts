import type { Heater } from "../aircraft/index.js";
import { PLUG_IN_STEP, type PlugInGrid, plugInGrid, timeOf } from "../response/index.js";

// What a base has to share out, and what stands in the way. Times are [s] since the scenario's start.

export interface BaseLimits {
  readonly circuits: readonly Circuit[];
  readonly carts: readonly Cart[];
  /** Undefined: no hangar. */
  readonly hangar: Hangar | undefined;
  /** When somebody of the base is there; undefined: always, as many as needed. */
  readonly people: readonly Presence[] | undefined;
}

export interface Circuit {
  readonly id: string;
  readonly name: string;
  /** [A] at which its breaker trips or its generator is full. */
  readonly breaker: number;
  /** [A] that may be planned on it. */
  readonly currentMost: number;
  /** [V] */
  readonly voltage: number;
  readonly outlets: number;
  /** Runs only while somebody has started it: plugging in needs a person even through a switch. */
  readonly generator: boolean;
  /** When it may run; undefined: always. */
  readonly available: readonly { readonly from: number; readonly to: number }[] | undefined;
}

/** A heater that goes from aircraft to aircraft. */
export interface Cart {
  readonly id: string;
  readonly heater: Heater;
  /** How many of them there are. */
  readonly count: number;
  /** [s] from one aircraft to the next. */
  readonly moveTime: number;
}

export interface Hangar {
  readonly bays: number;
  /** [s] to move one aircraft in or out. */
  readonly moveTime: number;
  /** People it takes. */
  readonly movePeople: number;
}

export interface Presence {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/** Steps of the plan: step k runs from `origin + k * width` for `width` [s]; the start lies in step 0. */
export interface Grid extends PlugInGrid {
  readonly steps: number;
}

/** [s] every other step of the plan of one aircraft: what shares outlets and people is told to ten minutes. */
const GRID_WIDTH = 2 * PLUG_IN_STEP;

export function gridOf(start: number, duration: number, width = GRID_WIDTH): Grid {
  const grid = plugInGrid(start, width);
  return { ...grid, steps: Math.ceil((duration - grid.origin) / width) };
}

export { stepAt, stepFrom, timeOf } from "../response/index.js";

/** What a resource can carry in a step: [A], outlets, bays, carts or people. */
export function capacityOf(limits: BaseLimits, grid: Grid, resource: Resource, step: number): number {
  const from = timeOf(grid, step);
  const to = grid.origin + (step + 1) * grid.width;
  switch (resource.of) {
    case "current": {
      const circuit = limits.circuits[resource.index];
      const runs =
        circuit.available === undefined || circuit.available.some((w) => w.from <= from && w.to >= to);
      return runs ? Math.floor(1000 * circuit.currentMost + 1e-6) / 1000 : 0;
    }
    case "outlet":
      return limits.circuits[resource.index].outlets;
    case "bay":
      return limits.hangar?.bays ?? 0;
    case "cart":
      return limits.carts[resource.index].count;
    case "people":
      return peopleIn(limits, grid, step);
  }
}

/** People who are there for the whole of a step. */
export function peopleIn({ people }: BaseLimits, grid: Grid, step: number): number {
  if (people === undefined) return Number.POSITIVE_INFINITY;
  const from = timeOf(grid, step);
  const to = grid.origin + (step + 1) * grid.width;
  return people.filter((p) => p.from <= from && p.to >= to).reduce((sum, p) => sum + p.count, 0);
}

/** Something that can be in use by so many at a time. */
export interface Resource {
  readonly of: "current" | "outlet" | "bay" | "cart" | "people";
  /** Of the circuit or the cart; 0 where there is only one. */
  readonly index: number;
}

export function resourceKey({ of, index }: Resource): string {
  return `${of}:${index}`;
}
