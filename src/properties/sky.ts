import { requireInside, requirePositive } from "../units/index.js";

/**
 * Emissivity of a clear sky [-]: eps = 0.787 + 0.764 ln(Tdp / 273). Rises with dew point at any temperature.
 * Clark and Allen, The estimation of atmospheric radiation for clear and cloudy skies, Proc. 2nd National
 * Passive Solar Conference (1978); form of the EnergyPlus Engineering Reference, which writes 273, not
 * 273.15.
 * @param tempDewPoint over water [K]
 * @example skyEmissivityClarkAllen(283) // 0.8145 (EnergyPlus Auxiliary Programs rounds its example to 0.815)
 */
export function skyEmissivityClarkAllen(tempDewPoint: number): number {
  requirePositive("tempDewPoint", tempDewPoint, "K");
  return 0.787 + 0.764 * Math.log(tempDewPoint / 273);
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
 * Temperature of the sky [K] as a black body: (eps)^(1/4) Ta, with eps of {@link skyEmissivityClarkAllen}
 * times {@link cloudFactorWalton}, held at 1 or below so that the sky is never warmer than the air. Clark and
 * Allen's form is the one chosen because it alone of the three goes on falling with dew point below -40 °C.
 * Single nights scatter by 0.05 in emissivity (4 K of sky), and clear polar nights tend to the lower side
 * (from memory).
 * @param tempAir near the ground [K]
 * @param tempDewPoint over water [K]
 * @param cloudCover part of the sky covered by opaque cloud, 0 to 1 [-]
 * @example skyTemperature(293, 283, 0) // 278.3
 */
export function skyTemperature(tempAir: number, tempDewPoint: number, cloudCover: number): number {
  requirePositive("tempAir", tempAir, "K");
  const emissivity = skyEmissivityClarkAllen(tempDewPoint) * cloudFactorWalton(cloudCover);
  return Math.min(1, Math.max(0, emissivity)) ** 0.25 * tempAir;
}
