// Written by `npm run calibrate` from data/measured-runs; do not change it by hand.

/** ln(multiplier) of an engine and a night that nobody knows yet: mean + factor z, z standard normal. */
export const CALIBRATED = {
  names: [
    "heater_contact",
    "heater_power",
    "oil_film",
    "sump_joint",
    "oil_inside",
    "journals",
    "flanges",
    "accessory_mounts",
    "engine_to_cowl_air",
    "cowl_skin_loss",
    "ventilation",
    "hub_loss",
    "battery_links",
    "heat_stores",
  ],
  mean: [0.04, 0, -0.02, -0.02, 0.31, 0, 0.08, 0.02, -0.09, 0.01, 0, 0.08, 0, 0.06],
  /** Rows of the lower-triangular root of the covariance: between aircraft, between nights, and of the mean itself. */
  factor: [
    [0.316, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
    [-0.001, 0.039, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
    [-0.004, -0.006, 0.394, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
    [0.006, 0.005, 0.003, 0.396, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
    [0.012, 0.013, 0.003, -0.029, 0.395, 0, 0, 0, 0, 0, 0, 0, 0, 0],
    [0, 0, 0, 0, -0.001, 0.4, 0, 0, 0, 0, 0, 0, 0, 0],
    [0.002, 0.002, 0.003, -0.003, -0.001, -0.001, 0.295, 0, 0, 0, 0, 0, 0, 0],
    [0, 0, 0, 0, -0.002, 0, 0.003, 0.399, 0, 0, 0, 0, 0, 0],
    [0.007, 0.007, 0, -0.005, -0.025, 0, 0.004, -0.001, 0.243, 0, 0, 0, 0, 0],
    [0, 0.002, 0, 0, -0.001, 0, 0.001, 0, -0.003, 0.239, 0, 0, 0, 0],
    [0.002, 0.013, 0.004, 0.003, 0.01, 0, 0.007, -0.001, -0.051, -0.013, 0.363, 0, 0, 0],
    [-0.002, -0.001, -0.002, 0.001, -0.019, 0, 0.012, -0.001, -0.013, -0.003, -0.009, 0.309, 0, 0],
    [0, 0, 0, 0, 0, 0, 0, 0, -0.001, 0, 0.001, 0, 0.399, 0],
    [0.005, 0.007, 0.003, -0.002, -0.007, 0, 0.016, -0.001, 0.023, -0.002, 0.012, 0, 0, 0.247],
  ],
  /** Standard deviations between aircraft of a class, and of one aircraft from night to night. */
  between_aircraft: [0.16, 0.02, 0.2, 0.201, 0.234, 0.2, 0.163, 0.2, 0.135, 0.12, 0.198, 0.159, 0.2, 0.103],
  between_nights: [0.159, 0.02, 0.2, 0.2, 0.225, 0.2, 0.158, 0.2, 0.138, 0.12, 0.204, 0.159, 0.2, 0.206],
  /** [K] by which readings are off beside all that. */
  model_error_k: 1.326,
  /** Measured runs, and how many aircraft they are of, by the installation that describes them. */
  engines: {
    "four-carburettor-160": { runs: 8, aircraft: 5 },
    "four-injected-200": { runs: 25, aircraft: 3 },
    "four-light-100": { runs: 1, aircraft: 1 },
    "six-carburettor-230": { runs: 1, aircraft: 1 },
    "six-injected-300": { runs: 8, aircraft: 4 },
  } as Readonly<Record<string, RestsOn>>,
} as const;

export interface RestsOn {
  readonly runs: number;
  readonly aircraft: number;
}
