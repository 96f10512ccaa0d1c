import type { Fit, Installation } from "../aircraft/index.js";
import {
  diametralClearance,
  METALS,
  RANGE_THERMAL_EXPANSION,
  TEMP_REFERENCE_LENGTH,
} from "../properties/index.js";
import { kelvinFromCelsius } from "../units/index.js";

/**
 * [K] piston skirt in the first minutes of running, while the barrel is still as cold as it was: 100 °C, project
 * judgement. Cold parts at rest are not the trouble at a piston: aluminium shrinks more, so the fit is then wide.
 */
export const TEMP_PISTON_FIRST_MINUTES = kelvinFromCelsius(100);

/** Why clearance is shown as an index beside the other criteria and never passes or fails an engine. */
export const CLEARANCE_LIMITS =
  "Bare rings of handbook alloys: shells, studs, flanges and stresses hold real bores back, clearances within the maker's " +
  "limits differ by a factor of two, and no maker publishes a clearance for cold parts. The index only tells how much of the " +
  "fit at 20 °C is left, 100 for all of it; compare it with its value at the maker's preheat limit.";

/** [m] clearance of a fit with each part at its own temperature [K]; negative is interference of the bare rings. */
export function clearanceOf(fit: Fit, tempOuter: number, tempInner: number): number {
  return diametralClearance(
    {
      diameter: fit.diameter_mm / 1000,
      expansion: METALS[fit.outer_metal].expansion,
      temp: clampedMetal(tempOuter),
    },
    {
      diameter: (fit.diameter_mm - fit.clearance_mm) / 1000,
      expansion: METALS[fit.inner_metal].expansion,
      temp: clampedMetal(tempInner),
    },
  );
}

/**
 * Main-bearing index [0..100]: clearance at the temperatures of case and shaft over that at 20 °C. Undefined where the
 * mains are rolling bearings. See {@link CLEARANCE_LIMITS}.
 */
export function bearingIndex(
  { clearances }: Pick<Installation, "clearances">,
  tempCrankcase: number,
  tempCrankshaft: number,
): number | undefined {
  const { bearing } = clearances;
  if (bearing === undefined) return undefined;
  return indexOf(clearanceOf(bearing, tempCrankcase, tempCrankshaft), bearing.clearance_mm / 1000);
}

/**
 * Piston index [0..100]: clearance in the first minutes, piston at {@link TEMP_PISTON_FIRST_MINUTES} in a barrel still at
 * `tempBarrel` [K], over that with the barrel at 20 °C. Undefined where even that one is closed: tight pistons run in
 * light-alloy barrels, which follow the piston at once. See {@link CLEARANCE_LIMITS}.
 */
export function pistonIndex(
  { clearances }: Pick<Installation, "clearances">,
  tempBarrel: number,
): number | undefined {
  const { piston } = clearances;
  const usual = clearanceOf(piston, TEMP_REFERENCE_LENGTH, TEMP_PISTON_FIRST_MINUTES);
  if (!(usual > 0)) return undefined;
  return indexOf(clearanceOf(piston, tempBarrel, TEMP_PISTON_FIRST_MINUTES), usual);
}

function indexOf(clearance: number, usual: number): number {
  return Math.min(100, Math.max(0, (100 * clearance) / usual));
}

function clampedMetal(temp: number): number {
  return Math.min(RANGE_THERMAL_EXPANSION.max, Math.max(RANGE_THERMAL_EXPANSION.min, temp));
}
