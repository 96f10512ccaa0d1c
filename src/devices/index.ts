export { type Clock, errorText, type Log } from "./device.js";
export type { ProbeLink, SwitchDriver } from "./driver.js";
export { PROBE_DRIVERS, SWITCH_DRIVERS } from "./drivers.js";
export { createSwitchKeeper, type SwitchKeeper } from "./switch-keeper.js";
