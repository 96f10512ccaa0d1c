import { cloudFactorWalton, skyEmissivityNight } from "../properties/index.js";
import { requireInside } from "../units/index.js";

/** Emissivity of a sky [-] between rival models, and its standard deviation. */
export interface SkyBand {
  readonly middle: number;
  readonly sd: number;
}

/** [-] standard deviation of a single clear night: published forms differ by as much at any dew point of -30 to 20 °C. */
const CLEAR_SD = 0.04;

/**
 * Emissivity of the night sky over a wing. Cloud: half way between Walton's factor (NBSIR 83-2655, 1983), which lets an
 * overcast sky stay cold, and eps(c) = (1 - 0.84 c) eps(0) + 0.84 c (Unsworth and Monteith, Q. J. R. Meteorol. Soc. 101
 * (1975) 13-24, from memory), which is that of low cloud; each one standard deviation away.
 * @param tempAir near the ground [K]
 * @param tempDewPoint over water [K]
 * @param cloudCover [0..1]
 * @param pressure [Pa]
 * @example nightSkyEmissivity(265.15, 263.15, 0, 101325).middle // 0.732
 */
export function nightSkyEmissivity(
  tempAir: number,
  tempDewPoint: number,
  cloudCover: number,
  pressure: number,
): SkyBand {
  requireInside("cloudCover", cloudCover, 0, 1, "");
  const clear = skyEmissivityNight(tempAir, tempDewPoint, pressure);
  const highCloud = Math.min(1, clear * cloudFactorWalton(cloudCover));
  const lowCloud = (1 - 0.84 * cloudCover) * clear + 0.84 * cloudCover;
  return {
    middle: 0.5 * (highCloud + lowCloud),
    sd: Math.max(CLEAR_SD, 0.5 * Math.abs(highCloud - lowCloud)),
  };
}

/** [K] of a black body that radiates like a sky of emissivity `emissivity` [-] over air at `tempAir` [K]; never above the air. */
export function nightSkyTemperature(emissivity: number, tempAir: number): number {
  return Math.min(1, Math.max(0.2, emissivity)) ** 0.25 * tempAir;
}
