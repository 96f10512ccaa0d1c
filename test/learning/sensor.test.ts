import { describe, expect, test } from "vitest";
import { sensorsOf, type TemperatureLog, USUAL_SENSOR } from "../../src/learning/index.js";
import { followed, reachOf } from "../../src/learning/sensor.js";

const parts = ["sump", "oil", "barrels", "heads_front", "heads_rear", "heater:sump-pad-220:pad"];

describe("what a probe shows", () => {
  test("follows a step with its time constant and a ramp a lag behind", () => {
    const time = Float64Array.from({ length: 1201 }, (_, k) => k);
    const ramp = followed(
      time,
      time.map((t) => 0.01 * t),
      90,
    );
    expect(ramp[1200]).toBeCloseTo(0.01 * (1200 - 90), 4);
    const step = followed(
      time,
      time.map((t) => (t >= 1 ? 10 : 0)),
      90,
    );
    // The step rises within one second, on average half a second before it is up.
    expect(step[91]).toBeCloseTo(10 * (1 - Math.exp(-90.5 / 90)), 3);
  });

  test("is exact for straight pieces however long they are", () => {
    const fine = Float64Array.from({ length: 6001 }, (_, k) => k * 0.1);
    const shape = (t: number) => (t < 300 ? 2 * t : 600 - 0.5 * (t - 300));
    const coarse = Float64Array.of(0, 300, 600);
    const lag = 120;
    const close = followed(fine, fine.map(shape), lag);
    const wide = followed(coarse, coarse.map(shape), lag);
    expect(wide[1]).toBeCloseTo(close[3000], 8);
    expect(wide[2]).toBeCloseTo(close[6000], 8);
  });
});

describe("where a probe sits", () => {
  test("trade names stand for parts", () => {
    expect(reachOf("oil", parts)).toEqual([1]);
    expect(reachOf("heads", parts)).toEqual([3, 4]);
    expect(reachOf("cylinders", parts)).toEqual([2]);
    expect(reachOf("heater_surface", parts)).toEqual([5]);
  });

  test("refuses a part that is not there, and a heater surface that is not one", () => {
    expect(() => reachOf("propeller", parts)).toThrow(/^unknown part: propeller \(expected one of heads,/);
    expect(() => reachOf("heater_surface", [...parts, "heater:battery-blanket-60:blanket"])).toThrow(
      "unknown part: heater_surface",
    );
  });
});

describe("probes of a log", () => {
  const log: TemperatureLog = {
    time: Float64Array.of(0),
    probes: [
      { name: "T1", place: { part: "oil" }, temps: Float64Array.of(270) },
      { name: "OAT", place: "outside-air", temps: Float64Array.of(260) },
    ],
    findings: [],
    origin: "test",
  };

  test("those on parts are probes, with what is known of them", () => {
    expect(sensorsOf(log, { T1: { noise: 0.2 } })).toEqual([
      { name: "T1", place: { part: "oil" }, ...USUAL_SENSOR, noise: 0.2 },
    ]);
  });

  test.each([
    [{ T2: {} }, "unknown probe: T2 (expected one of T1, OAT)"],
    [{ T1: { noise: 0 } }, "invalid noise of probe T1: 0 (expected above 0)"],
    [{ T1: { lag: Number.NaN } }, "invalid lag of probe T1: NaN"],
    [{ T1: { offsetSd: -1 } }, "invalid offsetSd of probe T1: -1"],
  ])("refuses %j", (knowledge, message) => {
    expect(() => sensorsOf(log, knowledge)).toThrow(message);
  });
});
