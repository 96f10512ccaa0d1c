import { PARTS_OF_KEY } from "../documents/index.js";
import type { PartEstimate } from "../learning/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import type { InitialSection } from "./facts.js";

/** The engine proper, whose bands give the doubt of the start. */
const ENGINE = ["sump", "oil", "crankcase", "crankshaft", "barrels", "heads_front", "heads_rear"];
/** Half width of the 90 % band of a normal distribution, in standard deviations. */
const NINETY_PERCENT = 1.6448536269514722;
/** [K] most that a start may be in doubt by. */
const MOST_DOUBT = 30;

/**
 * Initial temperatures of a scenario that begins where an estimate stands: each part at its middle value, front and
 * rear heads at the colder of the two, and one doubt for all of them, the root mean square over the engine's parts.
 * Heater elements, which documents do not name, begin as the air under the cowl.
 */
export function initialFrom(estimate: readonly PartEstimate[]): InitialSection {
  const parts = new Map(estimate.map((one) => [one.part, one]));
  const initial: InitialSection = {};
  for (const [key, names] of Object.entries(PARTS_OF_KEY)) {
    const mids = names.flatMap((name) => parts.get(name)?.mid ?? []);
    if (mids.length > 0) initial[key as keyof typeof PARTS_OF_KEY] = celsius(Math.min(...mids));
  }
  const air = parts.get("cowl_air");
  if (air !== undefined) initial.all_c = celsius(air.mid);
  const squares = ENGINE.flatMap((name) => {
    const band = parts.get(name);
    return band === undefined ? [] : ((band.high - band.low) / 2 / NINETY_PERCENT) ** 2;
  });
  if (squares.length > 0) {
    const mean = squares.reduce((sum, square) => sum + square, 0) / squares.length;
    initial.uncertainty_k = Math.min(MOST_DOUBT, Math.round(100 * Math.sqrt(mean)) / 100);
  }
  return initial;
}

/** [°C] to a hundredth, within what documents take of metal and oil. */
function celsius(temp: number): number {
  return Math.min(250, Math.max(-90, Math.round(100 * celsiusFromKelvin(temp)) / 100));
}
