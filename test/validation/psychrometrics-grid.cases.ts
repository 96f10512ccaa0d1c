import {
  saturationPressureIceHylandWexler,
  saturationPressureLiquidHylandWexler,
  saturationPressureLiquidMurphyKoop,
  saturationPressureOverIce,
  saturationPressureOverLiquid,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { relative, type ValidationCase, type ValidationGroup } from "./case.js";

type Saturation = (temp: number) => number;

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

export const SATURATION_GRID_VALIDATION: ValidationGroup = {
  title: "saturation pressure, author against author",
  part: "physics",
  cases: [
    ...ICE.flatMap(([t, iapws, hylandWexler, magnus]) => [
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
  ],
};

function grid(
  what: string,
  saturation: Saturation,
  t: number,
  expected: number,
  fraction: number,
): ValidationCase {
  return at(what, saturation, t, expected, fraction, "half the last digit printed");
}

function across(
  what: string,
  saturation: Saturation,
  t: number,
  expected: number,
  fraction: number,
): ValidationCase {
  return at(
    what,
    saturation,
    t,
    expected,
    fraction,
    "another author's fit: the spread between them at this temperature",
  );
}

function at(
  what: string,
  saturation: Saturation,
  t: number,
  expected: number,
  fraction: number,
  toleranceReason: string,
): ValidationCase {
  return {
    name: `vapour pressure at ${t} °C, ${what}`,
    source: "formula evaluated apart",
    mark: "computed from the published formula",
    unit: "Pa",
    expected,
    tolerance: relative(expected, fraction),
    toleranceReason,
    got: () => saturation(kelvinFromCelsius(t)),
  };
}
