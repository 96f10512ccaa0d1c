import { celsiusFromKelvin, requireInside, requireNotNegative } from "../units/index.js";

// Kojima, Seppyo 18(1) (1956) 1-5: melt of a snow surface of length l along the air stream, in °C, cm, cm/s, mb and
// g/(cm2 h). Convection only: in a hangar radiation adds 4 to 5 W/(m2 K), and rough snow melts faster. Where laminar
// turns turbulent is the caller's choice: the paper's own limit was not read.

/** [kg/(m2 s)] of one g/(cm2 h). */
const FLUX_OF_GRAM_PER_CM2_HOUR = 10 / 3600;
/** [mb] vapour pressure at melting snow in Kojima's vapour terms. */
const VAPOUR_PRESSURE_MELTING = 6.1;

/** [kg/m3] usual densities of lying snow, from memory of glaciology texts (Paterson, The Physics of Glaciers). */
export const DENSITY_SNOW = {
  new: { min: 50, max: 100 },
  settled: { min: 200, max: 300 },
  wet: { min: 300, max: 500 },
} as const;

/**
 * [kg/(m2 s)] melt in calm air: m = 2.1e-3 l^(-1/4) theta^(5/4). `tempAir` [K] 273.15 to 313.15, `length` [m].
 * @example snowMeltKojimaCalm(283.15, 1) * 3600 // 0.12 kg/(m2 h)
 */
export function snowMeltKojimaCalm(tempAir: number, length: number): number {
  return flux(2.1e-3 * centimetres(length) ** -0.25 * thaw(tempAir) ** 1.25);
}

/**
 * [kg/(m2 s)] melt in a laminar stream: m = 4.0e-3 l^(-1/2) U^(1/2) theta. `tempAir` [K], `length` [m], `windSpeed` [m/s].
 * @example snowMeltKojimaLaminar(283.15, 1, 1) * 3600 // 0.40 kg/(m2 h)
 */
export function snowMeltKojimaLaminar(tempAir: number, length: number, windSpeed: number): number {
  return flux(4e-3 * laminar(length, windSpeed) * thaw(tempAir));
}

/**
 * [kg/(m2 s)] melt in a turbulent stream: m = 3.4e-4 l^(-1/5) U^(4/5) theta. `tempAir` [K], `length` [m], `windSpeed` [m/s].
 * @example snowMeltKojimaTurbulent(283.15, 1, 3) * 3600 // 1.3 kg/(m2 h)
 */
export function snowMeltKojimaTurbulent(tempAir: number, length: number, windSpeed: number): number {
  return flux(3.4e-4 * turbulent(length, windSpeed) * thaw(tempAir));
}

/**
 * [kg/(m2 s)] further melt by vapour condensing from a laminar stream: m = 7.2e-3 l^(-1/2) U^(1/2) (p' - 6.1), negative
 * when the snow loses vapour. `pressureVapour` [Pa] of the air, `length` [m], `windSpeed` [m/s].
 */
export function snowMeltByVapourKojimaLaminar(
  pressureVapour: number,
  length: number,
  windSpeed: number,
): number {
  return flux(7.2e-3 * laminar(length, windSpeed) * vapourExcess(pressureVapour));
}

/** [kg/(m2 s)] the same in a turbulent stream: m = 5.1e-4 l^(-1/5) U^(4/5) (p' - 6.1). */
export function snowMeltByVapourKojimaTurbulent(
  pressureVapour: number,
  length: number,
  windSpeed: number,
): number {
  return flux(5.1e-4 * turbulent(length, windSpeed) * vapourExcess(pressureVapour));
}

function thaw(tempAir: number): number {
  requireInside("tempAir", tempAir, 273.15, 313.15, "K");
  return celsiusFromKelvin(tempAir);
}

function vapourExcess(pressureVapour: number): number {
  requireInside("pressureVapour", pressureVapour, 0, 7400, "Pa");
  return pressureVapour / 100 - VAPOUR_PRESSURE_MELTING;
}

function laminar(length: number, windSpeed: number): number {
  return Math.sqrt(centimetresPerSecond(windSpeed) / centimetres(length));
}

function turbulent(length: number, windSpeed: number): number {
  return centimetresPerSecond(windSpeed) ** 0.8 * centimetres(length) ** -0.2;
}

function centimetres(length: number): number {
  requireInside("length", length, 0.01, 50, "m");
  return 100 * length;
}

function centimetresPerSecond(windSpeed: number): number {
  requireNotNegative("windSpeed", windSpeed, "m/s");
  return 100 * windSpeed;
}

function flux(gramPerSquareCentimetreHour: number): number {
  return gramPerSquareCentimetreHour * FLUX_OF_GRAM_PER_CM2_HOUR;
}
