import {
  conductivityAir,
  densityAir,
  diffusivityAir,
  heatCapacityAir,
  kinematicViscosityAir,
  prandtlAir,
  viscosityAir,
} from "../../src/properties/index.js";
import { calibration, relative, type ValidationCase, type ValidationGroup } from "./case.js";

const INCROPERA = "Incropera, Fundamentals of Heat and Mass Transfer, Table A.4";
const ISO = "ISO 2533:1975 at sea level, as reproduced in the tests of the ambiance library";
const LEMMON = "Lemmon and Jacobsen 2004, Table V (dilute air), as in the tests of the iapws library";

/** [Pa] The densities of Table A.4 are those of 1 bar, not of 1 atm: 1.1614 kg/m3 at 300 K is 1e5 / (287.05 * 300). */
const PRESSURE_OF_TABLE = 1e5;

/** T [K], rho [kg/m3], cp [J/(kg K)], mu [1e-7 Pa s], nu [1e-6 m2/s], k [1e-3 W/(m K)], alpha [1e-6 m2/s], Pr [-]. */
const TABLE_A4: readonly (readonly [number, number, number, number, number, number, number, number])[] = [
  [150, 2.3364, 1012, 103.4, 4.426, 13.8, 5.84, 0.758],
  [200, 1.7458, 1007, 132.5, 7.59, 18.1, 10.3, 0.737],
  [250, 1.3947, 1006, 159.6, 11.44, 22.3, 15.9, 0.72],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the table's Prandtl number
  [300, 1.1614, 1007, 184.6, 15.89, 26.3, 22.5, 0.707],
  [350, 0.995, 1009, 208.2, 20.92, 30.0, 29.9, 0.7],
  [400, 0.8711, 1014, 230.1, 26.41, 33.8, 38.3, 0.69],
  [450, 0.774, 1021, 250.7, 32.39, 37.3, 47.2, 0.686],
  [500, 0.6964, 1030, 270.1, 38.79, 40.7, 56.7, 0.684],
];

export const AIR_VALIDATION: ValidationGroup = {
  title: "air",
  part: "physics",
  cases: [
    ...TABLE_A4.flatMap(([temp, density, cp, mu, nu, k, alpha, prandtl]): ValidationCase[] => {
      const row = (
        name: string,
        unit: string,
        expected: number,
        fraction: number,
        why: string,
        got: () => number,
      ) => ({
        name: `${name} of air at ${temp} K`,
        source: INCROPERA,
        mark: "published" as const,
        unit,
        expected,
        tolerance: relative(expected, fraction),
        toleranceReason: why,
        got,
      });
      const sutherland = "the table departs from Sutherland's law by up to 1.2 % at its ends";
      return [
        row(
          "density",
          "kg/m3",
          density,
          0.01,
          "ideal gas; the table's real gas differs by 0.7 % at 150 K",
          () => densityAir(temp, PRESSURE_OF_TABLE),
        ),
        calibration(
          row(
            "heat capacity",
            "J/(kg K)",
            cp,
            0.0025,
            "a parabola through a flat table: 0.1 %, at 150 K 0.22 %",
            () => heatCapacityAir(temp),
          ),
        ),
        row("dynamic viscosity", "Pa s", mu * 1e-7, 0.012, sutherland, () => viscosityAir(temp)),
        row("kinematic viscosity", "m2/s", nu * 1e-6, 0.013, `${sutherland}; density as above`, () =>
          kinematicViscosityAir(temp, PRESSURE_OF_TABLE),
        ),
        row("conductivity", "W/(m K)", k * 1e-3, 0.007, "ISO 2533 formula against another compilation", () =>
          conductivityAir(temp),
        ),
        row(
          "thermal diffusivity",
          "m2/s",
          alpha * 1e-6,
          0.015,
          "product of the above, table rounded to 3 digits",
          () => diffusivityAir(temp, PRESSURE_OF_TABLE),
        ),
        row("Prandtl number", "-", prandtl, 0.006, "product of the above", () => prandtlAir(temp)),
      ];
    }),
    iso("density", "kg/m3", 1.225, 1e-6, () => densityAir(288.15)),
    iso("dynamic viscosity", "Pa s", 1.7894e-5, 5e-10, () => viscosityAir(288.15)),
    iso("conductivity", "W/(m K)", 2.5343e-2, 5e-7, () => conductivityAir(288.15)),
    iso("kinematic viscosity", "m2/s", 1.4607e-5, 5e-10, () => kinematicViscosityAir(288.15)),
    dilute("dynamic viscosity", "Pa s", 18.523e-6, () => viscosityAir(300)),
    dilute("conductivity", "W/(m K)", 26.3529e-3, () => conductivityAir(300)),
  ],
};

function iso(
  name: string,
  unit: string,
  expected: number,
  tolerance: number,
  got: () => number,
): ValidationCase {
  const toleranceReason = "half the last digit printed";
  return {
    name: `${name} of air at 288.15 K`,
    source: ISO,
    mark: "published",
    unit,
    expected,
    tolerance,
    toleranceReason,
    got,
  };
}

function dilute(name: string, unit: string, expected: number, got: () => number): ValidationCase {
  return {
    name: `${name} of dilute air at 300 K`,
    source: LEMMON,
    mark: "published",
    unit,
    expected,
    tolerance: relative(expected, 0.004),
    toleranceReason: "reference equation against ISO 2533's simpler formula, 0.35 % apart",
    got,
  };
}
