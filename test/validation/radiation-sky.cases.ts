import {
  blackBodyTemperature,
  cloudFactorWalton,
  infraredDown,
  skyEmissivityBerdahlMartin,
  skyEmissivityClarkAllen,
  skyEmissivityLi,
  skyTemperature,
  skyTemperatureSwinbank,
} from "../../src/properties/index.js";
import { celsiusFromKelvin, kelvinFromCelsius } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const ENERGYPLUS = "EnergyPlus Auxiliary Programs and Engineering Reference, horizontal infrared radiation";
const APART = "formula evaluated apart";
const LAST_DIGIT = "half the last digit printed";

/** [°C] dew point, emissivity by Berdahl and Martin 1984, Li et al. 2017, Clark and Allen 1978. */
const EMISSIVITIES = [
  [-30, 0.6087, 0.65795, 0.69811],
  [-20, 0.6282, 0.6788, 0.72891],
  [-10, 0.6623, 0.71215, 0.75851],
  [0, 0.711, 0.758, 0.787],
  [10, 0.7743, 0.81635, 0.81447],
  [20, 0.8522, 0.8872, 0.84099],
] as const;

export const RADIATION_SKY_VALIDATION: ValidationGroup = {
  title: "sky",
  cases: [
    {
      name: "sky emissivity, dew point 283 K, clear (Clark-Allen)",
      source: ENERGYPLUS,
      mark: "published",
      unit: "-",
      expected: 0.815,
      tolerance: 0.001,
      toleranceReason: "the example prints 0.815 for 0.8145",
      got: () => skyEmissivityClarkAllen(283),
    },
    {
      name: "long-wave flux from a clear sky, air 293 K, dew point 283 K",
      source: ENERGYPLUS,
      mark: "published",
      unit: "W/m2",
      expected: 340.6,
      tolerance: 0.3,
      toleranceReason: "the example goes on with emissivity rounded to 0.815 and an older constant",
      got: () => infraredDown(skyEmissivityClarkAllen(283), 293),
    },
    {
      name: "sky temperature of 288 W/m2",
      source: `EnergyPlus Engineering Reference, ${APART} with sigma 5.6697e-8`,
      mark: "computed from the published formula",
      unit: "°C",
      expected: -6.18268,
      tolerance: 0.009,
      toleranceReason: "the constant of 1986 against that of 2018: 0.008 K",
      got: () => celsiusFromKelvin(blackBodyTemperature(288)),
    },
    {
      name: "sky temperature, air 293 K, dew point 283 K, clear",
      source: `${ENERGYPLUS}: 340.6 W/m2 as a temperature`,
      mark: "published",
      unit: "K",
      expected: 278.4,
      tolerance: 0.1,
      toleranceReason: "0.3 W/m2 of the example is 0.06 K",
      got: () => skyTemperature(293, 283, 0),
    },
    ...(
      [
        [0, 1],
        [2, 1.03304],
        [5, 1.0595],
        [8, 1.09856],
        [10, 1.154],
      ] as const
    ).map(
      ([tenths, expected]): ValidationCase => ({
        name: `cloud factor at ${tenths} tenths`,
        source: `EnergyPlus Engineering Reference, ${APART}`,
        mark: "computed from the published formula",
        unit: "-",
        expected,
        tolerance: 1e-9,
        toleranceReason: "exact decimal fractions",
        got: () => cloudFactorWalton(tenths / 10),
      }),
    ),
    ...(
      [
        [233.15, 196.513417],
        [253.15, 222.334048],
        [273.15, 249.195896],
        [293.15, 277.06006],
      ] as const
    ).map(
      ([tempAir, expected]): ValidationCase => ({
        name: `clear-sky temperature in air of ${tempAir} K (Swinbank)`,
        source: `Swinbank 1963, ${APART}`,
        mark: "computed from the published formula",
        unit: "K",
        expected,
        tolerance: 2e-6,
        toleranceReason: "two of the last digit printed",
        got: () => skyTemperatureSwinbank(tempAir),
      }),
    ),
    ...EMISSIVITIES.flatMap(([dewPoint, berdahlMartin, li, clarkAllen]): ValidationCase[] => {
      const temp = kelvinFromCelsius(dewPoint);
      return [
        emissivity(dewPoint, "Berdahl and Martin 1984", berdahlMartin, 0.6e-4, LAST_DIGIT, () =>
          skyEmissivityBerdahlMartin(temp),
        ),
        emissivity(dewPoint, "Li et al. 2017", li, 0.6e-5, LAST_DIGIT, () => skyEmissivityLi(temp)),
        emissivity(
          dewPoint,
          "Clark and Allen 1978",
          clarkAllen,
          5e-4,
          "made with 273.15 K in the logarithm, where the published form has 273: 0.0004",
          () => skyEmissivityClarkAllen(temp),
        ),
      ];
    }),
  ],
};

function emissivity(
  dewPoint: number,
  source: string,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  return {
    name: `clear-sky emissivity at dew point ${dewPoint} °C`,
    source: `${source}, ${APART}`,
    mark: "computed from the published formula",
    unit: "-",
    expected,
    tolerance,
    toleranceReason,
    got,
  };
}
