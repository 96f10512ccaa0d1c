export {
  COVERS,
  coverById,
  HEATERS,
  heaterById,
  INSTALLATIONS,
  installationById,
} from "./catalogue/index.js";
export { CAUTIONS } from "./cautions.js";
export type { Configuration } from "./configuration.js";
export type {
  Battery,
  Bodies,
  Body,
  Clearances,
  Contacts,
  Cowl,
  Cranking,
  Fit,
  Fuel,
  Installation,
  Origins,
  Propeller,
  ShutDown,
  StartLimits,
} from "./description.js";
export { ductPower, INPUT_NAMES, type Surroundings, writeInputs } from "./inputs.js";
export type { Caution, Cover, Duct, Heater, HeaterElement, Kit } from "./kit.js";
export { type InstallationNetwork, installationNetwork } from "./network.js";
export { oilById } from "./oil-store.js";
export { originOf } from "./origins.js";
export { PARAMETERS, type Parameter, type ParameterName } from "./parameters.js";
export { elementPart, isElementPart, PART_LABELS, PART_NAMES, type PartName } from "./parts.js";
