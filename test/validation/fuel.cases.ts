import {
  densityAvgas,
  exhaustWaterFraction,
  HYDROGEN_CARBON_RATIO,
  PRESSURE_STANDARD,
  stoichiometricAirFuelRatio,
  stoichiometricVapourFraction,
  tempDewPointFromVapourPressure,
  waterOfCombustion,
} from "../../src/properties/index.js";
import { celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";
import type { Mark, ValidationCase, ValidationGroup } from "./case.js";

const CALCULATED: Mark = "computed from the published formula";
const BALANCE = "C-H balance, air 28.9647 with 20.95 % oxygen";
const DIGITS = "half the last digit printed";

export const FUEL_VALIDATION: ValidationGroup = {
  title: "fuel",
  cases: [
    of(
      "density of avgas at 15 °C",
      "CAN 2-3.25-M82 in a public article on avgas",
      "published",
      "kg/m3",
      721,
      0.5,
      DIGITS,
      () => densityAvgas(kelvinFromCelsius(15)),
    ),
    of(
      "density of avgas at -40 °C",
      "CAN 2-3.25-M82 in a public article on avgas",
      "published",
      "kg/m3",
      769,
      0.5,
      DIGITS,
      () => densityAvgas(kelvinFromCelsius(-40)),
    ),
    of(
      "change of avgas density",
      "public article on avgas: about -0.1 % per K",
      "published",
      "%/K",
      -0.1,
      0.05,
      "one digit printed",
      () => 100 * (densityAvgas(kelvinFromCelsius(16)) / densityAvgas(kelvinFromCelsius(15)) - 1),
    ),
    airFuel("octane", 18 / 8, 15.13),
    airFuel("heptane", 16 / 7, 15.18),
    airFuel("gasoline CH1.87", HYDROGEN_CARBON_RATIO.gasoline, 14.6),
    airFuel("CH2", 2, 14.78),
    airFuel("avgas CH2.1", HYDROGEN_CARBON_RATIO.avgas, 14.92),
    of(
      "oxygen for heptane",
      "stason.org gasoline FAQ 4.9",
      "published",
      "kg/kg",
      3.513,
      0.001,
      "atomic weights",
      () => stoichiometricAirFuelRatio(16 / 7) * ((0.2095 * 31.998) / 28.9647),
    ),
    of(
      "stoichiometric vapour of octane",
      BALANCE,
      CALCULATED,
      "% vol",
      1.648,
      0.0006,
      DIGITS,
      () => 100 * stoichiometricVapourFraction(HYDROGEN_CARBON_RATIO.isooctane, 8),
    ),
    of(
      "water from burning avgas",
      "stoichiometry: 1.3 to 1.4",
      "from memory",
      "kg/kg",
      1.35,
      0.05,
      "span given",
      () => waterOfCombustion(HYDROGEN_CARBON_RATIO.avgas),
    ),
    of(
      "dew point of exhaust",
      "stoichiometry: about 50 °C",
      "from memory",
      "°C",
      50,
      4,
      "given as about 50",
      () =>
        celsiusFromKelvin(
          tempDewPointFromVapourPressure(
            PRESSURE_STANDARD * exhaustWaterFraction(HYDROGEN_CARBON_RATIO.avgas),
          ),
        ),
    ),
  ],
};

function airFuel(what: string, ratio: number, expected: number): ValidationCase {
  return of(`air to fuel, ${what}`, BALANCE, CALCULATED, "kg/kg", expected, 0.006, DIGITS, () =>
    stoichiometricAirFuelRatio(ratio),
  );
}

function of(
  name: string,
  source: string,
  mark: Mark,
  unit: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return { name, source, mark, unit, expected, tolerance, toleranceReason, got };
}
