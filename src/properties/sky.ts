import { requireInside, requirePositive } from "../units/index.js";
import { PRESSURE_STANDARD } from "./air.js";
import { vapourPressureFromDewPoint } from "./dew-point.js";

/**
 * Emissivity of a clear sky [-] by the vapour near the ground: 1 - (1 + w) exp(-(1.2 + 3 w)^(1/2)), w = 46.5 e/T with e in
 * hPa, the column's water in cm for air that is mixed as usual. Prata, Q. J. R. Meteorol. Soc. 122 (1996) 1127-1151, from
 * memory.
 * @param tempAir near the ground [K]
 * @param tempDewPoint over water [K]
 * @example skyEmissivityPrata(273.15, 273.15) // 0.744
 */
export function skyEmissivityPrata(tempAir: number, tempDewPoint: number): number {
  requirePositive("tempAir", tempAir, "K");
  const water = (0.465 * vapourPressureFromDewPoint(tempDewPoint)) / tempAir;
  return 1 - (1 + water) * Math.exp(-Math.sqrt(1.2 + 3 * water));
}

/** [K] below which {@link skyEmissivityIdsoJackson} stays as it is: the coldest air of its data, from memory. */
const COLDEST_IDSO_JACKSON = 244;

/**
 * Emissivity of a clear sky [-] by the air near the ground: 1 - 0.261 exp(-7.77e-4 (273 - T)^2). It rises as the air gets
 * colder than freezing, because on clear cold nights the air aloft is warmer than the air below. Idso and Jackson, J.
 * Geophys. Res. 74 (1969) 5397-5403, data down to -29 °C; held below.
 * @param tempAir near the ground [K]
 * @example skyEmissivityIdsoJackson(253) // 0.809
 */
export function skyEmissivityIdsoJackson(tempAir: number): number {
  requirePositive("tempAir", tempAir, "K");
  const off = 273 - Math.max(COLDEST_IDSO_JACKSON, tempAir);
  return 1 - 0.261 * Math.exp(-7.77e-4 * off * off);
}

/** [1/Pa] of less pressure above a higher place: Berdahl and Martin, Solar Energy 32 (1984) 663-664 (0.00012 per mbar). */
const EMISSIVITY_PER_PASCAL = 0.00012 / 100;

/**
 * Emissivity of a clear night sky [-]: the mean of {@link skyEmissivityPrata}, whose air is mixed, and
 * {@link skyEmissivityIdsoJackson}, whose air is coldest at the ground, brought from 1000 hPa to `pressure`. Chosen with one
 * night of -8 to -23 °C in view (Alamosa, 2317 m, 1 January 2016, NOAA SURFRAD): over all its clear minutes it is 0.1 W/m2 off
 * in the mean and at most 10; Clark and Allen's form 3 and 23, Prata alone -6 and 15, Idso and Jackson alone 13 and 18.
 * @param tempAir near the ground [K]
 * @param tempDewPoint over water [K]
 * @param pressure [Pa]
 * @example skyEmissivityNight(253.15, 250.15, 101325) // 0.748
 */
export function skyEmissivityNight(tempAir: number, tempDewPoint: number, pressure: number): number {
  requireInside("pressure", pressure, 5e4, 1.1e5, "Pa");
  const mean = 0.5 * (skyEmissivityPrata(tempAir, tempDewPoint) + skyEmissivityIdsoJackson(tempAir));
  return mean + EMISSIVITY_PER_PASCAL * (pressure - 1e5);
}

/**
 * Factor by which cloud raises the emissivity of the sky [-]: 1 + 0.0224 N - 0.0035 N^2 + 0.00028 N^3, N =
 * cloud in tenths. Walton, Thermal Analysis Research Program Reference Manual, NBSIR 83-2655 (1983), as in
 * the EnergyPlus Engineering Reference.
 * @param cloudCover part of the sky covered by opaque cloud, 0 to 1 [-]
 * @example cloudFactorWalton(0.5) // 1.0595
 */
export function cloudFactorWalton(cloudCover: number): number {
  requireInside("cloudCover", cloudCover, 0, 1, "");
  const n = 10 * cloudCover;
  return 1 + n * (0.0224 + n * (-0.0035 + n * 0.00028));
}

/**
 * Temperature of the sky [K] as a black body: (eps)^(1/4) Ta, with eps of {@link skyEmissivityNight} at sea level times
 * {@link cloudFactorWalton}, held at 1 or below so that the sky is never warmer than the air. Single nights scatter by 0.05
 * in emissivity (4 K of sky).
 * @param tempAir near the ground [K]
 * @param tempDewPoint over water [K]
 * @param cloudCover part of the sky covered by opaque cloud, 0 to 1 [-]
 * @example skyTemperature(293, 283, 0) // 277.3
 */
export function skyTemperature(tempAir: number, tempDewPoint: number, cloudCover: number): number {
  requirePositive("tempAir", tempAir, "K");
  const clear = skyEmissivityNight(tempAir, tempDewPoint, PRESSURE_STANDARD);
  return Math.min(1, clear * cloudFactorWalton(cloudCover)) ** 0.25 * tempAir;
}
