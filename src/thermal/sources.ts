import type { Layout } from "./layout.js";
import type { Network, Source } from "./network.js";

/** A source as offsets (rows, sources or nonzeros times members). */
export interface CompiledSource {
  readonly source: number;
  readonly part: number;
  readonly senses: number;
  readonly limiter: Source["limiter"];
  /** Jacobian entry (part, sensed part). */
  readonly entry: number;
}

export function compileSources(
  network: Network,
  { partIndex, nonzero }: Layout,
  members: number,
): CompiledSource[] {
  return network.sources.map(({ name, part, limiter }, index) => {
    const heated = partIndex.get(part);
    const senses = partIndex.get(limiter?.senses ?? part);
    if (heated === undefined || senses === undefined) throw new RangeError(`unknown part of source: ${name}`);
    return {
      source: index * members,
      part: heated * members,
      senses: senses * members,
      limiter,
      entry: nonzero(heated, senses) * members,
    };
  });
}

/** Adds each source's power, after its limiter, to its part's row of `net`. */
export function addPowers(
  sources: readonly CompiledSource[],
  members: number,
  power: Float64Array,
  temp: Float64Array,
  net: Float64Array,
): void {
  for (const { source, part, senses, limiter } of sources) {
    for (let m = 0; m < members; m++)
      net[part + m] += powerLeft(limiter, power[source + m], temp[senses + m]);
  }
}

/** Writes each source's power [W] (sources x members) after its limiter. */
export function writePowersLeft(
  sources: readonly CompiledSource[],
  members: number,
  power: Float64Array,
  temp: Float64Array,
  out: Float64Array,
): void {
  for (const { source, senses, limiter } of sources) {
    for (let m = 0; m < members; m++)
      out[source + m] = powerLeft(limiter, power[source + m], temp[senses + m]);
  }
}

/** Adds the slopes of the powers by the sensed temperatures to the Jacobian. */
export function addPowerSlopes(
  sources: readonly CompiledSource[],
  members: number,
  power: Float64Array,
  temp: Float64Array,
  inverseCapacity: Float64Array,
  jacobian: Float64Array,
): void {
  for (const { source, part, senses, limiter, entry } of sources) {
    if (limiter === undefined) continue;
    for (let m = 0; m < members; m++) {
      const full = power[source + m];
      if (full === 0) continue;
      const left = powerLeft(limiter, full, temp[senses + m]);
      jacobian[entry + m] -= (left * (1 - left / full) * inverseCapacity[part + m]) / limiter.width;
    }
  }
}

/** Power [W] of a source at the temperature it senses: a falling logistic around the set point, or all of it. */
export function powerLeft(limiter: Source["limiter"], full: number, sensed: number): number {
  if (limiter === undefined || full === 0) return full;
  return full / (1 + Math.exp((sensed - limiter.setPoint) / limiter.width));
}
