import { radiantExchange, radiationCoefficient } from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { relative, type ValidationCase, type ValidationGroup } from "./case.js";

const EXAMPLE_1_2 = "Incropera, Introduction to Heat Transfer, 6th ed., Example 1.2";
const APART = "formula evaluated apart";
const LAST_DIGIT = "half the last digit printed";

export const RADIATION_VALIDATION: ValidationGroup = {
  title: "radiation",
  part: "physics",
  cases: [
    {
      name: "black-body flux at 400 K",
      source: "documentation of the ht library, q_rad",
      mark: "published",
      unit: "W/m2",
      expected: 1451.613952,
      tolerance: relative(1451.613952, 1e-4),
      toleranceReason: "made with an older value of the constant",
      got: () => radiantExchange(400, 0, 1),
    },
    pipe("emissive power of the pipe at 473 K, emissivity 0.8", "W/m2", 2270, 3, () =>
      radiantExchange(473, 0, 0.8),
    ),
    pipe("irradiation from surroundings at 298 K", "W/m2", 447, 0.5, () => radiantExchange(298, 0, 1)),
    pipe(
      "radiation of the pipe, 70 mm across",
      "W/m",
      421,
      0.5,
      () => Math.PI * 0.07 * radiantExchange(473, 298, 0.8),
    ),
    pipe("heat loss of the pipe, 70 mm across, h 15", "W/m", 998, 0.5, () => {
      const coefficient = radiationCoefficient(473, 298, 0.8) + 15;
      return Math.PI * 0.07 * coefficient * (473 - 298);
    }),
    ...(
      [
        [-40, 2.875],
        [-30, 3.261],
        [-20, 3.68],
        [-10, 4.133],
        [0, 4.622],
        [10, 5.149],
        [20, 5.714],
      ] as const
    ).map(
      ([celsius, expected]): ValidationCase => ({
        name: `black-body radiation coefficient at ${celsius} °C`,
        source: `4 sigma T^3, ${APART}`,
        mark: "computed from the published formula",
        unit: "W/(m2 K)",
        expected,
        tolerance: 0.5e-3,
        toleranceReason: LAST_DIGIT,
        got: () => coefficientAt(celsius),
      }),
    ),
    ...(
      [
        [-10, 4.1],
        [0, 4.6],
        [10, 5.1],
        [20, 5.7],
      ] as const
    ).map(
      ([celsius, expected]): ValidationCase => ({
        name: `black-body radiation coefficient at ${celsius} °C, as printed`,
        source: "ISO 6946:2017, Annex C, table of h_r0",
        mark: "from memory",
        unit: "W/(m2 K)",
        expected,
        tolerance: 0.05,
        toleranceReason: LAST_DIGIT,
        got: () => coefficientAt(celsius),
      }),
    ),
  ],
};

function coefficientAt(celsius: number): number {
  const temp = kelvinFromCelsius(celsius);
  return radiationCoefficient(temp, temp, 1);
}

function pipe(
  name: string,
  unit: string,
  expected: number,
  tolerance: number,
  got: () => number,
): ValidationCase {
  const toleranceReason = "printed to 3 digits";
  return { name, source: EXAMPLE_1_2, mark: "from memory", unit, expected, tolerance, toleranceReason, got };
}
