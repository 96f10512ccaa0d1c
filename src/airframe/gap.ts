import { GAS_CONSTANT_VAPOUR, GRAVITY_STANDARD } from "../properties/index.js";
import { requireInside } from "../units/index.js";

// Water in a hinge or control gap leaves by diffusion through the still air between it and the mouth, so it takes far
// longer than an open skin, and ever longer as the water recedes.

/** A slot between hinge leaves, at a control or trim edge, around a landing-gear joint: open at the top, closed below. */
export interface Gap {
  readonly name: string;
  /** [m] from mouth to bottom, and between its walls. */
  readonly depth: number;
  readonly width: number;
  /** [-] of the depth filled with water or ice. */
  readonly fill: number;
  /** [m] total length of such gaps on the aircraft, for the hangar's humidity. */
  readonly length: number;
  /** [J/(m2 K)] of the fitting per outer area, and the outer area per area of mouth [-]. */
  readonly heatCapacity: number;
  readonly outerPerMouth: number;
  readonly origin: string;
}

/** [N/m] surface tension of water at 0 °C (IAPWS R1-76(2014)). */
const SURFACE_TENSION = 0.0756;
/** [kg/m3] */
const DENSITY_WATER = 1000;
/** [m] widest slot treated as one: beyond about twice the capillary length water runs out (project judgement). */
const WIDEST = 0.005;
/** [m] still air over water that stands in the mouth, so that the start is finite. */
const SHORTEST_PATH = 1e-4;

/**
 * A control hinge: 5 mm deep, 0.5 mm wide, a third full after melting snow, 12 m of it. Project judgement throughout; a wet
 * airframe of it comes near the 8 to 12 h that common practice gives a heated hangar.
 */
export const HINGE_GAP: Gap = {
  name: "control hinge",
  depth: 0.005,
  width: 0.0005,
  fill: 0.35,
  length: 12,
  heatCapacity: 8000,
  outerPerMouth: 40,
  origin:
    "5 mm deep, 0.5 mm wide, a third full, fitting 3 mm of aluminium: project judgement; water that corners draw to the mouth dries faster, deeper joints far slower",
};

export function requireGap(gap: Gap): void {
  requireInside("gap.depth", gap.depth, 0.0005, 0.1, "m");
  requireInside("gap.width", gap.width, 1e-5, WIDEST, "m");
  requireInside("gap.fill", gap.fill, 0, 1, "");
  requireInside("gap.length", gap.length, 0, 1000, "m");
  requireInside("gap.heatCapacity", gap.heatCapacity, 100, 1e5, "J/(m2 K)");
  requireInside("gap.outerPerMouth", gap.outerPerMouth, 1, 1e4, "");
}

/**
 * [m] highest column of water that an upright slot of `width` [m] holds against gravity: 2 gamma / (rho g w) (Jurin, parallel
 * walls, wetting). @example capillaryColumn(0.001) // 0.0154
 */
export function capillaryColumn(width: number): number {
  return (2 * SURFACE_TENSION) / (DENSITY_WATER * GRAVITY_STANDARD * width);
}

/** [kg/m2] of water per area of mouth that the gap holds at the start: its fill, or what capillarity holds if less. */
export function waterInGap(gap: Gap): number {
  return DENSITY_WATER * Math.min(gap.fill * gap.depth, capillaryColumn(gap.width));
}

/**
 * [kg/(m2 s)] vapour leaving along `path` [m] of still air: j = D p / (Rv T x) ln((p - p_mouth)/(p - p_surface)), negative when it
 * comes in. Stefan diffusion tube; Geankoplis, Transport Processes and Unit Operations, 3rd ed., eq. 6.2-22.
 * @param diffusivity [m2/s]; `pressure` of the air and the two vapour pressures [Pa]; `temp` [K]
 * @example evaporationFluxStefanTube(2341, 0, 0.1524, 293, 101325, 0.25e-4) / 18.015 // 1.595e-7 kmol/(m2 s), Example 6.2-2
 */
export function evaporationFluxStefanTube(
  pressureSurface: number,
  pressureMouth: number,
  path: number,
  temp: number,
  pressure: number,
  diffusivity: number,
): number {
  const drive = Math.log((pressure - pressureMouth) / (pressure - pressureSurface));
  return (diffusivity * pressure * drive) / (GAS_CONSTANT_VAPOUR * temp * path);
}

/**
 * [m] length of slot that resists diffusion as much as the air outside its mouth: w/pi ln(1 + 4 delta/w), a strip of width w
 * spreading into a half cylinder (effective radius w/4, conformal mapping) out to the boundary layer's edge at `boundaryLayer`
 * delta [m].
 * @example mouthPath(0.0005, 0.01) // 0.0007
 */
export function mouthPath(width: number, boundaryLayer: number): number {
  return (width / Math.PI) * Math.log(1 + (4 * boundaryLayer) / width);
}

/** [m] still air between `column` [kg/m2] of water in a gap and the room under a boundary layer of `boundaryLayer` [m]. */
export function dryPath(gap: Gap, column: number, boundaryLayer: number): number {
  const dry = gap.depth - Math.max(0, column) / DENSITY_WATER;
  return Math.max(SHORTEST_PATH, dry) + mouthPath(gap.width, boundaryLayer);
}
