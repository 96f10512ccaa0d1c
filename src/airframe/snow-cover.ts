import { DENSITY_ICE, DENSITY_SNOW, LATENT_HEAT_FUSION } from "../properties/index.js";
import { requireInside } from "../units/index.js";
import { LATENT_HEAT_VAPORISATION } from "./wet-layer.js";

/** Kinds of contamination a person can tell apart. */
export type SnowKind = keyof typeof DENSITY_SNOW | "ice";

/** [kg/m3] middle of the kind's span (geometric mean, as densities are uncertain by a factor). */
function densityOfSnow(kind: SnowKind): number {
  if (kind === "ice") return DENSITY_ICE;
  const { min, max } = DENSITY_SNOW[kind];
  return Math.sqrt(min * max);
}

/**
 * [kg/m2] of snow or ice `depth` [m] deep. @example snowMass(0.05, "new") // 3.5: 5 cm of new snow
 */
export function snowMass(depth: number, kind: SnowKind): number {
  requireInside("depth", depth, 0, 2, "m");
  return depth * densityOfSnow(kind);
}

/**
 * Log-sd of an areal mass told by depth and kind: the spans of density are a factor of 1.4 either side of their middle,
 * and depth is uneven. Project judgement.
 */
export const SNOW_MASS_LOG_SD = 0.3;

/** What warms melting snow: air [K, Pa, W/(m2 K), kg/(m2 s Pa)] and what it sees. */
export interface MeltSurroundings {
  readonly tempAir: number;
  readonly pressureVapour: number;
  readonly convection: number;
  readonly evaporation: number;
  /** [W/m2] net long-wave onto the snow. */
  readonly radiation: number;
}

/** Terms of the melt rate [kg/(m2 s)]; `vapour` is negative while the snow loses vapour. */
export interface MeltTerms {
  readonly convection: number;
  readonly radiation: number;
  readonly vapour: number;
  readonly total: number;
}

/** [Pa] saturation at 0 °C. */
const PRESSURE_MELTING = 611.15;

/**
 * [kg/(m2 s)] melt of a snow surface at 0 °C: (h (Ta - T0) + q + L_v e (p - p0)) / L_f, the balance that Kojima (Seppyo 18(1),
 * 1956) split into the same terms. The simulation solves this balance with the skin's heat store added.
 * @example meltTerms({ tempAir: 288.15, pressureVapour: 611, convection: 1.24, evaporation: 0, radiation: 0 }).total * 3600 // 0.20
 */
export function meltTerms(around: MeltSurroundings): MeltTerms {
  const { tempAir, pressureVapour, convection, evaporation, radiation } = around;
  const byAir = (convection * (tempAir - 273.15)) / LATENT_HEAT_FUSION;
  const byRadiation = radiation / LATENT_HEAT_FUSION;
  const byVapour =
    (LATENT_HEAT_VAPORISATION * evaporation * (pressureVapour - PRESSURE_MELTING)) / LATENT_HEAT_FUSION;
  return {
    convection: byAir,
    radiation: byRadiation,
    vapour: byVapour,
    total: byAir + byRadiation + byVapour,
  };
}
