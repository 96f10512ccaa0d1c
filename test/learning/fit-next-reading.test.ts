import { describe, expect, test } from "vitest";
import { createBatch } from "../../src/learning/fit-members.js";
import { nextReadings, USUAL_SENSOR } from "../../src/learning/index.js";
import { USUAL_DISCREPANCY } from "../../src/learning/sensor-noise.js";
import { createRandom } from "../../src/numerics/index.js";
import { type MultiplierPosterior, PRIOR, timelineOf } from "../../src/simulation/index.js";
import { HOUR, nextNight } from "./example-night.js";

const scenario = nextNight("sump-pad-220", false);
const wanted = { part: "crankshaft", at: 9 * HOUR };
const times = [HOUR, 5 * HOUR, 7 * HOUR];
/** Priors a third as wide, so that straight lines do. */
const posterior: MultiplierPosterior = { ...PRIOR, factor: PRIOR.factor.map((row) => row.map((v) => v / 3)) };
const request = { scenario, posterior, wanted, times };

describe("the next reading", () => {
  const next = nextReadings(request);

  test("each part comes once, the most useful first", () => {
    expect(next.readings.map(({ part }) => part).sort()).toEqual(
      ["accessories", "barrels", "battery", "crankcase", "heads", "hub", "oil", "sump"].sort(),
    );
    const after = next.readings.map(({ sdAfter }) => sdAfter);
    expect(after).toEqual([...after].sort((a, b) => a - b));
    expect(after[0]).toBeLessThan(0.95 * next.sd);
    expect(after[after.length - 1]).toBeLessThanOrEqual(next.sd);
  });

  test("cuts the scatter of drawn members by what it promises", () => {
    const members = 1500;
    const random = createRandom(4);
    const batch = createBatch({ scenario });
    const multipliers = new Map(
      posterior.names.map((name, i): [string, Float64Array] => [
        name,
        Float64Array.from({ length: members }, () => Math.exp(posterior.factor[i][i] * random.normal())),
      ]),
    );
    const state = new Float64Array(batch.parts.length * members);
    const common = Float64Array.from({ length: members }, () => scenario.initial.sd * random.normal());
    const probed = ["oil", "sump", "crankcase", "barrels", "accessories", "hub", "battery"];
    const heads = Float64Array.from({ length: members }, () => 1.5 * random.normal());
    batch.parts.forEach((part, i) => {
      for (let m = 0; m < members; m++) {
        const own = part.startsWith("heads_") ? heads[m] : probed.includes(part) ? 1.5 * random.normal() : 0;
        state[i * members + m] = 250 + common[m] + own;
      }
    });
    const result = batch.advance({
      ...{ members, multipliers, state, from: 0, to: wanted.at, sampleTimes: [7 * HOUR, wanted.at] },
      airBias: Float64Array.from({ length: members }, () => random.normal()),
      timelines: [timelineOf(scenario.initial.configuration, scenario.events)],
      tolerance: 0.02,
    });
    const row = (part: string, s: number) => {
      const at = (s * batch.parts.length + batch.parts.indexOf(part)) * members;
      return result.samples.subarray(at, at + members);
    };
    const target = row("crankshaft", 1);
    expect(Math.abs(sdOf(target) / next.sd - 1)).toBeLessThan(0.1);
    for (const part of ["crankcase", "oil"]) {
      const temps = row(part, 0);
      const air = scenario.weather.tempAir[7];
      const rise = temps.reduce((a, b) => a + b) / members - air;
      const { floor, share } = USUAL_DISCREPANCY;
      const own = Math.hypot(USUAL_SENSOR.noise, USUAL_SENSOR.offsetSd, floor, share * rise);
      const readings = temps.map((temp) => temp + own * random.normal());
      const left = sdOf(target) * Math.sqrt(1 - correlation(target, readings) ** 2);
      const promised = nextReadings({ ...request, times: [7 * HOUR], parts: [part] }).readings[0].sdAfter;
      expect(Math.abs(promised / left - 1), part).toBeLessThan(0.1);
    }
  });

  test("says how fast an earlier plug-in warms, by running one", () => {
    const warmer = nextReadings({
      ...request,
      scenario: {
        ...scenario,
        events: scenario.events.map((event) => ({ ...event, at: event.at - 1800 })),
      },
    });
    expect(next.perLead).toBeGreaterThan(0);
    // A kelvin or two an hour, falling off the longer it is on.
    expect((next.perLead ?? 0) * HOUR).toBeGreaterThan(0.3);
    expect((next.perLead ?? 0) * HOUR).toBeLessThan(6);
    expect(warmer.perLead).toBeLessThan(next.perLead ?? 0);
    expect(nextReadings({ ...request, scenario: { ...scenario, events: [] } }).perLead).toBeUndefined();
  });

  test("refuses times after the one that is wanted", () => {
    expect(() => nextReadings({ ...request, times: [10 * HOUR] })).toThrow("invalid times: 32400, 36000 s");
  });
});

function sdOf(values: Float64Array): number {
  const mean = values.reduce((a, b) => a + b) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length);
}

function correlation(a: Float64Array, b: Float64Array): number {
  const mean = (values: Float64Array) => values.reduce((x, y) => x + y) / values.length;
  const [ma, mb] = [mean(a), mean(b)];
  return a.reduce((sum, v, k) => sum + (v - ma) * (b[k] - mb), 0) / (a.length * sdOf(a) * sdOf(b));
}
