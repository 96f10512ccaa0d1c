import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { normalQuantile } from "./normal.js";

/** A stream of random numbers that is the same everywhere for the same seed. */
export interface Random {
  /** Strictly between 0 and 1. */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
  /** An independent stream of its own; the same name gives the same stream. */
  stream(name: string): Random;
}

export function createRandom(seed: number): Random {
  if (!Number.isInteger(seed)) throw new RangeError(`invalid seed: ${seed} (expected a whole number)`);
  const generator = xoroshiro128plus(hashed("seed", seed));
  // The generator's first outputs still show the mostly constant bits it is seeded with.
  for (let i = 0; i < WARM_UP; i++) uniformFloat64(generator);
  const uniform = () => {
    const u = uniformFloat64(generator);
    return u > 0 ? u : Number.MIN_VALUE;
  };
  return {
    uniform,
    normal: () => normalQuantile(uniform()),
    stream: (name) => createRandom(hashed(name, seed)),
  };
}

const WARM_UP = 16;

/** FNV-1a over the name's code units, started from the seed. */
function hashed(name: string, seed: number): number {
  let hash = 0x811c9dc5 ^ seed;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  return hash | 0;
}

/**
 * Latin hypercube sample of independent standard normals: in each dimension the members take one value from each of
 * `members` equally likely slices, in random order, so that means and chances settle with few members.
 * McKay, Beckman & Conover, Technometrics 21 (1979) 239-245.
 * @returns dimension d, member m at `[d * members + m]`
 */
export function latinHypercubeNormals(dimensions: number, members: number, random: Random): Float64Array {
  const sample = new Float64Array(dimensions * members);
  const order = new Int32Array(members);
  for (let d = 0; d < dimensions; d++) {
    for (let m = 0; m < members; m++) order[m] = m;
    for (let m = members - 1; m > 0; m--) {
      const other = Math.floor(random.uniform() * (m + 1));
      const kept = order[m];
      order[m] = order[other];
      order[other] = kept;
    }
    for (let m = 0; m < members; m++) {
      sample[d * members + m] = normalQuantile((order[m] + random.uniform()) / members);
    }
  }
  return sample;
}
