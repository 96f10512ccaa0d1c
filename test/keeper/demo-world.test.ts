import { expect, test } from "vitest";
import { makeLead } from "../../src/keeper/demo/lead.js";
import { makeAircraft } from "../../src/keeper/demo/world.js";
import { HOUR, OPENED, opening, stateOf } from "../base/example-base.js";

const state = stateOf(opening.events);
const parked = { place: "ramp", coversOn: ["insulated-cover"], heatersOn: [] } as const;
const heated = { ...parked, heatersOn: ["whole-engine-4", "in-cowl-400"] };

test("a made aircraft cools in the made weather and warms by its heater, the same from the same seed", () => {
  const [one, two] = [1, 2].map(() => makeAircraft(state, "lynx", { now: OPENED, seed: 14 }));
  const before = one.probed("oil", "oil");
  for (let t = 1; t <= 12; t++) one.advance(OPENED + t * 60_000, parked);
  two.advance(OPENED + 12 * 60_000, parked);
  one.temps.forEach((temp, i) => {
    expect(Math.abs(temp - two.temps[i])).toBeLessThan(0.05);
  });
  expect(one.probed("oil", "oil")).toBeLessThan(before + 1);
  const cold = one.probed("heads", "heads");
  for (let t = 13; t <= 72; t++) one.advance(OPENED + t * 60_000, heated);
  expect(one.probed("heads", "heads")).toBeGreaterThan(cold + 12);
  expect(one.time).toBe(OPENED + 72 * 60_000);
});

test("it goes on from where it was kept", () => {
  const one = makeAircraft(state, "lynx", { now: OPENED, seed: 14 });
  one.advance(OPENED + HOUR, heated);
  const resumed = JSON.parse(JSON.stringify({ time: one.time, temps: one.temps }));
  const two = makeAircraft(state, "lynx", { now: OPENED, seed: 14, resumed });
  for (const each of [one, two]) each.advance(OPENED + 2 * HOUR, parked);
  expect(two.temps).toEqual(one.temps);
});

test("a made lead goes off when it is told, when its on-time is not renewed, and when the broker is lost", async () => {
  const said: string[] = [];
  const lead = makeLead({ onTime: 60, onState: (is, why) => said.push(`${is}: ${why}`) });
  const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
  lead.command("on");
  await pause(40);
  lead.command("on");
  await pause(40);
  expect(lead.isOn).toBe(true);
  await pause(40);
  expect(lead.isOn).toBe(false);
  lead.command("on");
  lead.command("off");
  expect(lead.isOn).toBe(false);
  lead.command("on");
  lead.lost();
  lead.lost();
  expect(lead.isOn).toBe(false);
  expect(said).toEqual([
    ...["on: told to", "on: told to", "off: its on-time ended and was not renewed"],
    ...["on: told to", "off: told to", "on: told to", "off: the connection to the broker was lost"],
  ]);
});
