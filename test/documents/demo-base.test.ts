import { expect, test } from "vitest";
import { demoBase, readScenarioDocument } from "../../src/documents/index.js";

test("the demo base is the same from the same seed and another from another", () => {
  expect(demoBase(3)).toEqual(demoBase(3));
  expect(demoBase(3).scenarios[0].weather).not.toEqual(demoBase(4).scenarios[0].weather);
});

test("its aircraft are valid documents that plan for a departure, and say that they are invented", () => {
  const { scenarios, notice } = demoBase();
  expect(scenarios.map((s) => s.name)).toEqual(["Lynx", "Heron", "Marten", "Wren"]);
  for (const scenario of scenarios) {
    const reading = readScenarioDocument(scenario);
    expect(reading).toMatchObject({ ok: true, assumptions: [] });
    expect(reading.ok && reading.want).toBeTruthy();
    expect(scenario.note).toMatch(/invented/);
  }
  expect(notice).toMatch(/Invented/);
  expect(new Set(scenarios.map((s) => JSON.stringify([s.aircraft, s.kit]))).size).toBe(4);
});

test("any seed gives a winter night", () => {
  for (let seed = 0; seed < 50; seed++) {
    const points = demoBase(seed).scenarios[0].weather.points ?? [];
    expect(points.length).toBe(25);
    for (const { air_c, wind_mps = -1, dew_point_c = 99, cloud_fraction = -1 } of points) {
      expect(air_c).toBeGreaterThan(-35);
      expect(air_c).toBeLessThan(-8);
      expect(wind_mps).toBeGreaterThanOrEqual(0.5);
      expect(dew_point_c).toBeLessThan(air_c);
      expect(cloud_fraction).toBeGreaterThanOrEqual(0);
      expect(cloud_fraction).toBeLessThanOrEqual(1);
    }
  }
});
