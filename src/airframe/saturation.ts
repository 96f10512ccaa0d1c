import { UniformTable } from "../numerics/index.js";
import {
  saturationPressureOverIce,
  saturationPressureOverLiquid,
  TEMP_TRIPLE_POINT_WATER,
} from "../properties/index.js";

/** [K] ends of the tables: wider than any state here, so that a trial step of the solver is never refused. */
const LOWEST = 193.15;
const HIGHEST = 343.15;

const OVER_ICE = new UniformTable(saturationPressureOverIce, LOWEST, TEMP_TRIPLE_POINT_WATER, 320);
const OVER_WATER = new UniformTable(saturationPressureOverLiquid, TEMP_TRIPLE_POINT_WATER, HIGHEST, 280);

/** [Pa] saturation pressure over ice up to the triple point and over water above, from tables (within 1e-6 of itself). */
export function saturationPressureAtSurface(temp: number): number {
  return Math.max(0, (temp < TEMP_TRIPLE_POINT_WATER ? OVER_ICE : OVER_WATER).value(temp));
}
