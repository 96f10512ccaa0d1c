// Kojima, Seppyo 18(1) (1956) 1-5: melt of a snow surface of length l along the air stream, in °C, cm, cm/s, mb and
// g/(cm2 h). Convection only: in a hangar radiation adds 4 to 5 W/(m2 K), and rough snow melts faster. Where laminar
// turns turbulent is the caller's choice: the paper's own limit was not read.

/** [kg/m3] usual densities of lying snow, from memory of glaciology texts (Paterson, The Physics of Glaciers). */
export const DENSITY_SNOW = {
  new: { min: 50, max: 100 },
  settled: { min: 200, max: 300 },
  wet: { min: 300, max: 500 },
} as const;
