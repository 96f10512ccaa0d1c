import { requireNotNegative, requirePositive } from "../units/index.js";
import { GRAVITY_STANDARD } from "./air.js";

/** [-] discharge coefficient of sharp-edged openings (ASHRAE Handbook Fundamentals, natural ventilation; from memory). */
const DISCHARGE_SHARP_EDGED = 0.6;

/**
 * Air that warmth draws through openings one above the other [m3/s]: Q = C_d A sqrt(2 g H |dT|/T) (ASHRAE Handbook
 * Fundamentals, chapter on ventilation and infiltration, flow caused by thermal forces; from memory).
 * @param area of the opening, or {@link areaInSeries} of two [m2]
 * @param height between the openings, to the neutral level where there is one alone [m]
 * @param tempDifference inside to outside, either sign [K]
 * @param temp of the warmer air [K]
 * @param discharge [-]
 * @example stackFlow(1, 1, 10, 300) // 0.4851
 */
export function stackFlow(
  area: number,
  height: number,
  tempDifference: number,
  temp: number,
  discharge: number = DISCHARGE_SHARP_EDGED,
): number {
  requireNotNegative("area", area, "m2");
  requirePositive("height", height, "m");
  requirePositive("temp", temp, "K");
  requirePositive("discharge", discharge, "");
  return discharge * area * Math.sqrt((2 * GRAVITY_STANDARD * height * Math.abs(tempDifference)) / temp);
}

/** One opening [m2] that passes as much as two, each after the other: 1/A^2 = 1/A1^2 + 1/A2^2; 0 when either is shut. */
export function areaInSeries(first: number, second: number): number {
  requireNotNegative("first", first, "m2");
  requireNotNegative("second", second, "m2");
  return first === 0 || second === 0 ? 0 : (first * second) / Math.hypot(first, second);
}
