import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { startMosquitto } from "../devices/brokers.js";
import { pause, until } from "../devices/waiting.js";
import { ends, newData, served, switchOn } from "./processes.js";

test("killed beside a broker of its own, the last will turns the heater off; started again, off comes first and nothing acknowledged is lost", async () => {
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
}, 120_000);
