import {
  combinedConvectionCoefficient,
  conductivityAir,
  convectionCoefficient,
  kinematicViscosityAir,
  nusseltChurchillChuVerticalPlate,
  nusseltMcAdamsPlateAssisted,
  nusseltPlate,
  nusseltVdiPlateOpposed,
  prandtlAir,
  rayleighAir,
  reynoldsTransitionMayle,
} from "../properties/index.js";

/** Which way a face looks. */
export type Facing = "up" | "down" | "side";

/** Size of a face [m]: along the wind, and area over perimeter (up, down) or height (side) for still air. */
export interface FaceSize {
  readonly alongWind: number;
  readonly stillAir: number;
}

/** Air conditions a film is made for; properties stay at these, 10 K off changes the coefficient by about 1 %. */
export interface FilmConditions {
  /** [K] */
  readonly tempFilm: number;
  /** [Pa] */
  readonly pressure: number;
}

/** [W/(m2 K)] between a face and the air from `difference` [K], face minus air, and `windSpeed` [m/s] at the face. */
export type AirFilm = (difference: number, windSpeed: number) => number;

/** Log-sd of convection: plate laws against the wind laws of ISO 6946 and McAdams differ by a factor of 2. Project judgement. */
export const TRANSFER_LOG_SD = 0.35;

/**
 * [-] at which the air along a skin turns turbulent: gusts, a fan, rivets and rough snow disturb it by some 3 % (project
 * judgement), which makes 9e4 where a quiet stream along a smooth plate stays laminar to 5e5.
 */
const TRANSITION = reynoldsTransitionMayle(0.03);

/**
 * Convection of a flat face, free and forced together: h^3 = h_free^3 + h_forced^3 (Incropera et al., 6th ed., eq. 9.64,
 * n = 3). Free: McAdams for horizontal plates that shed their air, VDI for those that hold it (a cold face up or a warm
 * face down), Churchill and Chu for upright ones. Forced: laminar, then turbulent. Against Kojima's melting snow (Seppyo
 * 18(1), 1956) it is 0.9 times as much in calm, as much at 1 m/s and at 3 m/s.
 */
export function airFilm(facing: Facing, size: FaceSize, conditions: FilmConditions): AirFilm {
  const { tempFilm, pressure } = conditions;
  const conductivity = conductivityAir(tempFilm);
  const prandtl = prandtlAir(tempFilm);
  const reynoldsPerSpeed = size.alongWind / kinematicViscosityAir(tempFilm, pressure);
  const rayleighPerKelvin = rayleighAir(size.stillAir, 1, tempFilm, pressure);
  const forcedAt = (windSpeed: number) => {
    const reynolds = reynoldsPerSpeed * windSpeed;
    return convectionCoefficient(nusseltPlate(reynolds, prandtl, TRANSITION), conductivity, size.alongWind);
  };
  // A solver asks for many temperatures at one wind.
  let lastWind = 0;
  let lastForced = forcedAt(0);
  return (difference, windSpeed) => {
    if (windSpeed !== lastWind) {
      lastForced = forcedAt(windSpeed);
      lastWind = windSpeed;
    }
    const free = freeNusselt(facing, difference)(rayleighPerKelvin * Math.abs(difference), prandtl);
    return combinedConvectionCoefficient(
      convectionCoefficient(free, conductivity, size.stillAir),
      lastForced,
    );
  };
}

function freeNusselt(facing: Facing, difference: number): (rayleigh: number, prandtl: number) => number {
  if (facing === "side") return nusseltChurchillChuVerticalPlate;
  const assisted = facing === "up" ? difference > 0 : difference < 0;
  return assisted ? nusseltMcAdamsPlateAssisted : nusseltVdiPlateOpposed;
}
