import { describe, expect, test } from "vitest";
import { FAULTS, type HeaterSwitch } from "../../src/logbook/index.js";
import {
  cautionsOf,
  checkProbe,
  checkSwitch,
  SWITCH_FAULTS,
  type SwitchDescription,
  secretNamesOf,
  switchRules,
} from "../../src/switching/index.js";
import { overMqtt, padSwitch } from "./machine.js";

const request = (url: string) => ({ method: "GET" as const, url });
const overHttp: SwitchDescription["via"] = {
  kind: "http",
  on: request("http://10.0.0.7/relay/0?turn=on&timer={on_time_s}&key={PAD_KEY}"),
  off: request("http://10.0.0.7/relay/0?turn=off&key={PAD_KEY}"),
  state: { request: request("http://10.0.0.7/relay/0"), pointer: "/ison", on: "true", off: "false" },
};

test("the logbook's switch is what this folder takes, and its faults are the logbook's", () => {
  const taken = (of: HeaterSwitch): SwitchDescription => of;
  expect(taken).toBeTypeOf("function");
  for (const fault of SWITCH_FAULTS) expect(FAULTS).toContain(fault);
});

describe("a switch that cannot be made safe is refused", () => {
  test("over HTTP without an on-time of the device", () => {
    const issues = checkSwitch(
      { ...padSwitch, via: { ...overHttp, on: request("http://10.0.0.7/on") } as never },
      ["aircraft", 0, "switches", 0],
    );
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ path: "aircraft[0].switches[0].on_time_s", received: "nothing" });
    expect(issues[0]?.expected).toContain("nobody switches it off when the server dies");
  });

  test("over HTTP with one it is taken, and its secrets are named", () => {
    const good = { ...padSwitch, on_time_s: 300, via: overHttp };
    expect(checkSwitch(good, [])).toEqual([]);
    expect(secretNamesOf(good)).toEqual(["PAD_KEY"]);
    expect(cautionsOf(good)).toEqual([]);
  });

  test("over MQTT without one it is taken, with a caution in words", () => {
    expect(checkSwitch(padSwitch, [])).toEqual([]);
    expect(cautionsOf(padSwitch).join()).toContain("it stays on");
  });

  const mqtt = (change: object): SwitchDescription => ({
    ...padSwitch,
    via: { ...overMqtt, ...change } as never,
  });
  test.each<[string, SwitchDescription, string]>([
    ["the same topic for command and state", mqtt({ state_topic: "hangar/lynx/pad/set" }), "via.state_topic"],
    ["a wildcard", mqtt({ state_topic: "hangar/+/state" }), "via.state_topic"],
    ["a topic of the broker", mqtt({ command_topic: "$SYS/x" }), "via.command_topic"],
    ["on and off the same", mqtt({ on: "X", off: "X" }), "via.off"],
    ["states the same", mqtt({ state_on: "1", state_off: "1" }), "via.state_off"],
    ["an on-time to send, but none given", mqtt({ on: "ON {on_time_s}" }), "on_time_s"],
    ["an on-time in off", { ...mqtt({ off: "OFF {on_time_s}" }), on_time_s: 60 }, "via.off"],
    ["an on-time too short to be renewed", { ...padSwitch, on_time_s: 29 }, "on_time_s"],
    ["a fixed on-time longer than the longest", { ...padSwitch, on_time_s: 3600 }, "on_time_s"],
    [
      "a place that is no secret",
      { ...padSwitch, on_time_s: 60, via: { ...overHttp, off: request("http://a/{off}") } as never },
      "via",
    ],
    [
      "on and off the same request",
      {
        ...padSwitch,
        on_time_s: 60,
        via: { ...overHttp, on: request("http://a/x"), off: request("http://a/x") } as never,
      },
      "via.off",
    ],
  ])("%s", (_, bad, path) => {
    expect(checkSwitch(bad, []).map((issue) => issue.path)).toEqual([path]);
  });

  test("JSON bodies are no places to fill in", () => {
    const body = {
      method: "POST" as const,
      url: "http://a/rpc",
      body: '{"on":true,"toggle_after":{on_time_s}}',
    };
    const via = { ...overHttp, on: body, off: { ...body, body: '{"on":false}' } } as never;
    expect(checkSwitch({ ...padSwitch, on_time_s: 60, via }, [])).toEqual([]);
  });
});

test("a probe's topic is one topic", () => {
  expect(checkProbe({ topic: "lynx/+/t" }, ["probes", 2])[0]?.path).toBe("probes[2].topic");
  expect(checkProbe({ topic: "lynx/sump/t" }, [])).toEqual([]);
  expect(checkProbe({}, [])).toEqual([]);
});

test("rules that are no numbers are refused", () => {
  expect(() => switchRules({ ...padSwitch, longest_on_min: Number.NaN }, [])).toThrow(
    "invalid longest_on_min",
  );
  expect(() => switchRules(padSwitch, [{ probe: "a", atMostC: Number.NaN }])).toThrow("invalid atMostC of a");
});
