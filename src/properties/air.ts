import { requirePositive } from "../units/index.js";

/** [J/(kg K)] specific gas constant of dry air (ISO 2533:1975). */
export const GAS_CONSTANT_AIR = 287.05287;
/** [Pa] standard pressure at sea level (ISO 2533:1975). */
export const PRESSURE_STANDARD = 101325;
/** [m/s2] standard acceleration of free fall, exact by definition (3rd CGPM, 1901; ISO 2533:1975). */
export const GRAVITY_STANDARD = 9.80665;

// The functions of temperature below were held against Incropera, DeWitt, Bergman, Lavine, Fundamentals of Heat and Mass
// Transfer, 6th ed., Table A.4, from 200 to 500 K; they are smooth and still compute a little beyond.

/**
 * Density of dry air [kg/m3], ideal gas: rho = p / (R T).
 * @param temp [K]
 * @param pressure [Pa]
 * @example densityAir(288.15) // 1.225 (ISO 2533:1975, sea level)
 */
export function densityAir(temp: number, pressure: number = PRESSURE_STANDARD): number {
  requirePositive("temp", temp, "K");
  requirePositive("pressure", pressure, "Pa");
  return pressure / (GAS_CONSTANT_AIR * temp);
}

/**
 * Dynamic viscosity of air [Pa s], Sutherland: mu = 1.458e-6 T^1.5 / (T + 110.4) (ISO 2533:1975).
 * @param temp [K]
 * @example viscosityAir(288.15) // 1.7894e-5 (ISO 2533:1975, sea level)
 */
export function viscosityAir(temp: number): number {
  requirePositive("temp", temp, "K");
  return (1.458e-6 * temp ** 1.5) / (temp + 110.4);
}

/**
 * Thermal conductivity of air [W/(m K)]: k = 2.648151e-3 T^1.5 / (T + 245.4 10^(-12/T)) (ISO 2533:1975).
 * @param temp [K]
 * @example conductivityAir(288.15) // 2.5343e-2 (ISO 2533:1975, sea level)
 */
export function conductivityAir(temp: number): number {
  requirePositive("temp", temp, "K");
  return (2.648151e-3 * temp ** 1.5) / (temp + 245.4 * 10 ** (-12 / temp));
}

/**
 * Specific heat capacity of dry air at constant pressure [J/(kg K)]: cp = 1006 + 3.84e-4 (T - 250)^2.
 * Project fit of Incropera Table A.4, within 0.1 % from 200 to 500 K.
 * @param temp [K]
 * @example heatCapacityAir(300) // 1006.96 (the table prints 1007)
 */
export function heatCapacityAir(temp: number): number {
  requirePositive("temp", temp, "K");
  return 1006 + 3.84e-4 * (temp - 250) ** 2;
}

/**
 * Prandtl number of air [-]: cp mu / k.
 * @param temp [K]
 * @example prandtlAir(300) // 0.708 (Incropera Table A.4: 0.707)
 */
export function prandtlAir(temp: number): number {
  return (heatCapacityAir(temp) * viscosityAir(temp)) / conductivityAir(temp);
}

/** Kinematic viscosity of air [m2/s]: mu / rho. @param temp [K] @param pressure [Pa] */
export function kinematicViscosityAir(temp: number, pressure: number = PRESSURE_STANDARD): number {
  return viscosityAir(temp) / densityAir(temp, pressure);
}

/** Thermal diffusivity of air [m2/s]: k / (rho cp). @param temp [K] @param pressure [Pa] */
export function diffusivityAir(temp: number, pressure: number = PRESSURE_STANDARD): number {
  return conductivityAir(temp) / (densityAir(temp, pressure) * heatCapacityAir(temp));
}
