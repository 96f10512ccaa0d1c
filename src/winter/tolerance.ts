import { isElementPart } from "../aircraft/index.js";
import type { SolveRequest } from "../solver/index.js";

/** A season could not be integrated; the message says what to do. */
export class SeasonFailure extends Error {
  override readonly name = "SeasonFailure";
}

/**
 * [K] local error allowed in a winter's steps: looser than a plan's, for counts over hundreds of nights and drawn aircraft
 * that differ by several kelvins. What it costs is measured in docs/winter.md and held by a test.
 */
export const WINTER_TOLERANCE = 0.5;
/** Surfaces and air follow within minutes and are wanted to a degree, as in a plan. */
const LIGHT_PARTS_FACTOR = 20;

export function toleranceOf(
  parts: readonly string[],
  tolerance = WINTER_TOLERANCE,
): SolveRequest["tolerance"] {
  const isLight = (name: string) => isElementPart(name) || name === "cowl_air" || name === "cowl_skin";
  return {
    absolute: Float64Array.from(parts, (name) => tolerance * (isLight(name) ? LIGHT_PARTS_FACTOR : 1)),
    relative: 1e-9,
  };
}
