import {
  evaporationFluxAshraePool,
  humidityRatio,
  latentHeatVaporisation,
  PRESSURE_STANDARD,
  saturationPressureOverLiquid,
  tempWetBulb,
  vapourPressureFromRelativeHumidity,
} from "../../src/properties/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const POOL = "ASHRAE pool equation at the adiabatic wet bulb, evaluated apart";

/** °C, relative humidity, then hours to dry 0.2 mm in air at rest, 0.5 and 2 m/s */
const FILM = [
  [10, 0.5, 5.2, 3.6, 1.9],
  [15, 0.5, 4.4, 3.0, 1.6],
  [20, 0.4, 3.0, 2.1, 1.1],
  [20, 0.6, 4.8, 3.3, 1.7],
] as const;

export const THAW_VALIDATION: ValidationGroup = {
  title: "melting and drying",
  part: "physics",
  cases: [
    ...FILM.flatMap(([t, rh, calmHours, slow, fast]) => [
      film(t, rh, 0, calmHours),
      film(t, rh, 0.5, slow),
      film(t, rh, 2, fast),
    ]),
  ],
};

function film(t: number, relativeHumidity: number, windSpeed: number, expected: number): ValidationCase {
  return {
    name: `drying of 0.2 mm water in ${t} °C, ${100 * relativeHumidity} %, ${windSpeed} m/s`,
    source: POOL,
    mark: "computed from the published formula",
    unit: "h",
    expected,
    tolerance: 0.05 + 0.025 * expected,
    toleranceReason:
      "half the last digit printed and 0.1 K of wet bulb; against nature the equation is good to a factor of 2",
    got: () => {
      const air = kelvinFromCelsius(t);
      const pressureVapour = vapourPressureFromRelativeHumidity(relativeHumidity, air);
      const bulb = tempWetBulb(air, humidityRatio(pressureVapour, PRESSURE_STANDARD), PRESSURE_STANDARD);
      const flux = evaporationFluxAshraePool(
        saturationPressureOverLiquid(bulb),
        pressureVapour,
        windSpeed,
        latentHeatVaporisation(bulb),
      );
      return 0.2 / flux / SECONDS_OF_HOUR;
    },
  };
}
