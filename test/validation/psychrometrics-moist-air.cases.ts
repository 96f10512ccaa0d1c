import {
  humidityRatio,
  tempWetBulb,
  vapourPressureFromRelativeHumidity,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { relative, type ValidationCase, type ValidationGroup } from "./case.js";

const TESTS = "ASHRAE Fundamentals 2017 ch. 1, as in psychrolib's tests";
const SAME_EQUATIONS = "same equations in another program";

export const MOIST_AIR_VALIDATION: ValidationGroup = {
  title: "moist air",
  part: "physics",
  cases: [
    same("humidity ratio of 3169.7 Pa in 95461 Pa", "kg/kg", 0.0213603998047487, 1e-6, () =>
      humidityRatio(3169.7, 95461),
    ),

    published("wet bulb of 7 °C, 61 %, 100 kPa", TESTS, "°C", 3.92667433781955, 1e-3, SAME_EQUATIONS, () => {
      const air = kelvinFromCelsius(7);
      const ratio = humidityRatio(vapourPressureFromRelativeHumidity(0.61, air), 1e5);
      return tempWetBulb(air, ratio, 1e5) - kelvinFromCelsius(0);
    }),
  ],
};

function published(
  name: string,
  source: string,
  unit: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return { name, source, mark: "published", unit, expected, tolerance, toleranceReason, got };
}

function same(
  name: string,
  unit: string,
  expected: number,
  fraction: number,
  got: () => number,
): ValidationCase {
  return published(name, TESTS, unit, expected, relative(expected, fraction), SAME_EQUATIONS, got);
}
