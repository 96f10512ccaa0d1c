import { KELVIN_OF_ZERO_CELSIUS, kelvinFromCelsius, requirePositive } from "../units/index.js";
import type { HotGrade, WinterGrade } from "./sae-j300.js";
import { type WaltherFit, waltherFit, waltherViscosity } from "./walther.js";

/** A lubricating oil by the figures of its data sheet. */
export interface Oil {
  readonly id: string;
  readonly name: string;
  /** SAE J300 winter grade; absent on a straight grade. An oil that has one is a multigrade. */
  readonly winterGrade?: WinterGrade;
  readonly hotGrade: HotGrade;
  /** [m2/s] kinematic viscosity at 40 °C */
  readonly nu40: number;
  /** [m2/s] kinematic viscosity at 100 °C */
  readonly nu100: number;
  /** [kg/m3] density at 15 °C */
  readonly density15: number;
  /** [K] pour point (ASTM D97) */
  readonly pourPoint: number;
  /** Where the figures come from. */
  readonly origin: string;
}

/** [1/K] volume expansion of engine oil, all rows of Incropera Table A.5 (unused engine oil). */
const EXPANSION_OIL = 0.7e-3;

const TEMP_15 = kelvinFromCelsius(15);
const TEMP_40 = kelvinFromCelsius(40);
const TEMP_100 = kelvinFromCelsius(100);

const fits = new WeakMap<Oil, WaltherFit>();

/** The oil's Walther line through its viscosities at 40 and 100 °C; made once an oil. */
export function waltherFitOil(oil: Oil): WaltherFit {
  const fit = fits.get(oil) ?? waltherFit(TEMP_40, oil.nu40, TEMP_100, oil.nu100);
  fits.set(oil, fit);
  return fit;
}

/**
 * Kinematic viscosity of an oil [m2/s] by ASTM D341, low shear. Ask {@link isBelowPourPoint} whether it is an
 * extrapolation; a multigrade at cranking shear is thinner than this.
 * @param temp [K]
 */
export function kinematicViscosityOil(oil: Oil, temp: number): number {
  return waltherViscosity(waltherFitOil(oil), temp);
}

/** Dynamic viscosity of an oil [Pa s]: density times kinematic viscosity. @param temp [K] */
export function dynamicViscosityOil(oil: Oil, temp: number): number {
  return densityOil(oil, temp) * kinematicViscosityOil(oil, temp);
}

/**
 * Whether viscosity at `temp` is extrapolated below the pour point, where wax or gel makes the oil thicker
 * than the Walther line says and it may not flow at all (ASTM D341-17: not below the cloud point).
 * @param temp [K]
 */
export function isBelowPourPoint(oil: Oil, temp: number): boolean {
  return temp < oil.pourPoint;
}

/**
 * Density of an oil [kg/m3]: rho = rho15 (1 - 0.70e-3 (T - 288.15)), the expansion of Incropera Table A.5,
 * whose densities it meets within 0.5 % from 273 to 400 K. Colder is the same line, extrapolated.
 * @param temp [K]
 */
export function densityOil(oil: Oil, temp: number): number {
  requirePositive("temp", temp, "K");
  return oil.density15 * (1 - EXPANSION_OIL * (temp - TEMP_15));
}

/**
 * Specific heat capacity of engine oil [J/(kg K)]: cp = 1800 + 4.25 (T - 273.15). Project fit of Incropera
 * Table A.5, within 0.5 % from 273 to 430 K. Colder is the same line, extrapolated.
 * @param temp [K]
 * @example heatCapacityOil(300) // 1914 (the table prints 1909)
 */
export function heatCapacityOil(temp: number): number {
  requirePositive("temp", temp, "K");
  return 1800 + 4.25 * (temp - KELVIN_OF_ZERO_CELSIUS);
}
