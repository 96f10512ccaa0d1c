import { areaInSeries, GRAVITY_STANDARD, stackFlow } from "../properties/index.js";
import type { Configuration } from "./configuration.js";
import type { Cowl } from "./description.js";
import { AIR_HEAT_PER_VOLUME } from "./heater-network.js";
import type { Cover, Kit } from "./kit.js";

/** Free openings [m2] of the cowl with what is fitted. */
export interface Openings {
  readonly inlet: number;
  readonly outlet: number;
}

export function coversFitted(kit: Kit, { coversOn }: Configuration): Cover[] {
  return kit.covers.filter((cover) => coversOn.has(cover.id));
}

export function cowlOpenings(cowl: Cowl, kit: Kit, configuration: Configuration): Openings {
  const covers = coversFitted(kit, configuration);
  return {
    inlet: cowl.inlet_area_m2 * Math.min(1, ...covers.map((c) => c.inlet_left)),
    outlet: cowl.outlet_area_m2 * Math.min(1, ...covers.map((c) => c.outlet_left)),
  };
}

/** Where the ventilation law of the network is anchored; it carries the √ΔT on. */
const REFERENCE_DIFFERENCE = 10;
const REFERENCE_TEMP = 273.15;

/** Conductance [W/K] of stack ventilation at 10 K, through two openings in series: ρ c_p Q. */
export function ventilationConductance(cowl: Cowl, { inlet, outlet }: Openings): number {
  const area = areaInSeries(inlet, outlet);
  return AIR_HEAT_PER_VOLUME * stackFlow(area, cowl.stack_height_m, REFERENCE_DIFFERENCE, REFERENCE_TEMP);
}

/**
 * Wind pressure between inlets and outlet as the temperature difference [K] with the same stack pressure:
 * ½ρ ΔC_p V² = ρ g H ΔT/T. ΔC_p is averaged over wind directions; nose-on it is about twice as much.
 */
export function windDraught(cowl: Cowl, windSpeed: number, tempAir: number): number {
  return (PRESSURE_DIFFERENCE * windSpeed ** 2 * tempAir) / (2 * GRAVITY_STANDARD * cowl.stack_height_m);
}

/** ΔC_p [1] between front inlets and bottom outlet, mean over directions; project judgement. */
const PRESSURE_DIFFERENCE = 0.2;
