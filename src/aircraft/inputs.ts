import { finConductanceInfinite, radiationCoefficient, windCoefficientIso6946 } from "../properties/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { Configuration } from "./configuration.js";
import { coversFitted, windDraught } from "./cowl.js";
import type { Installation } from "./description.js";
import { AIR_HEAT_PER_VOLUME } from "./heater-network.js";
import type { Kit } from "./kit.js";

/** Inputs of every installation network, in this order. */
export const INPUT_NAMES = [
  /** [K] */
  "outside_air",
  /** [K] air, sky and ground as the cowl's outer surface feels them together */
  "cowl_surroundings",
  /** [W/K] from the cowl skin, through a cover where there is one, to its surroundings */
  "skin_conductance",
  /** [W/K] from the hub, spinner and blades to the air */
  "hub_conductance",
  /** [K] wind pressure on the cowl's openings, as a stack temperature difference */
  "wind_draught",
  /** [K] hot air at the nozzle of a duct */
  "supply_air",
] as const;

/** The surroundings of the aircraft at one moment. */
export interface Surroundings {
  /** [K] */
  readonly tempAir: number;
  /** [m/s] at cowl height */
  readonly windSpeed: number;
  /** [K] apparent temperature of the sky, or of the hangar's walls and roof */
  readonly tempSky: number;
}

/** Share of what the cowl's surface sees that is sky; the rest is ground and snow near air temperature; project judgement. */
const SKY_SHARE = 0.5;

/** Writes the inputs at `out[i * stride + offset]`, i in the order of INPUT_NAMES. */
export function writeInputs(
  installation: Installation,
  kit: Kit,
  configuration: Configuration,
  { tempAir, windSpeed, tempSky }: Surroundings,
  out: Float64Array,
  stride = 1,
  offset = 0,
): void {
  const { cowl } = installation;
  const convection = windCoefficientIso6946(windSpeed);
  const radiation = radiationCoefficient(tempAir, tempSky, cowl.emissivity);
  const surface = convection + radiation;
  const inputs = [
    tempAir,
    tempAir + ((tempSky - tempAir) * SKY_SHARE * radiation) / surface,
    skinConductance(installation, kit, configuration, surface),
    hubConductance(installation, kit, configuration, convection),
    windDraught(cowl, windSpeed, tempAir),
    supplyTemperature(kit, configuration, tempAir),
  ];
  for (let i = 0; i < inputs.length; i++) out[i * stride + offset] = inputs[i];
}

/** Bare skin and covered skin side by side; a cover adds its resistance before the outer surface. */
function skinConductance(
  { cowl }: Installation,
  kit: Kit,
  configuration: Configuration,
  surface: number,
): number {
  let bare = 1;
  let covered = 0;
  for (const cover of coversFitted(kit, configuration)) {
    const share = Math.min(bare, cover.skin_share);
    covered += share / (cover.resistance_m2k_per_w + 1 / surface);
    bare -= share;
  }
  return cowl.skin_area_m2 * (bare * surface + covered);
}

/** Hub and spinner surface plus the blades as long fins. */
function hubConductance(
  { propeller }: Installation,
  kit: Kit,
  configuration: Configuration,
  convection: number,
): number {
  const { blades, blade_perimeter_m, blade_section_m2, blade_conductivity_w_per_m_k } = propeller;
  const fin = finConductanceInfinite(
    convection,
    blade_perimeter_m,
    blade_conductivity_w_per_m_k,
    blade_section_m2,
  );
  const left = Math.min(1, ...coversFitted(kit, configuration).map((c) => c.hub_left));
  return left * (convection * propeller.hub_area_m2 + blades * fin);
}

/** Air at the nozzle: outside air warmed by the burner or element, no hotter than its limit. */
function supplyTemperature(kit: Kit, { heatersOn }: Configuration, tempAir: number): number {
  for (const { id, duct } of kit.heaters) {
    if (duct === undefined || !heatersOn.has(id)) continue;
    const rise = duct.power_w / (duct.flow_m3_per_s * AIR_HEAT_PER_VOLUME);
    return Math.max(tempAir, Math.min(tempAir + rise, kelvinFromCelsius(duct.supply_max_c)));
  }
  return tempAir;
}

/** [W] the duct takes from its burner or element: what lifts the flow from outside air to the nozzle's temperature. */
export function ductPower(kit: Kit, configuration: Configuration, tempAir: number): number {
  const duct = kit.heaters.find((h) => h.duct !== undefined && configuration.heatersOn.has(h.id))?.duct;
  if (duct === undefined) return 0;
  return (
    duct.flow_m3_per_s * AIR_HEAT_PER_VOLUME * (supplyTemperature(kit, configuration, tempAir) - tempAir)
  );
}
