import {
  saturationPressureLiquidMurphyKoop,
  saturationPressureLiquidWagnerPruss,
  saturationPressureOverIce,
  saturationPressureOverLiquid,
  saturationPressureOverStablePhase,
  tempDewPointFromVapourPressure,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { type Mark, relative, type ValidationCase, type ValidationGroup } from "./case.js";

type Saturation = (temp: number) => number;

const CALCULATED: Mark = "computed from the published formula";
const ASHRAE = "ASHRAE Fundamentals 2017 ch. 1 Table 3, as in psychrolib's tests";
const HYLAND_WEXLER = "Hyland & Wexler lie within 300 ppm of this table";
const FORMULA = "formula evaluated apart";
const DIGITS = "half the last digit printed";
const IF97 = "IAPWS-IF97 Tables 35 and 36, as in the iapws and chemicals packages' tests";
const AUXILIARY = "the auxiliary equation follows the industrial formulation this closely";

/** K, then Pa over ice and over liquid */
const MURPHY_KOOP = [
  [150, 6.106e-6, 1.562e-5],
  [180, 0.0053975, 0.011239],
  [210, 0.70202, 1.2335],
  [240, 27.272, 37.667],
  [273.15, 611.154, 611.213],
  [273.16, 611.657, 611.657],
  [300, undefined, 3536.8],
] as const;

export const PSYCHROMETRICS_VALIDATION: ValidationGroup = {
  title: "saturation pressure",
  part: "physics",
  cases: [
    celsius(
      "ASHRAE table",
      ASHRAE,
      "published",
      saturationPressureOverStablePhase,
      -60,
      1.08,
      0.01,
      "printed to 0.01 Pa",
    ),
    ...(
      [
        [-20, 103.24],
        [-5, 401.74],
        [5, 872.6],
        [25, 3169.7],
        [50, 12351.3],
        [100, 101418],
        [150, 476101.4],
      ] as const
    ).map(([t, p]) =>
      celsius(
        "ASHRAE table",
        ASHRAE,
        "published",
        saturationPressureOverStablePhase,
        t,
        p,
        3e-4 * p,
        HYLAND_WEXLER,
      ),
    ),

    ...MURPHY_KOOP.flatMap(([temp, ice, liquid]) => [
      ...(ice === undefined ? [] : []),
      murphyKoop("liquid", saturationPressureLiquidMurphyKoop, temp, liquid),
    ]),
    ...(
      [
        [300, 3536.58941, 0.2],
        [500, 2.63889776e6, 400],
        [600, 12.3443146e6, 1200],
        [453.035632, 1e6, 200],
        [584.149488, 1e7, 1000],
      ] as const
    ).map(([temp, p, tolerance]) =>
      kelvin(
        "Wagner & Pruss",
        IF97,
        "published",
        saturationPressureLiquidWagnerPruss,
        temp,
        p,
        tolerance,
        AUXILIARY,
      ),
    ),
    kelvin(
      "Wagner & Pruss",
      "IAPWS-95 Table 8, as in the iapws package's tests",
      "published",
      saturationPressureLiquidWagnerPruss,
      275,
      698.451167,
      0.02,
      "the auxiliary equation follows IAPWS-95 to 3e-5",
    ),
    {
      name: "boiling point at 0.1 MPa, by inverting the chosen liquid branch",
      source: IF97,
      mark: "published",
      unit: "K",
      expected: 372.755919,
      tolerance: 0.01,
      toleranceReason: "300 ppm of pressure is 0.008 K",
      got: () => tempDewPointFromVapourPressure(1e5),
    },
    ...(
      [
        [-10, 0.907],
        [-20, 0.822],
        [-30, 0.745],
        [-40, 0.674],
      ] as const
    ).map(
      ([t, ratio]): ValidationCase => ({
        name: `vapour pressure over ice by that over liquid at ${t} °C`,
        source: `${FORMULA}, Hyland & Wexler both`,
        mark: CALCULATED,
        unit: "1",
        expected: ratio,
        tolerance: relative(ratio, 0.008),
        toleranceReason: "the chosen liquid branch is Murphy & Koop, 0.7 % lower at -40 °C",
        got: () =>
          saturationPressureOverIce(kelvinFromCelsius(t)) /
          saturationPressureOverLiquid(kelvinFromCelsius(t)),
      }),
    ),
  ],
};

function kelvin(
  what: string,
  source: string,
  mark: Mark,
  saturation: Saturation,
  temp: number,
  expected: number,
  tolerance: number,
  toleranceReason: string,
): ValidationCase {
  const name = `vapour pressure at ${temp} K, ${what}`;
  return {
    name,
    source,
    mark,
    unit: "Pa",
    expected,
    tolerance,
    toleranceReason,
    got: () => saturation(temp),
  };
}

function celsius(
  what: string,
  source: string,
  mark: Mark,
  saturation: Saturation,
  t: number,
  expected: number,
  tolerance: number,
  toleranceReason: string,
): ValidationCase {
  const name = `vapour pressure at ${t} °C, ${what}`;
  const got = () => saturation(kelvinFromCelsius(t));
  return { name, source, mark, unit: "Pa", expected, tolerance, toleranceReason, got };
}

function murphyKoop(phase: string, saturation: Saturation, temp: number, expected: number): ValidationCase {
  const source = "Murphy & Koop 2005, appendix table";
  return kelvin(phase, source, "from memory", saturation, temp, expected, relative(expected, 8e-5), DIGITS);
}
