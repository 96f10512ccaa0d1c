import { type Configuration, ductPower, type Kit } from "../aircraft/index.js";
import { multipliersOf } from "../simulation/index.js";
import { powerLeft } from "../thermal/index.js";
import type { Surrounding } from "./group-inputs.js";
import type { Groups } from "./groups.js";

/** Power [W] that a kit's heaters take while they are on, member by member. */
export interface HeaterPower {
  /** Of the elements of draw d in group g, at all members' temperatures [K] from `temps[offset]` on. */
  elements(temps: Float64Array, offset: number, g: number, d: number): number;
  /** Of the duct's burner or element at `t` [s since the start]; 0 without one. */
  duct(t: number, { forcing, each }: Surrounding, d: number): number;
  readonly ductBurns: boolean;
}

/** @param heated the configuration with the heaters on */
export function heaterPower(groups: Groups, kit: Kit, heated: Configuration): HeaterPower {
  const { network, parts, members, draws, drawn } = groups;
  const { power } = groups.valuesOf(heated);
  const sources = network.sources.map(({ part, limiter }, s) => ({
    ...{ limiter, at: s * draws },
    senses: parts.indexOf(limiter?.senses ?? part) * members,
  }));
  const hasDuct = kit.heaters.some(({ duct }) => duct !== undefined);
  const drawnPower = multipliersOf(drawn, ["heater_power"]);
  return {
    ductBurns: kit.heaters.some(({ duct }) => duct?.energy === "fuel"),
    elements(temps, offset, g, d) {
      let sum = 0;
      for (const { limiter, at, senses } of sources)
        sum += powerLeft(limiter, power[at + d]!, temps[offset + senses + g * draws + d]!);
      return sum;
    },
    duct(t, { forcing, each }, d) {
      if (!hasDuct) return 0;
      return drawnPower[d]! * ductPower(kit, heated, forcing.tempAirAt(t, each ? d : 0));
    },
  };
}
