import { kelvinFromCelsius, requireInside, requirePositive } from "../units/index.js";
import { STEFAN_BOLTZMANN } from "./radiation.js";
import type { ValidityRange } from "./range.js";

/** [K] dew point of the melting point of ice, the zero of the Berdahl-Martin forms. */
const TEMP_ZERO = kelvinFromCelsius(0);

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
 * Lowest dew point [K] (-38.4 °C) of {@link skyEmissivityBerdahlMartin}: its parabola has its foot here and
 * would give a colder, drier air a brighter sky.
 */
export const RANGE_BERDAHL_MARTIN: ValidityRange = {
  quantity: "dew point [K]",
  min: TEMP_ZERO - (100 * 0.56) / (2 * 0.73),
  max: kelvinFromCelsius(30),
  source: "foot of the parabola, computed; upper end of the data in Berdahl and Martin 1984 (from memory)",
};

/**
 * Emissivity of a clear sky, daily mean [-]: eps = 0.711 + 0.56 x + 0.73 x^2, x = dew point in °C / 100.
 * Refuses what lies outside {@link RANGE_BERDAHL_MARTIN}. Berdahl and Martin, Solar Energy 32 (1984) 663-664,
 * doi:10.1016/0038-092X(84)90144-0.
 * @param tempDewPoint over water [K]
 * @example skyEmissivityBerdahlMartin(273.15) // 0.711
 */
export function skyEmissivityBerdahlMartin(tempDewPoint: number): number {
  requireInside("tempDewPoint", tempDewPoint, RANGE_BERDAHL_MARTIN.min, RANGE_BERDAHL_MARTIN.max, "K");
  const x = (tempDewPoint - TEMP_ZERO) / 100;
  return 0.711 + x * (0.56 + 0.73 * x);
}

/**
 * Lowest dew point [K] (-41.7 °C) of {@link skyEmissivityLi}, for the same reason as {@link
 * RANGE_BERDAHL_MARTIN}.
 */
export const RANGE_LI: ValidityRange = {
  quantity: "dew point [K]",
  min: TEMP_ZERO - (100 * 0.521) / (2 * 0.625),
  max: kelvinFromCelsius(30),
  source: "foot of the parabola, computed; upper end as Berdahl and Martin 1984 (from memory)",
};

/**
 * Emissivity of a clear sky [-], the form of Berdahl and Martin recalibrated: eps = 0.758 + 0.521 x + 0.625
 * x^2, x = dew point in °C / 100. Refuses what lies outside {@link RANGE_LI}. Li, Jiang, Coimbra, Solar
 * Energy 144 (2017) 40-48, doi:10.1016/j.solener.2017.01.006.
 * @param tempDewPoint over water [K]
 * @example skyEmissivityLi(273.15) // 0.758
 */
export function skyEmissivityLi(tempDewPoint: number): number {
  requireInside("tempDewPoint", tempDewPoint, RANGE_LI.min, RANGE_LI.max, "K");
  const x = (tempDewPoint - TEMP_ZERO) / 100;
  return 0.758 + x * (0.521 + 0.625 * x);
}

/**
 * Temperature of a clear sky from air temperature alone [K]: Tsky = 0.0552 Ta^1.5. For when no dew point is
 * known; made in mild air, it is some 9 K colder than {@link skyTemperature} at -10 °C and 12 K at -30 °C.
 * Swinbank, Quarterly J. Royal Meteorological Society 89 (1963) 339-348, doi:10.1002/qj.49708938105.
 * @param tempAir [K]
 * @example skyTemperatureSwinbank(273.15) // 249.2
 */
export function skyTemperatureSwinbank(tempAir: number): number {
  requirePositive("tempAir", tempAir, "K");
  return 0.0552 * tempAir ** 1.5;
}

/**
 * Long-wave flux from the sky onto a level surface [W/m2]: eps sigma Ta^4.
 * @param emissivity of the sky, cloud included [-]
 * @param tempAir [K]
 * @example infraredDown(0.815, 293) // 340.6 (EnergyPlus Auxiliary Programs, horizontal infrared example)
 */
export function infraredDown(emissivity: number, tempAir: number): number {
  requireInside("emissivity", emissivity, 0, 1, "");
  requirePositive("tempAir", tempAir, "K");
  return emissivity * STEFAN_BOLTZMANN * tempAir ** 4;
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
