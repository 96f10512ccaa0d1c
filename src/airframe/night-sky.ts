import { cloudFactorWalton, skyEmissivityClarkAllen } from "../properties/index.js";
import { requireInside } from "../units/index.js";

/** Emissivity of a sky [-] between rival models, and its standard deviation. */
export interface SkyBand {
  readonly middle: number;
  readonly sd: number;
}

/**
 * [-] mean of Clark and Allen 1978, Berdahl and Martin 1984 and Li et al. 2017 below Clark and Allen, dew points -30 to
 * 20 °C (0.05 at -20, 0.03 at 0, -0.02 at 20 °C; computed), and their standard deviation about that mean.
 */
const CLEAR_OFFSET = -0.03;
const CLEAR_SD = 0.04;

/**
 * Emissivity of the night sky over a wing. Clear: the middle of three models, 0.03 below Clark and Allen, whose form holds
 * at any dew point. Cloud: half way between Walton's factor (NBSIR 83-2655, 1983), which lets an overcast sky stay cold,
 * and eps(c) = (1 - 0.84 c) eps(0) + 0.84 c (Unsworth and Monteith, Q. J. R. Meteorol. Soc. 101 (1975) 13-24, from memory),
 * which is that of low cloud; each one standard deviation away.
 * @param tempDewPoint over water [K]
 * @param cloudCover [0..1]
 * @example nightSkyEmissivity(263.15, 0).middle // 0.73
 */
export function nightSkyEmissivity(tempDewPoint: number, cloudCover: number): SkyBand {
  requireInside("cloudCover", cloudCover, 0, 1, "");
  const clear = skyEmissivityClarkAllen(tempDewPoint) + CLEAR_OFFSET;
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
