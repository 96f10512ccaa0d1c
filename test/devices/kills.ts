import { type ChildProcess, fork } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import type { HeaterSwitch } from "../../src/logbook/index.js";
import { createRandom } from "../../src/numerics/index.js";
import type { TestBroker } from "./brokers.js";
import { padSwitch } from "./heater.js";
import { pause, until } from "./waiting.js";

// Real processes, really killed: a server with one switch, and a heater that writes down when it was on.
// They run what is built (`npm run build`).

const random = createRandom(20_261_130);
/** [ms] from the kill to the heater's off: a system call, a message through the broker, a busy machine. */
const OFF_WITHIN_MS = 2000;

const plain: HeaterSwitch = {
  ...padSwitch,
  longest_on_min: 0.1,
  rest_min: 0.025,
  confirm_within_s: 3,
  via: {
    kind: "mqtt",
    say: { topic: "lynx/pad/set", on: "ON", off: "OFF" },
    hear: { topic: "lynx/pad/state", on: "on", off: "off" },
  },
};
const LONGEST_MS = 6000;
/** [ms] One and a half times the keepalive of 2 s, and what brokers take to look: up to 6.1 s with Mosquitto, as measured. */
const DEAD_LINK_NOTICED_MS = 1.5 * 2000 + 8000;

const ends: (() => Promise<unknown> | unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

/** @param rounds with a kill each */
export function describeKills(name: string, startBroker: () => Promise<TestBroker>, rounds: number): void {
  describe(`over ${name}`, () => testsOver(startBroker, rounds));
}

function testsOver(startBroker: () => Promise<TestBroker>, rounds: number): void {
  test(`killed ${rounds} times at random moments: never on past its limit, off soon after every kill`, async () => {
    const hangar = await hangarWith(startBroker, plain);
    let onWhenKilled = 0;
    let latest = 0;
    for (let round = 0; round < rounds; round++) {
      const keeper = await hangar.startKeeper();
      await pause(random.uniform() * (round % 5 === 0 ? LONGEST_MS + 2000 : 2500));
      const wasOn = hangar.isOn();
      await killed(keeper);
      const at = Date.now();
      if (!wasOn) continue;
      onWhenKilled++;
      await until(() => !hangar.isOn(), 10_000);
      latest = Math.max(latest, (hangar.changes().at(-1)?.at ?? Number.NaN) - at);
    }
    expect(latest, "ms from a kill to off").toBeLessThan(OFF_WITHIN_MS);
    expect(onWhenKilled, "rounds in which it was on when killed").toBeGreaterThan(0);
    expect(longestBetweenRests(hangar.changes(), 1500)).toBeLessThanOrEqual(LONGEST_MS);
    console.info(`on when killed: ${onWhenKilled} of ${rounds}; latest off ${latest} ms after the kill`);
  }, 300_000);

  test("left alone: off before its limit, a rest, and on again", async () => {
    const hangar = await hangarWith(startBroker, plain);
    await hangar.startKeeper();
    await until(() => hangar.changes().length >= 3, 30_000);
    const [on, off, again] = hangar.changes().map(({ at }) => at) as [number, number, number];
    expect(off - on).toBeGreaterThan(LONGEST_MS / 2);
    expect(off - on).toBeLessThanOrEqual(LONGEST_MS);
    expect(again - off).toBeGreaterThanOrEqual(1500 - 100);
  }, 60_000);

  test("asked to stop: off is confirmed before it ends", async () => {
    const hangar = await hangarWith(startBroker, plain);
    const keeper = await hangar.startKeeper();
    await until(() => hangar.isOn());
    keeper.kill("SIGTERM");
    const code = await new Promise((resolve) => keeper.once("exit", resolve));
    expect(code).toBe(0);
    expect(hangar.isOn()).toBe(false);
  }, 60_000);

  test("hung: the broker says off when its pings stay away, though the process still lives", async () => {
    const hangar = await hangarWith(startBroker, plain);
    const keeper = await hangar.startKeeper();
    await until(() => hangar.isOn());
    keeper.kill("SIGSTOP");
    const at = Date.now();
    await until(() => !hangar.isOn(), 30_000);
    expect((hangar.changes().at(-1)?.at ?? 0) - at).toBeLessThan(DEAD_LINK_NOTICED_MS);
    keeper.kill("SIGCONT");
  }, 60_000);

  test("server and broker die together: only the on-time of the device is left, and it is enough", async () => {
    const timed: HeaterSwitch = {
      ...plain,
      on_time_s: 3,
      confirm_within_s: 1,
      via: { ...plain.via, say: { ...plain.via.say, on: "ON {on_time_s}" } } as HeaterSwitch["via"],
    };
    const hangar = await hangarWith(startBroker, timed);
    const keeper = await hangar.startKeeper();
    await until(() => hangar.isOn());
    await pause(1500);
    await Promise.all([killed(keeper), hangar.broker.crash()]);
    const at = Date.now();
    await until(() => !hangar.isOn(), 10_000);
    expect((hangar.changes().at(-1)?.at ?? 0) - at).toBeLessThanOrEqual(3000 + 300);
    await hangar.broker.start();
  }, 60_000);
}

interface Logged {
  readonly at: number;
  readonly on: boolean;
}

async function hangarWith(startBroker: () => Promise<TestBroker>, of: HeaterSwitch) {
  const broker = await startBroker();
  ends.push(() => broker.crash());
  const folder = mkdtempSync(join(tmpdir(), "soakline-kill-"));
  ends.push(() => rmSync(folder, { recursive: true, force: true }));
  const log = join(folder, "heater.log");
  const changes = (): Logged[] =>
    existsSync(log)
      ? readFileSync(log, "utf8")
          .split("\n")
          .filter((line) => line !== "")
          .map((line) => JSON.parse(line) as Logged)
      : [];
  await started("heater.mjs", [String(broker.port), log]);
  return {
    broker,
    changes,
    isOn: () => changes().at(-1)?.on ?? false,
    startKeeper: () =>
      started("keeper.mjs", [String(broker.port), join(folder, "state.json"), JSON.stringify(of)]),
  };
}

async function started(fixture: string, args: readonly string[]): Promise<ChildProcess> {
  const child = fork(new URL(`fixtures/${fixture}`, import.meta.url), [...args], { stdio: "inherit" });
  ends.push(() => killed(child));
  await new Promise<void>((resolve, reject) => {
    child.on("message", (message) => {
      if (message === "ready") resolve();
    });
    child.once("exit", (code) => reject(new Error(`${fixture} ended with ${code}`)));
  });
  return child;
}

async function killed(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise((resolve) => child.once("exit", resolve));
  child.kill("SIGKILL");
  await ended;
}

/** [ms] The most on-time, added up over all breaks shorter than a rest. */
function longestBetweenRests(changes: readonly Logged[], restMs: number): number {
  let longest = 0;
  let sum = 0;
  changes.forEach(({ at, on }, i) => {
    const lasted = (changes[i + 1]?.at ?? Date.now()) - at;
    if (on) sum += lasted;
    else if (lasted >= restMs) sum = 0;
    longest = Math.max(longest, sum);
  });
  return longest;
}
