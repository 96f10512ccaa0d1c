import type { ProbeDriver, SwitchDriver } from "./driver.js";
import { httpSwitches } from "./http-switch.js";
import { mqttProbes } from "./mqtt-probes.js";
import { mqttSwitches } from "./mqtt-switch.js";

// One of each kind in switching/protocols/all.ts.

export const SWITCH_DRIVERS: readonly SwitchDriver[] = [mqttSwitches, httpSwitches];
export const PROBE_DRIVERS: readonly ProbeDriver[] = [mqttProbes];
