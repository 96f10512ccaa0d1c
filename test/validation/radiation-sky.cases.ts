import { cloudFactorWalton, skyEmissivityClarkAllen, skyTemperature } from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";

const ENERGYPLUS = "EnergyPlus Auxiliary Programs and Engineering Reference, horizontal infrared radiation";
const APART = "formula evaluated apart";

/** [°C] dew point, emissivity by Clark and Allen 1978. */
const EMISSIVITIES = [
  [-30, 0.69811],
  [-20, 0.72891],
  [-10, 0.75851],
  [0, 0.787],
  [10, 0.81447],
  [20, 0.84099],
] as const;

export const RADIATION_SKY_VALIDATION: ValidationGroup = {
  title: "sky",
  part: "physics",
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

    ...EMISSIVITIES.flatMap(([dewPoint, clarkAllen]): ValidationCase[] => {
      const temp = kelvinFromCelsius(dewPoint);
      return [
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
