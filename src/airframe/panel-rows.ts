// The state of a panel and what is around it, per square metre of plan area. Heat [W/m2] counts into the panel.

/** Rows of a panel's state: temperatures [K], masses [kg/m2], sums since the start. The last three only under a cover. */
export const PANEL_ROW = {
  tempUpper: 0,
  iceUpper: 1,
  waterUpper: 2,
  tempLower: 3,
  iceLower: 4,
  waterLower: 5,
  tempInside: 6,
  /** [kg/m2] vapour taken from the air, net. */
  vapourTaken: 7,
  /** [kg/m2] water that ran off. */
  ranOff: 8,
  /** [J/m2] enthalpy taken in with heat, vapour and run-off. */
  heatTaken: 9,
  tempCover: 10,
  iceCover: 11,
  waterCover: 12,
} as const;

/** Rows that nothing depends on. */
export const PANEL_SUMS = [PANEL_ROW.vapourTaken, PANEL_ROW.ranOff, PANEL_ROW.heatTaken];

export const ROWS_BARE = 10;
export const ROWS_COVERED = 13;

/** What surrounds a panel at one moment; filled in place by the caller. */
export interface Surroundings {
  /** [K] */
  tempAir: number;
  /** [Pa] */
  pressureVapour: number;
  /** [m/s] at the panel */
  windSpeed: number;
  /** [K] as black bodies seen by the upper and the lower face */
  tempAbove: number;
  tempBelow: number;
}

/** What the air took and gave in the last call of `writeRates`, for the hangar around the panel. */
export interface PanelFluxes {
  /** [W/m2] convection and radiation into the panel, both faces. */
  convection: number;
  radiation: number;
  /** [kg/(m2 s)] vapour onto the panel, and water running off it. */
  vapour: number;
  runOff: number;
}

/** Sizes that matter, for the step control: 1 K, 10 g/m2, 1 kJ/m2. */
export function panelScales(size: number): Float64Array {
  const scales = new Float64Array(size).fill(1);
  for (const [name, row] of Object.entries(PANEL_ROW)) {
    if (row >= size || name.startsWith("temp")) continue;
    scales[row] = name === "heatTaken" ? 1000 : 0.01;
  }
  return scales;
}
