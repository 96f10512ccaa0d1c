/**
 * Uncertain numbers of a generic installation: each multiplies a group of conductances or stores. What is judged of them
 * here stands before any measured engine: log-normal around the catalogue's own numbers, informed by how widely
 * fits to common-practice heating runs scattered. What measured engines made of it is in calibrated.ts.
 */
export interface Parameter {
  readonly name: string;
  /** Standard deviation of ln(multiplier). */
  readonly logSd: number;
}

export const PARAMETERS = [
  { name: "heater_contact", logSd: 0.4 },
  { name: "heater_power", logSd: 0.05 },
  { name: "oil_film", logSd: 0.5 },
  { name: "sump_joint", logSd: 0.5 },
  { name: "oil_inside", logSd: 0.6 },
  { name: "journals", logSd: 0.5 },
  { name: "flanges", logSd: 0.4 },
  { name: "accessory_mounts", logSd: 0.5 },
  { name: "engine_to_cowl_air", logSd: 0.35 },
  { name: "cowl_skin_loss", logSd: 0.3 },
  { name: "ventilation", logSd: 0.5 },
  { name: "hub_loss", logSd: 0.4 },
  { name: "battery_links", logSd: 0.5 },
  { name: "heat_stores", logSd: 0.25 },
] as const satisfies readonly Parameter[];

export type ParameterName = (typeof PARAMETERS)[number]["name"];
