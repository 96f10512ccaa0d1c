/** Origin of what a heater's numbers rest on. */
export const MEASURED_RUNS =
  "runs of data/measured-runs in which a real engine was heated by its kind, counted";
