/**
 * Uncertain numbers of a generic installation: each multiplies a group of conductances or stores. Priors are
 * log-normal around 1 with the standard deviation of the logarithm given here. They are project judgement, informed by
 * how widely fits to common-practice heating runs scattered; fitting an aircraft's own log narrows them.
 */
export interface Parameter {
  readonly name: string;
  /** Standard deviation of ln(multiplier). */
  readonly logSd: number;
  /** What it stands for, in plain words. */
  readonly label: string;
}

export const PARAMETERS = [
  { name: "heater_contact", logSd: 0.4, label: "how well the heater is bonded to what it heats" },
  { name: "heater_power", logSd: 0.05, label: "power really drawn (supply voltage, element tolerance)" },
  { name: "oil_film", logSd: 0.5, label: "heat passing from the sump wall into the oil" },
  { name: "sump_joint", logSd: 0.5, label: "conduction from sump to crankcase" },
  { name: "oil_inside", logSd: 0.6, label: "oil, vapour and drain paths from oil to case and crankshaft" },
  { name: "journals", logSd: 0.5, label: "conduction through main bearings" },
  { name: "flanges", logSd: 0.4, label: "conduction from crankcase to barrels and heads" },
  { name: "accessory_mounts", logSd: 0.5, label: "conduction to accessories" },
  { name: "engine_to_cowl_air", logSd: 0.35, label: "heat from engine surfaces to the air under the cowl" },
  { name: "cowl_skin_loss", logSd: 0.3, label: "heat through cowl and cover" },
  { name: "ventilation", logSd: 0.5, label: "air leaking through inlets, outlet and under the cover" },
  { name: "hub_loss", logSd: 0.4, label: "heat through propeller hub and blades" },
  { name: "battery_links", logSd: 0.5, label: "heat between battery, cowl and outside" },
  { name: "heat_stores", logSd: 0.12, label: "heat capacity of the engine's metal" },
] as const satisfies readonly Parameter[];

export type ParameterName = (typeof PARAMETERS)[number]["name"];
