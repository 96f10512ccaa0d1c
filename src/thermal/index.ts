export { heatCapacityAt, heatCapacitySlopeAt, storedHeat } from "./capacity.js";
export {
  checkedNetwork,
  type FilmFactor,
  type FluxLaw,
  type Link,
  MELTING_WIDTH,
  type Network,
  type NetworkValues,
  type Part,
  SMOOTHING_TEMPERATURE,
  type Source,
} from "./network.js";
export { powerLeft } from "./sources.js";
export { createThermalSystem, type MemberValues, type ThermalSystem } from "./system.js";
