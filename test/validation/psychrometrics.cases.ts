import {
  saturationPressureIceHylandWexler,
  saturationPressureIceMurphyKoop,
  saturationPressureLiquidHylandWexler,
  saturationPressureLiquidMurphyKoop,
  saturationPressureLiquidWagnerPruss,
  saturationPressureOverIce,
  saturationPressureOverLiquid,
  saturationPressureOverStablePhase,
  sublimationPressureIapws,
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

/** °C, then pressure [Pa] over ice: IAPWS R14, Hyland & Wexler, WMO Magnus */
const ICE = [
  [-60, 1.08135, 1.08167, 1.08043],
  [-50, 3.93771, 3.93899, 3.93911],
  [-40, 12.8412, 12.8452, 12.8498],
  [-30, 38.0051, 38.0157, 38.0249],
  [-20, 103.239, 103.26, 103.261],
  [-10, 259.874, 259.903, 259.874],
  [0, 611.153, 611.154, 611.2],
] as const;

/** °C, then pressure [Pa] over liquid: Hyland & Wexler, Murphy & Koop, WMO Magnus, Bolton */
const LIQUID = [
  [-60, 1.9521, 1.86357, 1.90058, 1.89225],
  [-50, 6.44723, 6.31678, 6.38208, 6.35685],
  [-40, 19.0497, 18.9121, 19.0212, 18.9576],
  [-30, 51.0613, 50.9356, 51.1689, 51.0354],
  [-20, 125.629, 125.504, 125.965, 125.74],
  [-10, 286.564, 286.453, 287.031, 286.77],
  [0, 611.213, 611.213, 611.2, 611.2],
  [10, 1228.0, 1228.26, 1226.03, 1227.17],
  [20, 2338.8, 2339.4, 2332.6, 2336.95],
] as const;

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
    kelvin(
      "sublimation",
      "IAPWS R14-08(2011) check value",
      "published",
      sublimationPressureIapws,
      230,
      8.94735,
      5e-6,
      DIGITS,
    ),
    kelvin(
      "sublimation, full digits",
      "chemicals package test",
      CALCULATED,
      sublimationPressureIapws,
      230,
      8.947352740189151,
      1e-11,
      "double precision",
    ),
    ...MURPHY_KOOP.flatMap(([temp, ice, liquid]) => [
      ...(ice === undefined ? [] : [murphyKoop("ice", saturationPressureIceMurphyKoop, temp, ice)]),
      murphyKoop("liquid", saturationPressureLiquidMurphyKoop, temp, liquid),
    ]),
    ...ICE.flatMap(([t, iapws, hylandWexler, magnus]) => [
      grid("ice, IAPWS R14", sublimationPressureIapws, t, iapws, 5e-6),
      grid("ice, Hyland & Wexler", saturationPressureIceHylandWexler, t, hylandWexler, 5e-6),
      across("ice, WMO-No. 8 Magnus", saturationPressureOverIce, t, magnus, 1.3e-3),
      across("ice, chosen against IAPWS R14", saturationPressureOverIce, t, iapws, 4e-4),
    ]),
    ...LIQUID.flatMap(([t, hylandWexler, murphyKoopValue, magnus, bolton]) => [
      grid("liquid, Hyland & Wexler", saturationPressureLiquidHylandWexler, t, hylandWexler, 1e-5),
      grid("liquid, Murphy & Koop", saturationPressureLiquidMurphyKoop, t, murphyKoopValue, 1e-5),
      across("liquid, WMO-No. 8 Magnus", saturationPressureOverLiquid, t, magnus, t < -40 ? 0.02 : 0.006),
      across("liquid, Bolton", saturationPressureOverLiquid, t, bolton, t < -40 ? 0.016 : 0.0025),
    ]),
    kelvin(
      "Wagner & Pruss",
      IF97,
      "published",
      saturationPressureLiquidWagnerPruss,
      300,
      3536.58941,
      0.2,
      AUXILIARY,
    ),
    kelvin(
      "Wagner & Pruss",
      IF97,
      "published",
      saturationPressureLiquidWagnerPruss,
      500,
      2.63889776e6,
      400,
      AUXILIARY,
    ),
    kelvin(
      "Wagner & Pruss",
      IF97,
      "published",
      saturationPressureLiquidWagnerPruss,
      600,
      12.3443146e6,
      1200,
      AUXILIARY,
    ),
    kelvin(
      "Wagner & Pruss",
      IF97,
      "published",
      saturationPressureLiquidWagnerPruss,
      453.035632,
      1e6,
      200,
      AUXILIARY,
    ),
    kelvin(
      "Wagner & Pruss",
      IF97,
      "published",
      saturationPressureLiquidWagnerPruss,
      584.149488,
      1e7,
      1000,
      AUXILIARY,
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

function grid(
  what: string,
  saturation: Saturation,
  t: number,
  expected: number,
  fraction: number,
): ValidationCase {
  return celsius(what, FORMULA, CALCULATED, saturation, t, expected, relative(expected, fraction), DIGITS);
}

function across(
  what: string,
  saturation: Saturation,
  t: number,
  expected: number,
  fraction: number,
): ValidationCase {
  const reason = "another author's fit: the spread between them at this temperature";
  return celsius(what, FORMULA, CALCULATED, saturation, t, expected, relative(expected, fraction), reason);
}
