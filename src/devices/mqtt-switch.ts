import type { HeaterSwitch } from "../logbook/index.js";
import { ON_TIME_PLACE, type OnOff } from "../switching/index.js";
import { type BrokerOptions, connectBroker } from "./broker.js";
import { errorText, type SwitchDevice } from "./device.js";
import type { SwitchDriver } from "./driver.js";
import { stateFrom } from "./payload.js";

/** [s] A device that can be asked is asked so often, and is offline after three questions without an answer. */
const ASK_EVERY_S = 30;
const UNANSWERED = 3;

type MqttVia = Extract<HeaterSwitch["via"], { kind: "mqtt" }>;

/** A connection of its own for each switch: an MQTT connection has exactly one last will, which here is off. */
export const mqttSwitches: SwitchDriver = {
  kind: "mqtt",
  connect: (of, { brokerUrl, clientId, onLog }) => connectMqttSwitch(of, { url: brokerUrl, clientId, onLog }),
};

/** @internal for tests */
export function connectMqttSwitch(
  of: HeaterSwitch,
  options: Omit<BrokerOptions, "will">,
  askEveryS = ASK_EVERY_S,
): SwitchDevice {
  const via = mqttVia(of);
  const { say } = via;
  const broker = connectBroker({
    ...options,
    will: { topic: say.topic, payload: say.off, retain: say.keep ?? false },
  });
  const { onLog } = options;
  const stateHearers: ((is: OnOff) => void)[] = [];
  const linkHearers: ((online: boolean) => void)[] = [];
  let linked = false;
  let unanswered = 0;
  let said = false;

  const sayLink = () => {
    const online = linked && unanswered < UNANSWERED;
    if (online === said) return;
    said = online;
    for (const hear of linkHearers) hear(online);
  };
  const askState = () => {
    if (via.ask === undefined || !linked) return;
    unanswered++;
    sayLink();
    broker.publish(via.ask.topic, via.ask.payload).catch(() => undefined);
  };
  const asking = via.ask === undefined ? undefined : setInterval(askState, askEveryS * 1000);

  broker.subscribe([via.hear.topic], ({ payload, retained }) => {
    // The broker's memory: it may be from before the last command, or from a device long dead.
    if (retained) return;
    const is = stateFrom(payload, via.hear.pointer, via.hear);
    if (typeof is !== "string") {
      onLog?.("warning", `${via.hear.topic}: expected ${is.expected}, received ${is.received}`);
      return;
    }
    unanswered = 0;
    sayLink();
    for (const hear of stateHearers) hear(is);
  });
  broker.onLink((online) => {
    linked = online;
    unanswered = 0;
    sayLink();
  });

  return {
    async command(to, { onTimeS } = {}) {
      const payload = to === "off" ? say.off : onPayload(via, onTimeS);
      // On is never kept by the broker: a heater must not come on because a broker or a device was restarted.
      await broker.publish(say.topic, payload, { retain: to === "off" && say.keep === true });
      if (via.ask) {
        broker.publish(via.ask.topic, via.ask.payload).catch((error) => onLog?.("warning", errorText(error)));
      }
    },
    onState: (hear) => void stateHearers.push(hear),
    onLink(hear) {
      linkHearers.push(hear);
      if (said) hear(true);
    },
    async close(options) {
      clearInterval(asking);
      await broker.close(options);
    },
  };
}

function onPayload({ say: { on } }: MqttVia, onTimeS: number | undefined): string {
  if (!on.includes(ON_TIME_PLACE)) return on;
  if (onTimeS === undefined)
    throw new Error(`missing on-time (expected one, since on says ${ON_TIME_PLACE})`);
  return on.replaceAll(ON_TIME_PLACE, String(onTimeS));
}

function mqttVia(of: HeaterSwitch): MqttVia {
  if (of.via.kind !== "mqtt") throw new Error(`invalid switch ${of.id}: ${of.via.kind} (expected mqtt)`);
  return of.via;
}
