import { type Findings, fault, type Path } from "../documents/index.js";
import type { BaseSetUp, HeaterSwitch, SwitchRequest } from "./set-up.js";
import { checkTopic } from "./set-up-base.js";

/** Switches that could put the wrong heater on, or could not say whether it is off. */
export function checkSwitches({ aircraft = [] }: Partial<BaseSetUp>, findings: Findings): void {
  const commanding = new Map<string, string>();
  const all = aircraft.flatMap(({ switches }) => switches);
  aircraft.forEach(({ id, switches }, i) => {
    const feeding = new Map<string, string>();
    switches.forEach((one, j) => {
      const path = ["aircraft", i, "switches", j];
      checkDevice(one.via, [...path, "via"], findings);
      const other = commanding.get(deviceOf(one));
      if (other === undefined) commanding.set(deviceOf(one), `${one.id} of ${id}`);
      else {
        const key = one.via.kind === "mqtt" ? "command_topic" : "on";
        const expected = `a command of its own: ${other} is commanded the same way`;
        fault(findings, [...path, "via", key], expected, shownDevice(one));
      }
      const asking = one.via.kind === "mqtt" ? one.via.ask?.topic : undefined;
      const asked = all.find((e) => e !== one && e.via.kind === "mqtt" && e.via.command_topic === asking);
      if (asked !== undefined) {
        const expected = `a topic that does not command another switch (${asked.id})`;
        fault(findings, [...path, "via", "ask", "topic"], expected, asking);
      }
      one.heaters.forEach((heater, k) => {
        const feeder = feeding.get(heater);
        if (feeder === undefined) feeding.set(heater, one.id);
        else fault(findings, [...path, "heaters", k], `a heater named once (${feeder} feeds it)`, heater);
      });
    });
  });
}

function deviceOf({ via }: HeaterSwitch): string {
  return via.kind === "mqtt" ? via.command_topic : requestText(via.on);
}

/** Without headers, which may hold secrets. */
function shownDevice({ via }: HeaterSwitch): string {
  return via.kind === "mqtt" ? via.command_topic : `${via.on.method} ${via.on.url}`;
}

function requestText({ method, url, headers = {}, body = "" }: SwitchRequest): string {
  return [`${method} ${url}`, ...Object.entries(headers).map((h) => h.join(": ")), body]
    .filter((part) => part !== "")
    .join(" ");
}

function checkDevice(via: HeaterSwitch["via"], path: Path, findings: Findings): void {
  if (via.kind === "mqtt") {
    checkTopic(via.command_topic, [...path, "command_topic"], findings);
    checkTopic(via.state_topic, [...path, "state_topic"], findings);
    if (via.state_topic === via.command_topic) {
      const expected = "another topic than command_topic: a command would confirm itself";
      fault(findings, [...path, "state_topic"], expected, via.state_topic);
    }
    if (via.ask !== undefined) {
      checkTopic(via.ask.topic, [...path, "ask", "topic"], findings);
      if (via.ask.topic === via.command_topic && via.ask.payload === via.on) {
        fault(findings, [...path, "ask", "payload"], "another payload than on", via.ask.payload);
      }
    }
    if (via.on === via.off) fault(findings, [...path, "off"], "another payload than on", via.off);
    if (via.state_on === via.state_off) {
      fault(findings, [...path, "state_off"], "another word than state_on", via.state_off);
    }
    return;
  }
  if (requestText(via.on) === requestText(via.off)) {
    fault(findings, [...path, "off"], "another request than on", `${via.off.method} ${via.off.url}`);
  }
  if (via.state.on === via.state.off) {
    fault(findings, [...path, "state", "off"], "another word than state.on", via.state.off);
  }
}
