import { describe, expect, test } from "vitest";
import { FAULTS } from "../../src/logbook/events.js";
import type { HeaterSwitch } from "../../src/logbook/index.js";
import type { SwitchDescription } from "../../src/switching/description.js";
import { SWITCH_FAULTS } from "../../src/switching/faults.js";
import {
  canBeToldOff,
  cautionsOf,
  checkProbe,
  checkSwitch,
  secretNamesOf,
  switchRules,
} from "../../src/switching/index.js";
import type { SwitchVia } from "../../src/switching/protocols/index.js";
import { english } from "../../src/words/index.js";
import { overMqtt, padSwitch } from "./machine.js";

const request = (url: string) => ({ method: "GET" as const, url });
const overHttp: Extract<SwitchVia, { kind: "http" }> = {
  kind: "http",
  say: {
    on: request("http://10.0.0.7/relay/0?turn=on&timer={on_time_s}&key={PAD_KEY}"),
    off: request("http://10.0.0.7/relay/0?turn=off&key={PAD_KEY}"),
  },
  hear: { request: request("http://10.0.0.7/relay/0"), pointer: "/ison", on: "true", off: "false" },
};

function http(say: object, asked = overHttp.hear.request): SwitchDescription["via"] {
  return { ...overHttp, say: { ...overHttp.say, ...say }, hear: { ...overHttp.hear, request: asked } };
}

test("the logbook's switch is what this folder takes, and its faults are the logbook's", () => {
  const taken = (of: HeaterSwitch): SwitchDescription => of;
  expect(taken).toBeTypeOf("function");
  for (const fault of SWITCH_FAULTS) expect(FAULTS).toContain(fault);
});

describe("a switch that cannot be made safe is refused", () => {
  test("over HTTP without an on-time of the device", () => {
    const issues = checkSwitch({ ...padSwitch, via: http({ on: request("http://10.0.0.7/on") }) }, [
      "aircraft",
      0,
      "switches",
      0,
    ]);
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
    expect(cautionsOf(padSwitch).map(english).join()).toContain("the heater stays on");
  });

  const mqtt = (say: object, more: object = {}): SwitchDescription => ({
    ...padSwitch,
    via: { ...overMqtt, ...more, say: { ...overMqtt.say, ...say } } as never,
  });
  const hearing = (hear: object) => mqtt({}, { hear: { ...overMqtt.hear, ...hear } });
  const timed = (via: SwitchDescription["via"]) => ({ ...padSwitch, on_time_s: 60, via });
  test.each<[string, SwitchDescription, string]>([
    ["the same topic for both ways", hearing({ topic: "hangar/lynx/pad/set" }), "via.hear.topic"],
    ["a wildcard", hearing({ topic: "hangar/+/state" }), "via.hear.topic"],
    ["a topic of the broker", mqtt({ topic: "$SYS/x" }), "via.say.topic"],
    ["on and off the same", mqtt({ on: "X", off: "X" }), "via.say.off"],
    [
      "off that is on for a time",
      { ...mqtt({ on: "{on_time_s}", off: "60" }), on_time_s: 60 },
      "via.say.off",
    ],
    ["states the same", hearing({ on: "1", off: "1" }), "via.hear.off"],
    ["an on-time to send, but none given", mqtt({ on: "ON {on_time_s}" }), "on_time_s"],
    ["an on-time in off", { ...mqtt({ off: "OFF {on_time_s}" }), on_time_s: 60 }, "via.say.off"],
    ["a place in off that nobody fills in", mqtt({ off: "{PAD_OFF}" }), "via.say.off"],
    [
      "a question that is the on command",
      mqtt({}, { ask: { topic: "hangar/lynx/pad/set", payload: "ON" } }),
      "via.ask.payload",
    ],
    ["an on-time too short to be renewed", { ...padSwitch, on_time_s: 29 }, "on_time_s"],
    ["a fixed on-time longer than the longest", { ...padSwitch, on_time_s: 3600 }, "on_time_s"],
    ["a place that is no secret", timed(http({ off: request("http://a/{off}") })), "via"],
    [
      "on and off the same request",
      timed(http({ on: request("http://a/x"), off: request("http://a/x") })),
      "via.say.off",
    ],
    [
      "off that is on for a time, over HTTP",
      timed(http({ off: request("http://10.0.0.7/relay/0?turn=on&timer=9&key={PAD_KEY}") })),
      "via.say.off",
    ],
    [
      "a question that is the on request, sent every few seconds",
      timed(http({ on: request("http://10.0.0.7/relay/0") })),
      "via.hear.request",
    ],
    [
      "a question that is the off request",
      timed(http({ off: request("http://10.0.0.7/relay/0") })),
      "via.hear.request",
    ],
    [
      "an on-time in the question",
      timed(http({}, request("http://10.0.0.7/relay/0?for={on_time_s}"))),
      "via.hear.request",
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
    expect(checkSwitch(timed(http({ on: body, off: { ...body, body: '{"on":false}' } })), [])).toEqual([]);
    const mqttBody = mqtt({ on: '{"on":true,"for":{on_time_s}}', off: '{"on":false}' });
    expect(checkSwitch({ ...mqttBody, on_time_s: 60 }, [])).toEqual([]);
  });

  test("a time of 0 is off, not on for a time", () => {
    expect(checkSwitch({ ...mqtt({ on: "{on_time_s}", off: "0" }), on_time_s: 60 }, [])).toEqual([]);
  });

  test("what could come on by off or by a question is best left alone; the rest is told off", () => {
    expect(canBeToldOff(padSwitch)).toBe(true);
    expect(canBeToldOff({ ...padSwitch, via: overHttp })).toBe(true);
    expect(canBeToldOff(mqtt({ on: "X", off: "X" }))).toBe(false);
    expect(canBeToldOff(mqtt({}, { ask: { topic: "hangar/lynx/pad/set", payload: "ON" } }))).toBe(false);
    expect(canBeToldOff(timed(http({ on: request("http://10.0.0.7/relay/0") })))).toBe(false);
    expect(canBeToldOff(timed(http({ on: request("http://a/x"), off: request("http://a/x") })))).toBe(false);
  });
});

test("a probe's topic is one topic", () => {
  expect(checkProbe({ via: { kind: "mqtt", topic: "lynx/+/t" } }, ["probes", 2])[0]?.path).toBe(
    "probes[2].via.topic",
  );
  expect(checkProbe({ via: { kind: "mqtt", topic: "lynx/sump/t" } }, [])).toEqual([]);
  expect(checkProbe({}, [])).toEqual([]);
});

test("rules that are no numbers are refused", () => {
  expect(() => switchRules({ ...padSwitch, longest_on_min: Number.NaN }, [])).toThrow(
    "invalid longest_on_min",
  );
  expect(() => switchRules(padSwitch, [{ probe: "a", atMostC: Number.NaN }])).toThrow("invalid atMostC of a");
});
