import { expect } from "vitest";
import { pause, until } from "../devices/waiting.js";
import { type Hangar, HEAT_BEFORE, UNPLUG_BEFORE } from "./hangar.js";

/** [ms] a command may be late: the keeper looks once a second, and the machine may be busy. */
const LATE = 4000;

/** A departure is wanted, planned, heated for in time and written down. */
export async function aNight(hangar: Hangar): Promise<void> {
  const { heater } = hangar;
  const begin = Date.now();
  const departure = begin + HEAT_BEFORE + 5000;
  const wanted = await hangar.want(departure - begin);
  await until(() => heater.on, 20_000);
  const onAt = Date.now();
  expect(onAt).toBeGreaterThanOrEqual(departure - HEAT_BEFORE);
  expect(onAt).toBeLessThan(departure - HEAT_BEFORE + LATE);
  await until(() => !heater.on, 20_000);
  const offAt = Date.now();
  expect(offAt).toBeGreaterThanOrEqual(departure - UNPLUG_BEFORE - 1000);
  expect(offAt).toBeLessThan(departure - UNPLUG_BEFORE + LATE);
  await pause(500);
  expect(await hangar.events("plan-issued")).toMatchObject([{ of: wanted, heaters: ["sump-pad-220"] }]);
  expect(await commands(hangar)).toEqual(["off", "on", "off"]);
  expect((await hangar.events("switch-confirmed")).map(({ is }) => is)).toEqual(["off", "on", "off"]);
  expect(await hangar.events("fault")).toEqual([]);
  const now = Date.now();
  const rows = await hangar.store.readings({
    aircraft: "lynx",
    from: begin,
    to: now,
    resolution: "raw",
    limit: 1000,
  });
  expect(rows.length).toBeGreaterThan(20);
}

export async function commands(hangar: Hangar): Promise<string[]> {
  const told = (await hangar.events("switch-commanded")).map(({ to }) => to);
  return told.filter((to, i) => to !== told[i - 1]);
}
