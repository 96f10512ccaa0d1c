import { type RowLayout, type RowMemory, WORD } from "../numerics/index.js";
import type { Network } from "./network.js";

/** Where a system's numbers stand in the memory: places [byte] of rows, one number a member each. */
export interface Places {
  /** Temperatures of the parts, then the inputs. */
  temp(row: number): number;
  /** How fast the inputs change, by the same rows. */
  rate(row: number): number;
  /** Net heat into each part [W]; what goes into an input ends in that input's row, which nobody reads. */
  net(row: number): number;
  /** Inputs at the start of the stretch, by their number. */
  inputAtStart(input: number): number;
  /** Conductances of the configuration [W/K]. */
  conductance(link: number): number;
  /** Conductances in force [W/K], and their change in time where an input multiplies them. */
  inForce(link: number): number;
  inChange(link: number): number;
  /** Flows [W] and their slopes [W/K] by the two temperatures and the wind. */
  flow(link: number): number;
  byFrom(link: number): number;
  byTo(link: number): number;
  byWind(link: number): number;
  /** Reciprocal heat capacities [K/J]. */
  inverse(part: number): number;
  /** dT/dt or its change in time. */
  result(part: number): number;
  jacobian(nonzero: number): number;
}

export function placesOf(
  { parts, inputs, links }: Network,
  nonzeros: number,
  members: number,
  layout: RowLayout,
): Places {
  const rows = (count: number) => {
    const first = layout.take(count * members);
    return (row: number) => first + row * members * WORD;
  };
  const all = parts.length + inputs.length;
  return {
    temp: rows(all),
    rate: rows(all),
    net: rows(all),
    inputAtStart: rows(inputs.length),
    conductance: rows(links.length),
    inForce: rows(links.length),
    inChange: rows(links.length),
    flow: rows(links.length),
    byFrom: rows(links.length),
    byTo: rows(links.length),
    byWind: rows(links.length),
    inverse: rows(parts.length),
    result: rows(parts.length),
    jacobian: rows(nonzeros),
  };
}

/** Numbers of a memory from the place of a row on. */
export function rowsAt({ floats }: RowMemory, place: number, count: number): Float64Array {
  return floats.subarray(place / WORD, place / WORD + count);
}
