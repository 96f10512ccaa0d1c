import type { Draws } from "./draws.js";

/** The first `count` members of an ensemble, for a quick look. */
export function firstMembers(draws: Draws, count: number): Draws {
  if (count >= draws.members) return draws;
  return someMembers(
    draws,
    Int32Array.from({ length: count }, (_, m) => m),
  );
}

/** The members of an ensemble at some places, in the order given. */
export function someMembers(draws: Draws, chosen: Int32Array): Draws {
  const count = chosen.length;
  const rows = (values: Float64Array) => {
    const out = new Float64Array((values.length / draws.members) * count);
    for (let k = 0, o = 0; k < values.length; k += draws.members, o += count) {
      for (let i = 0; i < count; i++) out[o + i] = values[k + chosen[i]];
    }
    return out;
  };
  const { tempOffset, windFactor, cloudOffset } = draws.weather;
  return {
    members: count,
    multipliers: new Map([...draws.multipliers].map(([name, values]) => [name, rows(values)])),
    initialOffset: rows(draws.initialOffset),
    weather: {
      members: count,
      tempOffset: rows(tempOffset),
      windFactor: rows(windFactor),
      cloudOffset: rows(cloudOffset),
    },
  };
}
