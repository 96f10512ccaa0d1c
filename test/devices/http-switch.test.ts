import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { secretsFor } from "../../src/devices/http-request.js";
import { createHttpSwitch } from "../../src/devices/http-switch.js";
import type { HeaterSwitch } from "../../src/logbook/index.js";
import { Relay } from "./relay.js";
import { until } from "./waiting.js";

let relay: Relay;
let of: HeaterSwitch;
beforeEach(async () => {
  relay = new Relay();
  const url = await relay.start();
  const headers = { authorization: "Bearer {PAD_KEY}" };
  of = {
    id: "pad",
    name: "pad",
    heaters: ["sump-pad-220"],
    longest_on_min: 60,
    on_time_s: 300,
    via: {
      kind: "http",
      say: {
        on: {
          method: "POST",
          url: `${url}/r?turn=on&timer={on_time_s}&k={PAD_KEY}`,
          headers,
          body: '{"k":"{PAD_KEY}","s":{on_time_s}}',
        },
        off: { method: "GET", url: `${url}/r?turn=off`, headers },
      },
      hear: {
        request: { method: "GET", url: `${url}/r`, headers },
        pointer: "/ison",
        on: "true",
        off: "false",
      },
    },
  };
});
afterEach(() => relay.stop());

const secrets = new Map([["PAD_KEY", 'a&"b']]);

function watched(options: { timeoutS?: number; pollEveryS?: number } = {}) {
  const states: string[] = [];
  const links: boolean[] = [];
  const log: string[] = [];
  const device = createHttpSwitch(of, { fetch, secrets, ...options, onLog: (_, text) => log.push(text) });
  device.onState((is) => states.push(is));
  device.onLink((online) => links.push(online));
  return { device, states, links, log };
}

test("commands carry on-time and secrets, each as its place needs it; the state is asked for afterwards", async () => {
  const { device, states, links } = watched();
  await device.command("on", { onTimeS: 300 });
  expect(relay.seen.at(-1)).toEqual({
    url: "/r?turn=on&timer=300&k=a%26%22b",
    auth: 'Bearer a&"b',
    body: '{"k":"a&\\"b","s":300}',
  });
  await until(() => states.at(-1) === "on");
  expect(links).toEqual([true]);
  await device.command("off");
  await until(() => states.at(-1) === "off");
  await device.close();
});

test("on without its on-time is not sent", async () => {
  const { device } = watched();
  await expect(device.command("on")).rejects.toThrow("missing on-time");
  await device.close();
});

test("off does not wait for an on that hangs", async () => {
  const { device, states } = watched({ timeoutS: 20 });
  relay.mute = true;
  const on = device.command("on", { onTimeS: 60 });
  await until(() => relay.seen.some(({ url }) => url.includes("turn=on")));
  relay.mute = false;
  const begun = performance.now();
  const off = device.command("off");
  await expect(on).rejects.toThrow("no answer in time");
  await off;
  expect(performance.now() - begun).toBeLessThan(5000);
  await until(() => states.at(-1) === "off");
  await device.close();
});

test("an answer asked for before a command does not confirm it", async () => {
  relay.mute = true;
  const { device, states } = watched({ timeoutS: 20, pollEveryS: 600 });
  await until(() => relay.seen.length === 1);
  const answers: (() => void)[] = [];
  const slow = createHttpSwitch(of, {
    secrets,
    pollEveryS: 600,
    fetch: async (url) => {
      if (!url.endsWith("/r")) return new Response("{}");
      await new Promise<void>((resolve) => answers.push(resolve));
      return new Response(JSON.stringify({ ison: false }));
    },
  });
  const heard: string[] = [];
  slow.onState((is) => heard.push(is));
  await until(() => answers.length === 1);
  await slow.command("off");
  answers[0]?.();
  await new Promise((resolve) => setTimeout(resolve, 50));
  expect(heard).toEqual([]);
  await until(() => answers.length >= 2);
  answers[1]?.();
  await until(() => heard.length === 1);
  expect(states).toEqual([]);
  await Promise.all([slow.close(), device.close()]);
});

describe("failures", () => {
  test("name the template, never the secret", async () => {
    const { device, log } = watched();
    relay.status = 500;
    const failed = await device.command("on", { onTimeS: 9 }).catch((error: Error) => error.message);
    expect(failed).toMatch(/^POST .*turn=on&timer=\{on_time_s\}&k=\{PAD_KEY\}: answered 500$/);
    await until(() => log.length > 0);
    expect(log.join()).not.toContain("a&");
    expect(log.join()).not.toContain("a%26");
    await device.close();
  });

  test("a redirect is not followed: it could carry the secret elsewhere", async () => {
    const { device } = watched();
    relay.status = 302;
    await expect(device.command("off")).rejects.toThrow("GET ");
    expect(relay.seen.map(({ url }) => url)).not.toContain("/elsewhere");
    await device.close();
  });

  test("three questions without an answer: offline; an answer: online", async () => {
    const { device, links } = watched({ pollEveryS: 0.05 });
    await until(() => links.length === 1);
    relay.stateText = "on fire";
    await until(() => links.length === 2);
    relay.stateText = undefined;
    await until(() => links.length === 3);
    expect(links).toEqual([true, false, true]);
    await device.close();
  });

  test("a silent device is given up after the timeout", async () => {
    const { device } = watched({ timeoutS: 0.2 });
    relay.mute = true;
    await expect(device.command("off")).rejects.toThrow("no answer in time");
    await device.close();
  });
});

test("secrets come from the environment; a missing one is named", () => {
  expect(secretsFor(of, { SOAKLINE_SECRET_PAD_KEY: "x" })).toEqual(new Map([["PAD_KEY", "x"]]));
  expect(() => secretsFor(of, {})).toThrow(
    "missing SOAKLINE_SECRET_PAD_KEY (expected in the environment, for the switch pad)",
  );
});
