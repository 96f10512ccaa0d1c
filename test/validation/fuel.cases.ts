import { densityAvgas } from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import type { Mark, ValidationCase, ValidationGroup } from "./case.js";

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
  ],
};

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
