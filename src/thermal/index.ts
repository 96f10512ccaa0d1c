export {
  checkedNetwork,
  type FilmFactor,
  type Link,
  type Network,
  type NetworkValues,
  type Part,
  type Source,
} from "./network.js";
export { powerLeft } from "./sources.js";
export { createThermalSystem, type ThermalSystem } from "./system.js";
export type { MemberValues } from "./system-numbers.js";
