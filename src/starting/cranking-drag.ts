import type { Installation } from "../aircraft/index.js";
import { COLD_CRANKING_TEST, dynamicViscosityOil, type Oil, PRESSURE_STANDARD } from "../properties/index.js";
import { kelvinFromCelsius, RADIANS_PER_SECOND_OF_RPM, requireInside } from "../units/index.js";

// What it takes to turn an engine over, as a mean pressure on the swept volume: torque = p V/(4 pi), four strokes.
//
//   p = p_gas + p_dry + p_film (mu omega / (mu_0 omega_0))^n
//
// Oil films follow (viscosity x speed)^n with n about 0.5, somewhere from 0.3 to 0.6 (SAE cranking literature, from
// memory; Burke et al., hot engines: 0.52). The level of the films is set so that the model gives the published power
// needed at 80, 32, 0 and -20 °F (100, 155, 210, 350 %: workshop chart, oil not named) within 10 % with a 10W-30; the
// film level itself is pinned at 0 °F, where cranking is tested, so that a change of n tilts about that point.

/** Motor oil that the chart is read with: the grade of most published cranking and cold friction tests. */
export const CRANKING_REFERENCE_OIL: Oil = {
  id: "reference-10w-30",
  name: "SAE 10W-30 of the cranking charts",
  winterGrade: "10W",
  hotGrade: "30",
  nu40: 68e-6,
  nu100: 10.5e-6,
  density15: 875,
  pourPoint: kelvinFromCelsius(-33),
  origin:
    "composite of published data sheets, from memory; SAE 2005-01-1654 ran its cold friction tests on this grade",
};

/** [rad/s] of the reference point, 100 rpm. */
export const CRANKING_REFERENCE_SPEED = 100 * RADIANS_PER_SECOND_OF_RPM;
/** [Pa s] of the reference oil at 0 °F. */
export const CRANKING_REFERENCE_VISCOSITY = dynamicViscosityOil(
  CRANKING_REFERENCE_OIL,
  COLD_CRANKING_TEST.temp,
);
/** [1] exponent of viscosity and speed. */
export const FILM_EXPONENT = { low: 0.3, usual: 0.5, high: 0.6 } as const;

/** [Pa] oil films at the reference point: 1.56 of the 125 kPa that an engine at 80 °F takes; project judgement from the chart. */
const PRESSURE_FILM = 195e3;
/** [Pa] what neither oil nor compression explains: seals, valve springs, accessories, pumping; project judgement. */
const PRESSURE_DRY = 35.8e3;
/** [1] share of the work of compression that leaks or cools away instead of coming back; project judgement. */
const COMPRESSION_LOST = 0.15;
/** [1] polytropic exponent of a cold compression, from memory of engine texts. */
const POLYTROPIC_EXPONENT = 1.3;

/**
 * Shares of the film drag [1]: most at the cylinder walls (SAE 280010, 1928, abstract: thin films on cylinder walls
 * rather than bearings or sump); figures are project judgement.
 */
export const FILM_SHARES = { barrels: 0.65, crankshaft: 0.25, oil: 0.1 } as const;

/** Drag of one engine in torque at the crankshaft. */
export interface CrankingDrag {
  /** [N m] compression and dry friction: the same at any temperature. */
  readonly fixed: number;
  /** [N m] all oil films at the reference viscosity and speed. */
  readonly film: number;
}

/** Drag of an installation by its swept volume and compression ratio. */
export function crankingDrag({
  displacement_l,
  compression_ratio,
}: Pick<Installation, "displacement_l" | "compression_ratio">): CrankingDrag {
  requireInside("displacement_l", displacement_l, 0.1, 60, "l");
  requireInside("compression_ratio", compression_ratio, 4, 16, "[1]");
  const volume = displacement_l / 1000 / (4 * Math.PI);
  return {
    fixed: volume * (PRESSURE_DRY + COMPRESSION_LOST * compressionPressure(compression_ratio)),
    film: volume * PRESSURE_FILM,
  };
}

/**
 * [Pa] work of one polytropic compression over the swept volume: p0/(k - 1) r/(r - 1) (r^(k-1) - 1).
 * @example compressionPressure(8.5) // 345e3
 */
export function compressionPressure(ratio: number): number {
  const k = POLYTROPIC_EXPONENT;
  return (PRESSURE_STANDARD / (k - 1)) * (ratio / (ratio - 1)) * (ratio ** (k - 1) - 1);
}

/**
 * [N m] mean torque to turn an engine that is at one temperature with oil of `viscosity` [Pa s], at `speed` [rad/s].
 * @example
 * const { fixed, film } = crankingDrag({ displacement_l: 1, compression_ratio: 8.5 });
 * crankingTorque({ fixed, film }, 0.111, 100 * RADIANS_PER_SECOND_OF_RPM) // 10 N m/l: reference oil at 80 °F
 */
export function crankingTorque(
  { fixed, film }: CrankingDrag,
  viscosity: number,
  speed: number,
  exponent: number = FILM_EXPONENT.usual,
): number {
  requireInside("viscosity", viscosity, 1e-4, 1e6, "Pa s");
  requireInside("speed", speed, 0, 100, "rad/s");
  requireInside("exponent", exponent, 0.1, 1, "[1]");
  const group = (viscosity * speed) / (CRANKING_REFERENCE_VISCOSITY * CRANKING_REFERENCE_SPEED);
  return fixed + film * group ** exponent;
}
