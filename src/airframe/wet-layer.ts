import { LATENT_HEAT_FUSION, latentHeatVaporisation, TEMP_TRIPLE_POINT_WATER } from "../properties/index.js";
import { KELVIN_OF_ZERO_CELSIUS } from "../units/index.js";
import { saturationPressureAtSurface } from "./saturation.js";

// Ice and water that lie on one face, at one temperature with the skin under them. Masses [kg/m2]. Enthalpy is counted
// from water at 0 °C; vapour at T carries L_v + c_w (T - T0), so every balance here closes exactly.

/** [J/(kg K)] of water at 0 °C (IAPWS-95, from memory) and of ice at 0 °C (IAPWS R10-06, Table 6). */
export const HEAT_CAPACITY_WATER = 4219;
const HEAT_CAPACITY_ICE = 2097;
/** [J/kg] at 0 °C. */
export const LATENT_HEAT_VAPORISATION = latentHeatVaporisation(TEMP_TRIPLE_POINT_WATER);

/**
 * [W/(m2 K)] heat that melting or freezing takes up per kelvin off 0 °C: stands for the thin layer between the skin and
 * the melting front, and is large so that wet ice stays within about 0.1 K of 0 °C. Project judgement.
 */
const FRONT_COEFFICIENT = 2000;
/** [kg/m2] below which a film breaks up and its loss slows down; 1 µm of water. Project judgement. */
const BROKEN_FILM = 0.001;
/** [K] half width of the change from frost to dew about 0 °C. */
const FROST_TO_DEW = 0.05;

/** What happens to a layer; filled in place. */
export interface LayerRates {
  /** [kg/(m2 s)] ice to water, negative when water freezes. */
  melting: number;
  /** [kg/(m2 s)] from the air onto the ice and into the water, negative when they lose vapour. */
  vapourToIce: number;
  vapourToWater: number;
  /** [W/m2] heat set free in the layer by all of it. */
  heat: number;
}

export function newLayerRates(): LayerRates {
  return { melting: 0, vapourToIce: 0, vapourToWater: 0, heat: 0 };
}

/**
 * Phase change of a layer at `temp` [K] with `ice` and `water` [kg/m2] under air of `pressureVapour` [Pa]; vapour moves
 * with `evaporation` [kg/(m2 s Pa)]: j = evaporation (p_air - p_sat(T)), over ice below 0 °C. A bare face collects frost or
 * dew, and gives off no more than lies on it.
 */
export function writeLayerRates(
  temp: number,
  ice: number,
  water: number,
  pressureVapour: number,
  evaporation: number,
  out: LayerRates,
): void {
  const excess = temp - KELVIN_OF_ZERO_CELSIUS;
  const someIce = Math.max(0, ice);
  const someWater = Math.max(0, water);
  // A mass that a step left a little below zero is drawn back up.
  const source = excess > 0 ? ice : water;
  const fusion = LATENT_HEAT_FUSION + (HEAT_CAPACITY_WATER - HEAT_CAPACITY_ICE) * excess;
  out.melting =
    (FRONT_COEFFICIENT / LATENT_HEAT_FUSION) * excess * (source / (Math.max(0, source) + BROKEN_FILM));

  const flux = evaporation * (pressureVapour - saturationPressureAtSurface(temp));
  if (flux > 0) {
    const frost = Math.min(1, Math.max(0, 0.5 - excess / (2 * FROST_TO_DEW)));
    out.vapourToIce = flux * frost;
    out.vapourToWater = flux * (1 - frost);
  } else {
    const perMass = flux / (someIce + someWater + BROKEN_FILM);
    out.vapourToIce = perMass * ice;
    out.vapourToWater = perMass * water;
  }
  out.heat =
    LATENT_HEAT_VAPORISATION * (out.vapourToIce + out.vapourToWater) +
    fusion * (out.vapourToIce - out.melting);
}

/** [J/(m2 K)] heat capacity of what lies on the face. */
export function layerHeatCapacity(ice: number, water: number): number {
  return HEAT_CAPACITY_ICE * Math.max(0, ice) + HEAT_CAPACITY_WATER * Math.max(0, water);
}

/** [J/m2] enthalpy of a face of heat capacity `bare` [J/(m2 K)] with its layer at `temp` [K]. */
export function faceEnthalpy(temp: number, ice: number, water: number, bare: number): number {
  const excess = temp - KELVIN_OF_ZERO_CELSIUS;
  return (
    bare * excess +
    ice * (HEAT_CAPACITY_ICE * excess - LATENT_HEAT_FUSION) +
    water * HEAT_CAPACITY_WATER * excess
  );
}

/** [J/kg] enthalpy of water at `temp` [K], and of vapour that leaves or reaches a face at `temp`. */
export function waterEnthalpy(temp: number): number {
  return HEAT_CAPACITY_WATER * (temp - KELVIN_OF_ZERO_CELSIUS);
}
export function vapourEnthalpy(temp: number): number {
  return LATENT_HEAT_VAPORISATION + waterEnthalpy(temp);
}
