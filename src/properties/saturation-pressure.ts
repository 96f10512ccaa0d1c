import type { ValidityRange } from "./range.js";
import { requireInRange } from "./require-range.js";

/** [K] temperature at which ice, liquid water and vapour coexist (IAPWS R14-08). */
export const TEMP_TRIPLE_POINT_WATER = 273.16;

const RANGE_ICE_HYLAND_WEXLER: ValidityRange = {
  quantity: "temperature of ice [K]",
  min: 173.15,
  max: 273.16,
  source: "Hyland & Wexler 1983",
};
/**
 * Published for 273.15 to 473.15 K. Accepted down to -60 °C because it is widely used there; against Murphy & Koop the
 * extrapolation is 0.1 % high at -20 °C, 0.7 % at -40 °C and 4.8 % at -60 °C.
 */
const RANGE_LIQUID_HYLAND_WEXLER: ValidityRange = {
  quantity: "temperature of water [K]",
  min: 213.15,
  max: 473.15,
  source: "Hyland & Wexler 1983, extrapolated below 273.15 K",
};
const RANGE_LIQUID_MURPHY_KOOP: ValidityRange = {
  quantity: "temperature of water [K]",
  min: 123,
  max: 332,
  source: "Murphy & Koop 2005",
};

/**
 * [Pa] vapour pressure over ice: the one used throughout, Hyland & Wexler. `temp` [K] 173.15 to 273.16.
 * @example saturationPressureOverIce(253.15) // 103.26
 */
export function saturationPressureOverIce(temp: number): number {
  return saturationPressureIceHylandWexler(temp);
}

/**
 * [Pa] vapour pressure over liquid water, supercooled below 0 °C: the one used throughout. `temp` [K] 123 to 473.15.
 * Murphy & Koop below the triple point, where Hyland & Wexler would be extrapolated, and Hyland & Wexler above.
 * @example saturationPressureOverLiquid(253.15) // 125.50
 */
export function saturationPressureOverLiquid(temp: number): number {
  return temp < TEMP_TRIPLE_POINT_WATER
    ? saturationPressureLiquidMurphyKoop(temp)
    : saturationPressureLiquidHylandWexler(temp);
}

/**
 * [Pa] vapour pressure over the phase that is stable at `temp` [K] 173.15 to 473.15: ice up to the triple point,
 * liquid above (ASHRAE convention). Not for METAR dew points, which are over liquid at every temperature.
 */
export function saturationPressureOverStablePhase(temp: number): number {
  return temp <= TEMP_TRIPLE_POINT_WATER
    ? saturationPressureOverIce(temp)
    : saturationPressureOverLiquid(temp);
}

/**
 * [Pa] over ice: ln p = C1/T + C2 + C3 T + C4 T² + C5 T³ + C6 T⁴ + C7 ln T, `temp` [K] 173.15 to 273.16.
 * Hyland & Wexler, ASHRAE Trans. 89(2A) 1983, p. 500; as ASHRAE Fundamentals 2017 ch. 1 eq. (5).
 * @example saturationPressureIceHylandWexler(253.15) // 103.26
 */
export function saturationPressureIceHylandWexler(temp: number): number {
  requireInRange("temp", temp, RANGE_ICE_HYLAND_WEXLER);
  const polynomial =
    6.3925247 + temp * (-9.677843e-3 + temp * (6.2215701e-7 + temp * (2.0747825e-9 + temp * -9.484024e-13)));
  return Math.exp(-5674.5359 / temp + polynomial + 4.1635019 * Math.log(temp));
}

/**
 * [Pa] over liquid water: ln p = C8/T + C9 + C10 T + C11 T² + C12 T³ + C13 ln T; `temp` [K], see
 * `RANGE_LIQUID_HYLAND_WEXLER` for what holds below 0 °C.
 * Hyland & Wexler, ASHRAE Trans. 89(2A) 1983, p. 500; as ASHRAE Fundamentals 2017 ch. 1 eq. (6).
 * @example saturationPressureLiquidHylandWexler(298.15) // 3169.2
 */
export function saturationPressureLiquidHylandWexler(temp: number): number {
  requireInRange("temp", temp, RANGE_LIQUID_HYLAND_WEXLER);
  const polynomial = 1.3914993 + temp * (-4.8640239e-2 + temp * (4.1764768e-5 + temp * -1.4452093e-8));
  return Math.exp(-5800.2206 / temp + polynomial + 6.5459673 * Math.log(temp));
}

/**
 * [Pa] over liquid water, supercooled included, `temp` [K] 123 to 332:
 * ln p = 54.842763 - 6763.22/T - 4.210 ln T + 0.000367 T
 *        + tanh(0.0415 (T - 218.8)) (53.878 - 1331.22/T - 9.44523 ln T + 0.014025 T).
 * Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, eq. (10), doi:10.1256/qj.04.94.
 * @example saturationPressureLiquidMurphyKoop(240) // 37.667
 */
export function saturationPressureLiquidMurphyKoop(temp: number): number {
  requireInRange("temp", temp, RANGE_LIQUID_MURPHY_KOOP);
  const log = Math.log(temp);
  const warm = 53.878 - 1331.22 / temp - 9.44523 * log + 0.014025 * temp;
  return Math.exp(
    54.842763 - 6763.22 / temp - 4.21 * log + 0.000367 * temp + Math.tanh(0.0415 * (temp - 218.8)) * warm,
  );
}
