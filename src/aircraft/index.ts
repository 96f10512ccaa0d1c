export { CALIBRATED } from "./calibrated.js";
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
export type { Battery, Cranking, Fit, Fuel, Installation, Origins } from "./description.js";
export { HEAT_SPREADS, isHeatSpread } from "./heat-spread.js";
export { ductPower, INPUT_NAMES, writeInputs } from "./inputs.js";
export {
  type Caution,
  type Cover,
  type Heater,
  type HeaterBasis,
  heaterBasis,
  type Kit,
  weakestBasis,
} from "./kit.js";
export { installationNetwork } from "./network.js";
export { oilById } from "./oil-store.js";
export { originOf } from "./origins.js";
export { PARAMETERS } from "./parameters.js";
export { elementPart, isElementPart, PART_NAMES, type PartName } from "./parts.js";
