import {
  convectionCoefficient,
  freeConvectionCoefficient,
  nusseltChurchillChuVerticalPlate,
  radiationCoefficient,
  windCoefficientIso6946,
} from "../../src/properties/index.js";
import { type Mark, relative, type ValidationCase, type ValidationGroup } from "./case.js";

const EXAMPLE_9_2 = "Incropera, Introduction to Heat Transfer, 6th ed., Example 9.2";
const LAST_DIGIT = "half the last digit printed";

export const CONVECTION_VALIDATION: ValidationGroup = {
  title: "convection coefficients",
  part: "physics",
  cases: [
    coefficient(
      "fire screen 0.71 m high at 232 °C in 23 °C air",
      EXAMPLE_9_2,
      "from memory",
      7.0,
      0.01,
      "printed to 2 digits",
      () => convectionCoefficient(nusseltChurchillChuVerticalPlate(0.69 * 2.63e9, 0.69), 0.0338, 0.71),
    ),
    coefficient(
      "the same, all properties of air from this project",
      EXAMPLE_9_2,
      "from memory",
      7.0,
      0.015,
      "own air properties against Table A.4, result printed to 2 digits",
      () => freeConvectionCoefficient("vertical-plate", 0.71, 232 - 23, 400),
    ),
    {
      name: "heat from the fire screen, 1.02 m by 0.71 m",
      source: EXAMPLE_9_2,
      mark: "from memory",
      unit: "W",
      expected: 1060,
      tolerance: relative(1060, 0.015),
      toleranceReason: "own air properties against Table A.4",
      got: () => freeConvectionCoefficient("vertical-plate", 0.71, 232 - 23, 400) * 1.02 * 0.71 * (232 - 23),
    },

    ...(
      [
        [1, 0.0792, 0.08],
        [2, 0.0601, 0.06],
        [3, 0.0485, 0.05],
        [4, 0.0406, 0.04],
        [5, 0.0349, 0.04],
        [7, 0.0273, 0.03],
        [10, 0.0206, 0.02],
      ] as const
    ).flatMap(([windSpeed, resistance, printed]): ValidationCase[] => {
      const got = () => 1 / (windCoefficientIso6946(windSpeed) + radiationCoefficient(283.15, 283.15, 0.9));
      const common = {
        name: `outdoor surface resistance at ${windSpeed} m/s, 10 °C, emissivity 0.9`,
        unit: "m2 K/W",
        got,
      };
      return [
        {
          ...common,
          source: "ISO 6946:2017, Annex C, formula evaluated apart",
          mark: "computed from the published formula",
          expected: resistance,
          tolerance: 0.5e-4,
          toleranceReason: LAST_DIGIT,
        },
        {
          ...common,
          source: "ISO 6946, table of the annex",
          mark: "from memory",
          expected: printed,
          tolerance: 0.0052,
          toleranceReason: "table rounded to 0.01; its 5 m/s value 0.04 stands for 0.0349",
        },
      ];
    }),
  ],
};

function coefficient(
  name: string,
  source: string,
  mark: Mark,
  expected: number,
  fraction: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  const unit = "W/(m2 K)";
  const tolerance = relative(expected, fraction);
  return { name: `coefficient of ${name}`, source, mark, unit, expected, tolerance, toleranceReason, got };
}
