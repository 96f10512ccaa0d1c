import { describe, expect, test } from "vitest";
import { createLiveFilter, type FilterState, sampledState } from "../../src/learning/index.js";
import { madeLog, trueTemps } from "../../src/learning/made-aircraft.js";
import { USUAL_DISCREPANCY } from "../../src/learning/sensor-noise.js";
import { every, HOUR, nextNight } from "./example-night.js";
import {
  asTold,
  COUNT,
  filter,
  fleet,
  nightOf,
  PAD,
  probes,
  readingsAt,
  rowAt,
  run,
  STEP,
  times,
  told,
  truth,
} from "./live-night.js";

const unplug = { do: "unplug", heaters: [PAD] } as const;

describe("estimating", () => {
  test("bands hold parts that no probe sees, hour after hour, and are narrow", () => {
    const parts = ["crankshaft", "crankcase", "barrels", "accessories", "battery", "sump", "cowl_air"];
    let held = 0;
    let count = 0;
    let width = 0;
    for (let a = 0; a < COUNT; a++) {
      run(madeLog(fleet, asTold, a, probes), (k, estimate) => {
        if (k % rowAt(1) !== 0) return;
        for (const part of parts) {
          const one = estimate().parts.find((p) => p.part === part);
          const temp = trueTemps(asTold, COUNT, a, part)[k];
          if (one === undefined) throw new Error(part);
          if (temp >= one.low && temp <= one.high) held++;
          if (part === "crankshaft") width += one.high - one.low;
          count++;
        }
      });
    }
    // 420 values, but only 6 aircraft whose parts err together.
    expect(held / count).toBeGreaterThan(0.8);
    expect(held / count).toBeLessThan(0.99);
    expect(width / (10 * COUNT)).toBeLessThan(7);
  });

  test("names every part of the network, and the oil film as the hottest wetted wall", () => {
    const { parts } = filter.estimate(filter.start());
    expect(parts.map(({ part }) => part)).toEqual([...filter.layout.parts, "oil_film"]);
    const immersed = createLiveFilter({ scenario: nextNight("immersion-250", false), sensors: probes });
    const log = madeLog(fleet, asTold, 0, probes);
    const state = run(log, undefined, { live: immersed, rows: [...times.keys()].slice(1, rowAt(6)) });
    const of = (name: string) => immersed.estimate(state).parts.find(({ part }) => part === name)?.mid ?? 0;
    expect(of("oil_film")).toBe(of("heater:immersion-250:element"));
    expect(of("oil_film")).toBeGreaterThan(of("sump") + 5);
  });

  test("members drawn from a state have its middles and spreads", () => {
    const state = run(madeLog(fleet, asTold, 0, probes), undefined, { rows: [1, 2, 3, 150, 200] });
    const members = 4000;
    const { temps, multipliers } = sampledState(filter.layout, state, members, 5);
    const { parts, size } = filter.layout;
    const i = parts.indexOf("crankshaft");
    const row = temps.subarray(i * members, (i + 1) * members);
    const mean = row.reduce((a, b) => a + b) / members;
    const sd = Math.sqrt(row.reduce((sum, t) => sum + (t - mean) ** 2, 0) / members);
    expect(Math.abs(mean - state.mean[i])).toBeLessThan(0.1);
    // The floor of the model's own error comes on top of the filter's.
    const expected = Math.sqrt(state.covariance[i * size + i] + USUAL_DISCREPANCY.floor ** 2);
    expect(sd / expected).toBeCloseTo(1, 1);
    expect([...multipliers.keys()]).toEqual([...filter.layout.posterior.names]);
  });

  test("goes on through a gap: wider meanwhile, narrow again after", () => {
    const log = madeLog(fleet, asTold, 1, probes);
    const width = (state: FilterState) => {
      const oil = filter.estimate(state).parts.find(({ part }) => part === "oil");
      return (oil?.high ?? Number.NaN) - (oil?.low ?? Number.NaN);
    };
    const before = run(log, undefined, { rows: [...times.keys()].slice(1, rowAt(5)) });
    const blind = filter.step(before, { time: 8 * HOUR, readings: new Map() }).state;
    const after = run(log, undefined, { from: blind, rows: every(1, 30).map((k) => rowAt(8) + 1 + k) });
    expect(width(blind)).toBeGreaterThan(1.5 * width(before));
    expect(width(after)).toBeLessThan(1.2 * width(before));
    const oil = filter.estimate(blind).parts.find(({ part }) => part === "oil");
    const temp = trueTemps(asTold, COUNT, 1, "oil")[rowAt(8)];
    expect(temp).toBeGreaterThan(oil?.low ?? Number.NaN);
    expect(temp).toBeLessThan(oil?.high ?? Number.NaN);
  });

  test("from a stored state it goes on to the last bit", () => {
    const log = madeLog(fleet, nightOf(truth([{ at: 5 * HOUR, change: unplug }])), 2, probes);
    const whole = run(log);
    let stored = JSON.stringify(filter.start());
    for (let from = 1; from < times.length; from += 25) {
      // A new filter, as after a power cut.
      const live = createLiveFilter({ scenario: told, sensors: probes });
      const rows = [...times.keys()].slice(from, from + 25);
      stored = JSON.stringify(run(log, undefined, { live, from: JSON.parse(stored), rows }));
    }
    expect(stored).toBe(JSON.stringify(whole));
    expect(whole.belief.deviation).toBe("heater-not-heating");
  });

  test("air measured beside the aircraft corrects what was told", () => {
    let state = filter.start();
    for (let k = 1; k <= 30; k++) {
      state = filter.step(state, { time: times[k], readings: new Map(), air: 243 }).state;
    }
    expect(filter.estimate(state).parts.find(({ part }) => part === "cowl_air")?.mid).toBeLessThan(
      filter.estimate(filter.start()).parts.find(({ part }) => part === "cowl_air")?.low ?? Number.NaN,
    );
  });

  test("a state that cannot be carried on is handed back with the reason", () => {
    const state = run(madeLog(fleet, asTold, 0, probes), undefined, { rows: [1, 2, 3] });
    const spoilt = { ...state, covariance: state.covariance.map((v, k) => (k === 0 ? -v : v)) };
    const step = filter.step(spoilt, { time: 10 * STEP, readings: new Map([["oil", 250]]) });
    expect(step.state).toBe(spoilt);
    expect(step.used).toEqual(["none", "none"]);
    expect(step.trouble).toContain("start the filter afresh");
    expect(filter.step(state, { time: 10 * STEP, readings: new Map() }).trouble).toBeUndefined();
  });

  test("a thermometer outside does not speak for the air of a hangar that the aircraft is believed in", () => {
    const log = madeLog(fleet, nightOf(truth([], "hangar")), 3, probes);
    let state = run(log, undefined, { rows: [...times.keys()].slice(1, rowAt(2)) });
    expect(state.belief.deviation).toBe("other-place");
    const before = state.mean[filter.layout.air];
    for (let k = rowAt(2); k < rowAt(3); k++) {
      state = filter.step(state, { time: times[k], readings: readingsAt(log, k), air: 246 }).state;
    }
    expect(Math.abs(state.mean[filter.layout.air] - before)).toBeLessThan(1);
  });

  test("refuses steps back, beyond the scenario and with probes it does not know", () => {
    const state = filter.step(filter.start(), { time: 60, readings: new Map() }).state;
    const step = (time: number, name = "oil") =>
      filter.step(state, { time, readings: new Map([[name, 250]]) });
    expect(() => step(60)).toThrow("invalid time: 60 s (expected after 60 s, up to 36000 s)");
    expect(() => step(Number.NaN)).toThrow("invalid time: NaN");
    expect(() => step(36_001)).toThrow("invalid time: 36001 s");
    expect(() => step(120, "spark")).toThrow("unknown probe: spark");
  });
});
