import { windChill } from "../../src/properties/index.js";
import { celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const DIGITS = "the last digit printed";

const WIND_CHILL_SEEN = [
  [-1, 10, -4.509267062],
  [-10, 60, -22.61986907],
  [-20, 20, -30.478945409],
  [-15, 2, -16.443],
  [-20, 5, -24.27850328],
] as const;

const WIND_CHILL_APART = [
  [-20, 30, -32.568],
  [-10, 20, -17.8606],
  [-25, 30, -39.0918],
  [-30, 40, -47.5041],
] as const;

export const ATMOSPHERE_WIND_CHILL_VALIDATION: ValidationGroup = {
  title: "wind chill",
  cases: [
    ...WIND_CHILL_SEEN.map(([celsius, kmh, expected]) =>
      chill(
        celsius,
        kmh,
        expected,
        "Environment Canada wind chill calculator, as in the tests of the xclim library",
        1e-8,
        true,
      ),
    ),
    ...WIND_CHILL_APART.map(([celsius, kmh, expected]) =>
      chill(celsius, kmh, expected, "2001 wind chill formula evaluated apart", 0.6e-4, false),
    ),
  ],
};

function chill(
  celsius: number,
  kmh: number,
  expected: number,
  source: string,
  tolerance: number,
  seen: boolean,
): ValidationCase {
  return {
    name: `wind chill at ${celsius} °C, ${kmh} km/h`,
    source,
    mark: seen ? "published" : "computed from the published formula",
    unit: "°C",
    expected,
    tolerance,
    toleranceReason: DIGITS,
    got: () => celsiusFromKelvin(windChill(kelvinFromCelsius(celsius), kmh / 3.6)),
  };
}
