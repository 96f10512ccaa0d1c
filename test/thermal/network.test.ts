import { describe, expect, test } from "vitest";
import { heatCapacityAt, heatCapacitySlopeAt } from "../../src/thermal/capacity.js";
import { checkedNetwork, type Network } from "../../src/thermal/index.js";
import { EXAMPLE } from "./example-network.js";
import { storedHeat } from "./stored-heat.js";

const broken = (change: Partial<Network>) => () => checkedNetwork({ ...EXAMPLE, ...change });

describe("checkedNetwork names the fault", () => {
  test("duplicate part", () => {
    expect(broken({ parts: [...EXAMPLE.parts, { name: "oil", heatCapacity: 1 }] })).toThrow(
      "duplicate part or input: oil",
    );
  });
  test("part and input of one name", () => {
    expect(broken({ inputs: [...EXAMPLE.inputs, "oil"] })).toThrow("duplicate part or input: oil");
  });
  test.each([0, -1, Number.NaN])("heat capacity %s", (heatCapacity) => {
    const parts = [{ name: "pad", heatCapacity }, ...EXAMPLE.parts.slice(1)];
    expect(broken({ parts })).toThrow(`invalid heatCapacity of pad: ${heatCapacity}`);
  });
  test("link to nowhere", () => {
    const links = [{ name: "x", from: "oil", to: "moon", law: "conduction" as const, parameters: [] }];
    expect(broken({ links })).toThrow("unknown end of link x: moon");
  });
  test("ventilation without wind", () => {
    const links = [{ name: "x", from: "oil", to: "outside", law: "ventilation" as const, parameters: [] }];
    expect(broken({ links })).toThrow("missing windInput of link x");
  });
  test("source into an input", () => {
    expect(broken({ sources: [{ name: "s", part: "outside", parameters: [] }] })).toThrow(
      "unknown part of source s: outside",
    );
  });
});

describe("heat stores", () => {
  const snowy = { name: "skin", heatCapacity: 5000, heatCapacitySlope: 10, latentHeat: 3e5 };

  test("melting takes the latent heat and no more", () => {
    const across = storedHeat(snowy, 283.15) - storedHeat(snowy, 263.15);
    expect(across).toBeCloseTo(5000 * 20 + 3e5, 0);
  });
  test("stored heat is the integral of the heat capacity", () => {
    let sum = 0;
    const h = 0.01;
    for (let k = 0; k < 1500; k++) sum += heatCapacityAt(snowy, 265 + (k + 0.5) * h) * h;
    expect(sum).toBeCloseTo(storedHeat(snowy, 280) - storedHeat(snowy, 265), -1);
  });
  test.each([262, 272.9, 273.15, 273.8, 300])("slope of the capacity at %s K", (t) => {
    const difference = (heatCapacityAt(snowy, t + 1e-4) - heatCapacityAt(snowy, t - 1e-4)) / 2e-4;
    expect(heatCapacitySlopeAt(snowy, t)).toBeCloseTo(difference, 0);
  });
});
