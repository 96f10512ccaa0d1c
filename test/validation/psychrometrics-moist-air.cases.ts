import {
  densityMoistAir,
  enthalpyMoistAir,
  humidityRatio,
  humidityRatioFromWetBulb,
  humidityRatioSaturated,
  relativeHumidityOverLiquid,
  specificVolumeMoistAir,
  tempDewPointFromVapourPressure,
  tempWetBulb,
  timeOfWetnessIso9223,
  vapourPressureFromHumidityRatio,
  vapourPressureFromRelativeHumidity,
  type WetnessRule,
} from "../../src/properties/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";
import { relative, type ValidationCase, type ValidationGroup } from "./case.js";

const TESTS = "ASHRAE Fundamentals 2017 ch. 1, as in psychrolib's tests";
const SEA_LEVEL = 101325;
const ENHANCEMENT = "the table includes the enhancement factor, up to 0.5 %, and its own rounding";
const SAME_EQUATIONS = "same equations in another program";

/** ASHRAE Example 1: dry bulb 40 °C, wet bulb 20 °C at sea level. */
const EXAMPLE_AIR = kelvinFromCelsius(40);
const exampleRatio = () => humidityRatioFromWetBulb(EXAMPLE_AIR, kelvinFromCelsius(20), SEA_LEVEL);
const exampleVapour = () => vapourPressureFromHumidityRatio(exampleRatio(), SEA_LEVEL);
const WARM = kelvinFromCelsius(30);

export const MOIST_AIR_VALIDATION: ValidationGroup = {
  title: "moist air",
  cases: [
    ...(
      [
        [-50, 2.43e-5, 0.01],
        [-20, 6.373e-4, 0.01],
        [-5, 2.4863e-3, 0.005],
        [5, 5.425e-3, 0.005],
        [25, 2.0173e-2, 0.005],
        [50, 8.6863e-2, 0.01],
      ] as const
    ).map(([t, w, fraction]) =>
      published(
        `saturated humidity ratio at ${t} °C`,
        `${TESTS}, Table 2`,
        "kg/kg",
        w,
        fraction * w,
        ENHANCEMENT,
        () => humidityRatioSaturated(kelvinFromCelsius(t), SEA_LEVEL),
      ),
    ),
    ...(
      [
        [-50, -50.222, 0.01],
        [-20, -18.542, 0.01],
        [-5, 1.164, 0.03],
        [5, 18.639, 0.01],
        [25, 76.504, 0.01],
      ] as const
    ).map(([t, h, fraction]) =>
      published(
        `saturated enthalpy at ${t} °C`,
        `${TESTS}, Table 2`,
        "kJ/kg",
        h,
        relative(h, fraction),
        ENHANCEMENT,
        () => {
          const temp = kelvinFromCelsius(t);
          return enthalpyMoistAir(temp, humidityRatioSaturated(temp, SEA_LEVEL)) / 1000;
        },
      ),
    ),
    example("humidity ratio", "kg/kg", 0.0065, 1e-4, exampleRatio),
    example(
      "dew point",
      "°C",
      7,
      0.5,
      () => tempDewPointFromVapourPressure(exampleVapour()) - kelvinFromCelsius(0),
    ),
    example(
      "relative humidity",
      "%",
      14,
      1,
      () => 100 * relativeHumidityOverLiquid(exampleVapour(), EXAMPLE_AIR),
    ),
    example("enthalpy", "kJ/kg", 56.7, 0.1, () => enthalpyMoistAir(EXAMPLE_AIR, exampleRatio()) / 1000),
    example("specific volume", "m3/kg", 0.896, 0.009, () =>
      specificVolumeMoistAir(EXAMPLE_AIR, exampleRatio(), SEA_LEVEL),
    ),
    same("humidity ratio of 3169.7 Pa in 95461 Pa", "kg/kg", 0.0213603998047487, 1e-6, () =>
      humidityRatio(3169.7, 95461),
    ),
    same("humidity ratio of 30 °C, wet bulb 25 °C, 95461 Pa", "kg/kg", 0.0192281274241096, 3e-4, () =>
      humidityRatioFromWetBulb(WARM, kelvinFromCelsius(25), 95461),
    ),
    same("humidity ratio of -1 °C, ice bulb -5 °C, 95461 Pa", "kg/kg", 0.00120399819933844, 3e-4, () =>
      humidityRatioFromWetBulb(kelvinFromCelsius(-1), kelvinFromCelsius(-5), 95461),
    ),
    published("wet bulb of 7 °C, 61 %, 100 kPa", TESTS, "°C", 3.92667433781955, 1e-3, SAME_EQUATIONS, () => {
      const air = kelvinFromCelsius(7);
      const ratio = humidityRatio(vapourPressureFromRelativeHumidity(0.61, air), 1e5);
      return tempWetBulb(air, ratio, 1e5) - kelvinFromCelsius(0);
    }),
    same("enthalpy of 30 °C, W 0.02", "J/kg", 81316, 3e-4, () => enthalpyMoistAir(WARM, 0.02)),
    same("specific volume of 30 °C, W 0.02, 95461 Pa", "m3/kg", 0.940855374352943, 3e-4, () =>
      specificVolumeMoistAir(WARM, 0.02, 95461),
    ),
    same("density of 30 °C, W 0.02, 95461 Pa", "kg/m3", 1.08411986348219, 3e-4, () =>
      densityMoistAir(WARM, 0.02, 95461),
    ),
    same("enthalpy of dry air at 25 °C", "J/kg", 25148, 3e-4, () =>
      enthalpyMoistAir(kelvinFromCelsius(25), 0),
    ),
    same("specific volume of dry air at 25 °C", "m3/kg", 0.8443, 1e-3, () =>
      specificVolumeMoistAir(kelvinFromCelsius(25), 0, SEA_LEVEL),
    ),
    wetness("above", 2),
    wetness("at-least", 3),
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

function example(
  what: string,
  unit: string,
  expected: number,
  tolerance: number,
  got: () => number,
): ValidationCase {
  const name = `${what} of 40 °C, wet bulb 20 °C`;
  return published(
    name,
    `${TESTS}, Example 1`,
    unit,
    expected,
    tolerance,
    "read from a chart in the example",
    got,
  );
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

function wetness(rule: WetnessRule, expected: number): ValidationCase {
  const samples = [
    [1, 0.81],
    [1, 0.8],
    [0, 0.95],
    [-1, 0.95],
    [5, 0.79],
    [5, 0.9],
  ] as const;
  return {
    name: `time of wetness of six hours around the limits, RH ${rule} 80 %`,
    source: "ISO 9223 rule as stated by Norberg, ACS Symposium Series 805 (2002), counted by hand",
    mark: "computed from the published formula",
    unit: "h",
    expected,
    tolerance: 0,
    toleranceReason: "a count",
    got: () =>
      timeOfWetnessIso9223(
        samples.map(([t]) => kelvinFromCelsius(t)),
        samples.map(([, rh]) => rh),
        SECONDS_OF_HOUR,
        rule,
      ) / SECONDS_OF_HOUR,
  };
}
