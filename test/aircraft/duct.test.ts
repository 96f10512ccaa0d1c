import { expect, test } from "vitest";
import { AIR_HEAT_PER_VOLUME, heaterLinks } from "../../src/aircraft/heater-network.js";
import { type Heater, heaterById, installationById } from "../../src/aircraft/index.js";
import { HOUR, play } from "../validation/heating-runs.js";

const installation = installationById("four-carburettor-160");
const pointed = heaterById("ducted-fuel-12000");
const { nozzle_m: _, ...spread } = pointed.duct!;
const filling: Heater = { ...pointed, duct: spread };
const on = { place: "ramp" as const, coversOn: new Set<string>(), heatersOn: new Set([pointed.id]) };

test("a hose pointed at the sump gives it a small share of the flow, and the air under the cowl the rest", () => {
  const given = heaterLinks(pointed, installation).map(
    (rule) => [rule.link.to, rule.conductance(on)] as const,
  );
  const whole = pointed.duct!.flow_m3_per_s * AIR_HEAT_PER_VOLUME;
  const toSump = given.find(([to]) => to === "sump")![1];
  expect(given.reduce((sum, [, conductance]) => sum + conductance, 0)).toBeCloseTo(whole, 9);
  expect(toSump / whole).toBeGreaterThan(0.02);
  expect(toSump / whole).toBeLessThan(0.15);
  expect(heaterLinks(filling, installation).map(({ link }) => link.to)).toEqual(["cowl_air"]);
});

test("the oil warms faster under a jet than in air that only fills the cowl", () => {
  const [jet, air] = [pointed, filling].map((heater) => {
    const night = {
      ...{ installation, heaters: [heater], covers: [], place: "ramp" as const, wind: 2, air: -18 },
      ...{
        initial: { others: -18 },
        events: [{ at: 0, change: { do: "plug-in" as const, heaters: [heater.id] } }],
      },
    };
    return play(night, [HOUR / 3])[0].oil;
  });
  expect(jet).toBeGreaterThan(air + 5);
});
