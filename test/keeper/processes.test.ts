import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { mosquittoMissing, startMosquitto } from "../devices/brokers.js";
import { pause, until } from "../devices/waiting.js";
import { type Serving, serve } from "./serving.js";

// Real processes, really killed: the base in one, the made aircraft with their heaters in another. They run what is
// built (`npm run build`).

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

function newData(): string {
  const folder = mkdtempSync(join(tmpdir(), "soakline-serve-"));
  ends.push(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, "demo.sqlite");
}

async function served(...args: string[]): Promise<Serving> {
  const one = await serve(["--demo", ...args]);
  ends.push(() => one.kill("SIGKILL"));
  return one;
}

/** On by hand, as soon as the switch can be. */
async function switchOn({ post }: Serving, aircraft: string): Promise<void> {
  for (let n = 0; ; n++) {
    const response = await post(`/api/v1/switches/${aircraft}/lead`, { to: "on", minutes: 60 });
    if (response.ok) return;
    if (n > 100) throw new Error(await response.text());
    await pause(300);
  }
}

interface Now {
  readonly estimates: {
    readonly aircraft: string;
    readonly now: { readonly parts: Record<string, { p50_c: number }> };
  }[];
}

test("the demo heats as it is told and is seen to warm; killed, its heaters go off though nobody tells them", async () => {
  const one = await served("--data", newData(), "--speed", "20");
  // The bands heat the barrels first.
  const barrels = async () => {
    const { estimates } = (await one.get("/api/v1/now")) as Now;
    return estimates.find(({ aircraft }) => aircraft === "lynx")?.now.parts.cylinders?.p50_c ?? Number.NaN;
  };
  for (let n = 0; Number.isNaN(await barrels()) && n < 200; n++) await pause(300);
  const cold = await barrels();
  await switchOn(one, "lynx");
  await until(() => /lynx: heater on/.test(one.said()), 10_000);
  for (let n = 0; !((await barrels()) > cold + 5) && n < 150; n++) await pause(300);
  expect(await barrels()).toBeGreaterThan(cold + 5);
  expect(one.said()).not.toMatch(/lynx: heater off, its on-time/);
  const before = one.said().length;
  await one.kill("SIGKILL");
  await until(
    () => /lynx: heater off, the connection to the broker was lost/.test(one.said().slice(before)),
    3000,
  );
}, 150_000);

test("stopped, it turns its heaters off before it goes", async () => {
  const one = await served("--data", newData());
  await switchOn(one, "heron");
  await until(() => /heron: heater on/.test(one.said()), 10_000);
  expect(await one.kill("SIGTERM")).toBe(0);
  expect(one.said()).toMatch(/heron: heater off, told to[\s\S]*Stopped\./);
}, 90_000);

const missing = mosquittoMissing();
test.skipIf(missing !== undefined)(
  "killed beside a broker of its own, the last will turns the heater off; started again, off comes first and nothing acknowledged is lost",
  async () => {
    const broker = await startMosquitto();
    ends.push(() => broker.crash());
    const args = ["--data", newData(), "--broker", `mqtt://127.0.0.1:${broker.port}`];
    const one = await served(...args);
    await switchOn(one, "lynx");
    await until(() => /lynx: heater on/.test(one.said()), 10_000);
    const acknowledged: string[] = [];
    let killed = false;
    const writing = (async () => {
      while (!killed) {
        const id = randomUUID();
        const event = { kind: "note", id, at: new Date().toISOString(), note: `note ${acknowledged.length}` };
        const response = await one.post("/api/v1/events", { events: [event] }).catch(() => undefined);
        if (response?.ok) acknowledged.push(id);
      }
    })();
    await until(() => acknowledged.length > 30, 20_000);
    const before = one.said().length;
    await one.kill("SIGKILL");
    killed = true;
    await writing;
    await until(() => /lynx: heater off, told to/.test(one.said().slice(before)), 5000);
    const two = await served(...args);
    const page = (await two.get("/api/v1/export.json")) as {
      events: { id: string; kind: string; to?: string }[];
    };
    const ids = new Set(page.events.map(({ id }) => id));
    expect(acknowledged.filter((id) => !ids.has(id))).toEqual([]);
    await until(() => /lynx: heater off/.test(two.said()), 20_000);
    await pause(1000);
    expect(two.said()).not.toMatch(/lynx: heater on/);
    expect(await two.kill("SIGTERM")).toBe(0);
  },
  120_000,
);
