import { requireInside } from "../units/index.js";

// Complete combustion of a hydrocarbon CHy in air: CHy + (1 + y/4) O2 -> CO2 + y/2 H2O.

/** [kg/kmol] (IUPAC standard atomic weights, abridged; air as in ISO 2533). */
const CARBON = 12.011;
const HYDROGEN = 1.008;
const WATER = 18.015;
const AIR = 28.9647;
/** [1] mole fraction of oxygen in dry air. */
const OXYGEN_IN_AIR = 0.2095;

/** [1] hydrogen to carbon ratio of isooctane, of gasolines and of avgas (from memory of fuel analyses). */
export const HYDROGEN_CARBON_RATIO = { isooctane: 18 / 8, gasoline: 1.87, avgas: 2.1 } as const;

/**
 * [kg/kg] air to fuel for complete combustion of CHy, y = `hydrogenCarbonRatio` [1] between pure carbon 0 and methane 4.
 * @example stoichiometricAirFuelRatio(18 / 8) // 15.13 (isooctane)
 */
export function stoichiometricAirFuelRatio(hydrogenCarbonRatio: number): number {
  return (oxygen(hydrogenCarbonRatio) / OXYGEN_IN_AIR) * (AIR / massPerCarbon(hydrogenCarbonRatio));
}

/**
 * [1] volume fraction of fuel vapour in its stoichiometric mixture with dry air, for molecules of `carbons` carbon atoms.
 * @example stoichiometricVapourFraction(18 / 8, 8) // 0.01648 (isooctane)
 */
export function stoichiometricVapourFraction(hydrogenCarbonRatio: number, carbons: number): number {
  requireInside("carbons", carbons, 1, 20, "[1]");
  return 1 / (1 + (carbons * oxygen(hydrogenCarbonRatio)) / OXYGEN_IN_AIR);
}

/**
 * [kg/kg] water made per mass of fuel: what blow-by and exhaust carry into a cold engine.
 * @example waterOfCombustion(2.1) // 1.34
 */
export function waterOfCombustion(hydrogenCarbonRatio: number): number {
  return ((hydrogenCarbonRatio / 2) * WATER) / massPerCarbon(hydrogenCarbonRatio);
}

/**
 * [1] volume fraction of water in the exhaust of a stoichiometric mixture with dry air; times the pressure it is the
 * vapour pressure, hence the dew point of blow-by.
 * @example exhaustWaterFraction(2.1) // 0.135: dew point 52 °C at sea level
 */
export function exhaustWaterFraction(hydrogenCarbonRatio: number): number {
  const inert = oxygen(hydrogenCarbonRatio) * (1 / OXYGEN_IN_AIR - 1);
  const water = hydrogenCarbonRatio / 2;
  return water / (1 + water + inert);
}

/** [mol] oxygen per mol of carbon. */
function oxygen(hydrogenCarbonRatio: number): number {
  requireInside("hydrogenCarbonRatio", hydrogenCarbonRatio, 0, 4, "[1]");
  return 1 + hydrogenCarbonRatio / 4;
}

/** [g] fuel per mol of carbon. */
function massPerCarbon(hydrogenCarbonRatio: number): number {
  requireInside("hydrogenCarbonRatio", hydrogenCarbonRatio, 0, 4, "[1]");
  return CARBON + HYDROGEN * hydrogenCarbonRatio;
}
