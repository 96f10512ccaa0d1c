import { pressureStandard, temperatureStandard } from "../../src/properties/index.js";
import { celsiusFromKelvin, METRES_OF_FOOT } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const ISO_APART = "ISO 2533:1975, formula evaluated apart";
const DIGITS = "the last digit printed";

/** pressure altitude [ft], temperature [°C], pressure [hPa] */
const PRESSURE_ALTITUDES = [
  [1000, 13.0188, 977.166],
  [2000, 11.0376, 942.129],
  [3000, 9.0564, 908.117],
  [5000, 5.094, 843.073],
  [8000, -0.8496, 752.624],
  [10000, -4.812, 696.817],
  [18000, -20.6616, 505.998],
  [20000, -24.624, 465.633],
] as const;

export const ATMOSPHERE_VALIDATION: ValidationGroup = {
  title: "atmosphere",
  part: "physics",
  cases: [
    iso("temperature at the top of the troposphere", "K", 216.65, 1e-9, () => temperatureStandard(11000)),
    iso("pressure at the top of the troposphere", "Pa", 22632.0, 0.1, () => pressureStandard(11000)),

    ...PRESSURE_ALTITUDES.flatMap(([feet, celsius, hectopascal]): ValidationCase[] => {
      const altitude = feet * METRES_OF_FOOT;
      const at = `at pressure altitude ${feet} ft`;
      return [
        iso(`temperature ${at}`, "°C", celsius, 0.6e-4, () =>
          celsiusFromKelvin(temperatureStandard(altitude)),
        ),
        iso(`pressure ${at}`, "hPa", hectopascal, 1e-3, () => pressureStandard(altitude) / 100),
      ];
    }),
    iso("freezing level", "K", 273.15, 1e-4, () => temperatureStandard(2307.69)),
  ],
};

function iso(
  name: string,
  unit: string,
  expected: number,
  tolerance: number,
  got: () => number,
): ValidationCase {
  const mark = "computed from the published formula";
  return { name, source: ISO_APART, mark, unit, expected, tolerance, toleranceReason: DIGITS, got };
}
