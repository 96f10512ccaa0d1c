export {
  type Broker,
  type BrokerMessage,
  type BrokerOptions,
  connectBroker,
  type Will,
} from "./broker.js";
export { type Clock, type Log, type SwitchDevice, systemClock } from "./device.js";
export { type Fetch, type Secrets, secretsFor } from "./http-request.js";
export { createHttpSwitch, type HttpSwitchOptions } from "./http-switch.js";
export { ASK_EVERY_S, connectMqttSwitch, createMqttSwitch, offWill } from "./mqtt-switch.js";
export {
  type ProbeCount,
  type ProbeIssue,
  type ProbeReader,
  probeReader,
  type ReadTemperature,
} from "./probe-reader.js";
export { createSwitchKeeper, type SwitchKeeper, type SwitchKeeperOptions } from "./switch-keeper.js";
