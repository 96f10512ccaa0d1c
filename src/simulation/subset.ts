import type { Draws } from "./draws.js";

/** The first `count` members of an ensemble, for a quick look. */
export function firstMembers(draws: Draws, count: number): Draws {
  if (count >= draws.members) return draws;
  const rows = (values: Float64Array) => {
    const out = new Float64Array((values.length / draws.members) * count);
    for (let k = 0, o = 0; k < values.length; k += draws.members, o += count) {
      out.set(values.subarray(k, k + count), o);
    }
    return out;
  };
  const { tempOffset, windFactor, cloudOffset } = draws.weather;
  return {
    members: count,
    multipliers: new Map([...draws.multipliers].map(([name, values]) => [name, values.slice(0, count)])),
    initialOffset: draws.initialOffset.slice(0, count),
    weather: {
      members: count,
      tempOffset: rows(tempOffset),
      windFactor: rows(windFactor),
      cloudOffset: rows(cloudOffset),
    },
  };
}
