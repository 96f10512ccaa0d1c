import { type Heater, heaterById } from "../index.js";
import type { BaseAircraft, HeaterSwitch } from "../logbook/index.js";

/** The heaters that a switch feeds, whole: of the aircraft's own description, or of the catalogue. */
export function heatersOf({ kit }: BaseAircraft, { heaters }: HeaterSwitch): Heater[] {
  return heaters.map((id) => {
    const own = kit.heaters.find((entry) => typeof entry !== "string" && entry.id === id);
    return own === undefined || typeof own === "string" ? heaterById(id) : (own as Heater);
  });
}

/** [W] what heaters take from the mains. */
export function wattsOf(heaters: readonly Heater[]): number {
  return heaters.reduce(
    (sum, { elements, duct }) =>
      sum + elements.reduce((watts, e) => watts + e.power_w, duct?.energy === "electric" ? duct.power_w : 0),
    0,
  );
}
