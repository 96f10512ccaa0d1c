import {
  DENSITY_ICE,
  densityAir,
  densitySteamWagnerPruss,
  densityWaterWagnerPruss,
  diffusivityAir,
  diffusivityVapourMontgomery,
  heatCapacityAir,
  heatCapacityIceYen,
  LATENT_HEAT_FUSION,
  latentHeatVaporisation,
  latentHeatVaporisationMurphyKoop,
  latentHeatVaporisationWagnerPruss,
  lewisNumber,
  massTransferCoefficientChiltonColburn,
  PRESSURE_STANDARD,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { type Mark, relative, type ValidationCase, type ValidationGroup } from "./case.js";

const CALCULATED: Mark = "computed from the published formula";
const FORMULA = "formula evaluated apart";
const DIGITS = "half the last digit printed";
const IAPWS_95 = "IAPWS-95 Table 8, 275 K, as in the iapws package's tests";
const IAPWS_06 = "IAPWS-06 (R10-06) Table 6, as in the iapws package's tests";
const DIFFUSIVITY_SPREAD = "published diffusivities of vapour in air differ by up to 10 %";
const ZERO = kelvinFromCelsius(0);
const lewisAtZero = () =>
  lewisNumber(diffusivityAir(ZERO), diffusivityVapourMontgomery(ZERO, PRESSURE_STANDARD));

export const WATER_VALIDATION: ValidationGroup = {
  title: "water and ice",
  part: "physics",
  cases: [
    heat(
      "of fusion at 0 °C",
      IAPWS_06,
      "published",
      333.444,
      0.1,
      "sources span 333.4 to 333.6",
      () => LATENT_HEAT_FUSION,
    ),

    heat(
      "of vaporisation at 275 K",
      IAPWS_95,
      "published",
      2504.28995 - 7.75972201,
      0.5,
      "Clapeyron on auxiliary equations, 2e-4",
      () => latentHeatVaporisationWagnerPruss(275),
    ),
    heat(
      "of vaporisation at 0 °C, Murphy & Koop",
      "steam tables",
      "published",
      2500.9,
      0.3,
      "sources span 2500.8 to 2501",
      () => latentHeatVaporisationMurphyKoop(ZERO),
    ),
    heat(
      "of vaporisation at the triple point, Wagner & Pruss",
      "steam tables",
      "published",
      2500.9,
      0.5,
      "as above, and 2e-4 of Clapeyron",
      () => latentHeatVaporisationWagnerPruss(273.16),
    ),
    heat("of vaporisation at 100 °C", "steam tables", "from memory", 2256.5, 0.5, "2e-4", () =>
      latentHeatVaporisation(kelvinFromCelsius(100)),
    ),

    ...(
      [
        [-20, 2549.1],
        [20, 2453.8],
        [40, 2405.1],
      ] as const
    ).map(([t, expected]) =>
      heat(
        `of vaporisation at ${t} °C, chosen against Rogers & Yau`,
        FORMULA,
        CALCULATED,
        expected,
        2.5,
        "0.1 % between authors",
        () => latentHeatVaporisation(kelvinFromCelsius(t)),
      ),
    ),
    property("density of saturated water at 275 K", IAPWS_95, "kg/m3", 999.887406, 1e-5, () =>
      densityWaterWagnerPruss(275),
    ),
    property("density of saturated steam at 275 K", IAPWS_95, "kg/m3", 0.00550664919, 2e-4, () =>
      densitySteamWagnerPruss(275),
    ),
    property("density of ice at the triple point", IAPWS_06, "kg/m3", 916.7094922, 5e-5, () => DENSITY_ICE),
    property(
      "density of ice at 273.1525 K, 1 atm",
      IAPWS_06,
      "kg/m3",
      916.721463419,
      5e-5,
      () => DENSITY_ICE,
    ),
    property("heat capacity of ice at the triple point", IAPWS_06, "J/(kg K)", 2096.78431622, 2e-3, () =>
      heatCapacityIceYen(273.16),
    ),
    property("heat capacity of ice at 273.1525 K", IAPWS_06, "J/(kg K)", 2096.71391024, 2e-3, () =>
      heatCapacityIceYen(273.152519),
    ),
    ...(
      [
        [0, 22.6],
        [25, 26.48],
        [-20, 19.69],
        [-40, 16.97],
      ] as const
    ).map(([t, expected]) => diffusivity("Montgomery", t, CALCULATED, expected, 3e-4, DIGITS)),
    diffusivity("Incropera Table A.8", 24.85, "from memory", 26, 0.1, DIFFUSIVITY_SPREAD),
    ...(
      [
        [-20, 20.13],
        [25, 27.07],
      ] as const
    ).map(([t, expected]) =>
      diffusivity("Schirmer, EN 12086", t, "from memory", expected, 0.1, DIFFUSIVITY_SPREAD),
    ),
    ...(
      [
        [-40, 15.86],
        [-20, 18.71],
        [0, 21.75],
        [25, 25.83],
      ] as const
    ).map(([t, expected]) =>
      diffusivity("ASHRAE equation", t, "from memory", expected, 0.1, DIFFUSIVITY_SPREAD),
    ),
    {
      name: "Lewis number of vapour in air at 0 °C",
      source: FORMULA,
      mark: CALCULATED,
      unit: "1",
      expected: 0.84,
      tolerance: 0.03,
      toleranceReason: "spread of diffusivities; texts use 0.84 to 0.87",
      got: lewisAtZero,
    },
    {
      name: "heat by mass transfer coefficient at 0 °C, h/(hm rho cp)",
      source: "0.84^(2/3), Lewis number as above",
      mark: CALCULATED,
      unit: "1",
      expected: 0.8903,
      tolerance: 0.02,
      toleranceReason: "spread of Lewis numbers to the power 2/3",
      got: () => {
        const density = densityAir(ZERO);
        const heatCapacity = heatCapacityAir(ZERO);
        const massTransfer = massTransferCoefficientChiltonColburn(10, density, heatCapacity, lewisAtZero());
        return 10 / (massTransfer * density * heatCapacity);
      },
    },
  ],
};

function heat(
  what: string,
  source: string,
  mark: Mark,
  expected: number,
  tolerance: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  const name = `heat ${what}`;
  return { name, source, mark, unit: "kJ/kg", expected, tolerance, toleranceReason, got: () => got() / 1000 };
}

function property(
  name: string,
  source: string,
  unit: string,
  expected: number,
  fraction: number,
  got: () => number,
): ValidationCase {
  const toleranceReason = "a simpler equation or constant stands for the full formulation";
  return {
    name,
    source,
    mark: "published",
    unit,
    expected,
    tolerance: relative(expected, fraction),
    toleranceReason,
    got,
  };
}

function diffusivity(
  source: string,
  t: number,
  mark: Mark,
  expected: number,
  fraction: number,
  toleranceReason: string,
): ValidationCase {
  return {
    name: `diffusivity of vapour in air at ${t} °C against ${source}`,
    source,
    mark,
    unit: "mm2/s",
    expected,
    tolerance: relative(expected, fraction),
    toleranceReason,
    got: () => 1e6 * diffusivityVapourMontgomery(kelvinFromCelsius(t), PRESSURE_STANDARD),
  };
}
