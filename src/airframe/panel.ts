import { densityAvgas } from "../properties/index.js";
import { requireInside } from "../units/index.js";

/** What lies between upper and lower skin, per plan area: cavity with ribs and spars, or fuel. */
export interface PanelInside {
  /** [J/(m2 K)] */
  readonly heatCapacity: number;
  /** [W/(m2 K)] to the upper and to the lower skin. */
  readonly coefficientUpper: number;
  readonly coefficientLower: number;
}

/** A piece of wing, tail or control surface: two thin faces and what is between them. */
export interface Panel {
  readonly name: string;
  /** [m] along the wind, and across it. */
  readonly chord: number;
  readonly span: number;
  /** [J/(m2 K)] of each skin. */
  readonly heatCapacityUpper: number;
  readonly heatCapacityLower: number;
  /** [-] long-wave, dry. */
  readonly emissivity: number;
  readonly inside: PanelInside;
  /** Where the numbers come from. */
  readonly origin: string;
}

/** [kg/m3], [J/(kg K)] of 2024-T6 (Incropera et al., Table A.1). */
const ALUMINIUM = { density: 2770, heatCapacity: 875 } as const;
/** [J/(m2 K)] 0.7 mm of aluminium. */
const ALUMINIUM_SKIN = 0.7e-3 * ALUMINIUM.density * ALUMINIUM.heatCapacity;
/**
 * Cavity with 3 kg/m2 of ribs and spars. 4 W/(m2 K) to each skin, 2 right through: free convection of about 2 and, between
 * bare inner faces, little radiation. Project judgement; ISO 6946 gives 5 to 6 W/(m2 K) through a cavity of dull faces.
 */
const CAVITY: PanelInside = {
  heatCapacity: 3 * ALUMINIUM.heatCapacity,
  coefficientUpper: 4,
  coefficientLower: 4,
};
const SKIN_JUDGED = "skin 0.7 mm (usual 0.5 to 0.8 mm), cavity and size project judgement";

/** Panels of common kinds; size 1.4 m by 4 m, the wing of a two- to four-seater (project judgement). */
export const PANELS = {
  "aluminium-painted": {
    name: "painted aluminium wing",
    chord: 1.4,
    span: 4,
    heatCapacityUpper: ALUMINIUM_SKIN,
    heatCapacityLower: ALUMINIUM_SKIN,
    emissivity: 0.9,
    inside: CAVITY,
    origin: `${SKIN_JUDGED}; emissivity of paint 0.9 (Incropera et al., Table A.11, from memory)`,
  },
  "aluminium-bare": {
    name: "bare bright aluminium wing",
    chord: 1.4,
    span: 4,
    heatCapacityUpper: ALUMINIUM_SKIN,
    heatCapacityLower: ALUMINIUM_SKIN,
    emissivity: 0.15,
    inside: CAVITY,
    origin: `${SKIN_JUDGED}; emissivity of clad sheet between polished 0.05 and oxidised 0.2 (Incropera et al., Table A.11, from memory)`,
  },
  "fabric-painted": {
    name: "painted fabric wing",
    chord: 1.4,
    span: 4,
    heatCapacityUpper: 330,
    heatCapacityLower: 330,
    emissivity: 0.9,
    inside: { heatCapacity: 3000, coefficientUpper: 5, coefficientLower: 5 },
    origin: "doped fabric 0.25 kg/m2 at 1300 J/(kg K), wooden ribs and spars 2 kg/m2: project judgement",
  },
  "composite-painted": {
    name: "painted composite wing",
    chord: 1.1,
    span: 4,
    heatCapacityUpper: 1800,
    heatCapacityLower: 1800,
    emissivity: 0.9,
    inside: { heatCapacity: 2000, coefficientUpper: 2, coefficientLower: 2 },
    origin:
      "glass sandwich, outer laminate 1.8 kg/m2 at 1000 J/(kg K), foam core insulates: project judgement",
  },
} as const satisfies Record<string, Panel>;

/** [J/(kg K)] of avgas near 0 °C, from memory of fuel handbooks (2.0 to 2.1). */
const HEAT_CAPACITY_AVGAS = 2050;
/** [W/(m2 K)] fuel to the skin it wets: McAdams plates in gasoline give 30 (layered) to 120 (stirred by cold from above). Project judgement. */
const COEFFICIENT_WETTED = 60;

/**
 * The panel over a tank with `depth` [m] of avgas at about `tempFuel` [K]. Only a full tank wets the upper skin; a partly
 * filled one acts on it through its air, as a cavity does.
 */
export function panelWithFuel(panel: Panel, depth: number, tempFuel: number, full: boolean): Panel {
  requireInside("depth", depth, 0.005, 1, "m");
  return {
    ...panel,
    name: `${panel.name} over ${full ? "a full tank" : "a tank"}`,
    inside: {
      heatCapacity: panel.inside.heatCapacity + depth * densityAvgas(tempFuel) * HEAT_CAPACITY_AVGAS,
      coefficientUpper: full ? COEFFICIENT_WETTED : panel.inside.coefficientUpper,
      coefficientLower: COEFFICIENT_WETTED,
    },
  };
}

/** [J/(m2 K)] inside from which a panel counts as lying over fuel: about 15 mm of it. */
const FUEL_CAPACITY = 25e3;

export function isOverFuel({ inside }: Panel): boolean {
  return inside.heatCapacity > FUEL_CAPACITY;
}

/** A cover that lies on the upper skin. */
export interface WingCover {
  /** [m2 K/W] between its outside and the skin. */
  readonly resistance: number;
  /** [J/(m2 K)] */
  readonly heatCapacity: number;
  /** [-] long-wave, dry. */
  readonly emissivity: number;
  /**
   * [-] where the vapour pressure under the cover stands: 0 at saturation on the cover's cold inside, which catches it, 1
   * at that of the air outside, which comes in by seams and edges.
   */
  readonly vapourLeak: number;
  readonly origin: string;
}

/** Covers of common kinds. */
export const WING_COVERS = {
  mesh: {
    resistance: 0.02,
    heatCapacity: 250,
    emissivity: 0.9,
    vapourLeak: 0.3,
    origin: "open weave 0.2 kg/m2 with a few mm of air under it: project judgement",
  },
  coated: {
    resistance: 0.05,
    heatCapacity: 350,
    emissivity: 0.9,
    vapourLeak: 0.1,
    origin: "coated cloth 0.25 kg/m2, air under it 5 to 10 mm, loose at the edges: project judgement",
  },
  quilted: {
    resistance: 0.25,
    heatCapacity: 700,
    emissivity: 0.9,
    vapourLeak: 0.1,
    origin: "10 mm of fibre at 0.04 W/(m K), 0.5 kg/m2: project judgement",
  },
} as const satisfies Record<string, WingCover>;

export function requirePanel(panel: Panel): void {
  requireInside("panel.chord", panel.chord, 0.05, 10, "m");
  requireInside("panel.span", panel.span, 0.05, 50, "m");
  requireInside("panel.heatCapacityUpper", panel.heatCapacityUpper, 100, 1e5, "J/(m2 K)");
  requireInside("panel.heatCapacityLower", panel.heatCapacityLower, 100, 1e5, "J/(m2 K)");
  requireInside("panel.emissivity", panel.emissivity, 0, 1, "");
  requireInside("panel.inside.heatCapacity", panel.inside.heatCapacity, 10, 1e7, "J/(m2 K)");
  requireInside("panel.inside.coefficientUpper", panel.inside.coefficientUpper, 0, 1e3, "W/(m2 K)");
  requireInside("panel.inside.coefficientLower", panel.inside.coefficientLower, 0, 1e3, "W/(m2 K)");
}

export function requireCover(cover: WingCover): void {
  requireInside("cover.resistance", cover.resistance, 0.001, 10, "m2 K/W");
  requireInside("cover.heatCapacity", cover.heatCapacity, 50, 1e5, "J/(m2 K)");
  requireInside("cover.emissivity", cover.emissivity, 0, 1, "");
  requireInside("cover.vapourLeak", cover.vapourLeak, 0, 1, "");
}
