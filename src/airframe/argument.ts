import { requireInside } from "../units/index.js";

/** [K] weather and hangars this folder is made for: -60 to 50 °C. */
export const COLDEST = 213.15;
const WARMEST = 323.15;

/** Refuses an air temperature and dew point [K] that are no weather, by the names they came under. */
export function requireMoistAir(place: string, tempAir: number, tempDewPoint: number): void {
  requireInside(`${place}.tempAir`, tempAir, COLDEST, WARMEST, "K");
  if (!(tempDewPoint >= COLDEST && tempDewPoint <= tempAir)) {
    throw new RangeError(
      `invalid ${place}.tempDewPoint: ${tempDewPoint} (expected ${COLDEST} K to the air temperature, ${tempAir} K)`,
    );
  }
}
