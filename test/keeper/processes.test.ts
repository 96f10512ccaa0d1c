import { expect, test } from "vitest";
import { pause, until } from "../devices/waiting.js";
import { newData, served, switchOn } from "./processes.js";

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
