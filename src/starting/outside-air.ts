import { requireInside } from "../units/index.js";

/** Refuses what is no outside air: [K] -93 to 77 °C, beyond any on record with a forecast's error on top. */
export function requireOutsideAir(tempAir: number): void {
  requireInside("tempAir", tempAir, 180, 350, "K");
}
