import { normalQuantile } from "../numerics/index.js";
import { FILM_EXPONENT } from "./cranking-drag.js";

/** What is not known of one engine's cranking. */
export interface CrankingSpread {
  /** [1] exponent of viscosity and speed in the films' drag. */
  readonly exponent: number;
  /** [1] multiplies the drag. */
  readonly drag: number;
  /** [1] multiplies the power of the battery. */
  readonly power: number;
}

/** The middle of all three. */
export const USUAL_CRANKING: CrankingSpread = { exponent: FILM_EXPONENT.usual, drag: 1, power: 1 };

/** Standard deviations of ln(drag) and ln(power): makes of engine, wear, age of battery; project judgement. */
const LOG_SD_DRAG = 0.2;
const LOG_SD_POWER = 0.15;

/**
 * The spread of member `m`: always the same one for the same member, whatever else is drawn and however many members
 * there are, so that runs of one plan compare. A Kronecker sequence in three dimensions with the generalised golden
 * ratio, the root of x^4 = x + 1 (Roberts 2018, from memory); the exponent is triangular, the factors log-normal.
 */
export function crankingSpread(m: number): CrankingSpread {
  return {
    exponent: triangular(unit(m, 1), FILM_EXPONENT.low, FILM_EXPONENT.usual, FILM_EXPONENT.high),
    drag: Math.exp(LOG_SD_DRAG * normalQuantile(unit(m, 2))),
    power: Math.exp(LOG_SD_POWER * normalQuantile(unit(m, 3))),
  };
}

const GOLDEN = 1.2207440846057596;

/** Strictly between 0 and 1. */
function unit(m: number, dimension: number): number {
  const u = (0.5 + (m + 1) * GOLDEN ** -dimension) % 1;
  return Math.max(u, Number.EPSILON);
}

/** Value at share `u` of a triangular distribution. */
function triangular(u: number, low: number, mode: number, high: number): number {
  const width = high - low;
  const rising = (mode - low) / width;
  return u < rising
    ? low + Math.sqrt(u * width * (mode - low))
    : high - Math.sqrt((1 - u) * width * (high - mode));
}
