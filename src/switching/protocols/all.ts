import { httpSwitch } from "./http-switch.js";
import { mqttProbe } from "./mqtt-probe.js";
import { mqttSwitch } from "./mqtt-switch.js";

// Every way to reach a switch or a probe: a file here and a line in its list, and a driver of the same kind in `devices`.

export const SWITCH_PROTOCOLS = [mqttSwitch, httpSwitch] as const;
export const PROBE_PROTOCOLS = [mqttProbe] as const;
