import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { installationById } from "../../src/aircraft/index.js";
import { saturationPressureOverStablePhase, vapourPressureFromDewPoint } from "../../src/properties/index.js";
import { centralDraws, simulate } from "../../src/simulation/index.js";
import {
  caseGeometry,
  caseMoisture,
  type PartCourse,
  WATER_IN_OIL_WINTER,
  WET_TIME_LIMITS,
} from "../../src/starting/index.js";
import { type Exchange, settle } from "../../src/starting/vapour-step.js";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { coldSoaked, HOUR, steadyWeather } from "../simulation/example-scenario.js";

const geometry = caseGeometry(installationById("four-carburettor-160"));
const winterOil = { inOil: WATER_IN_OIL_WINTER * geometry.oilMass, onSurfaces: 0 };
const k = kelvinFromCelsius;
const PARTS = ["oil", "crankcase", "crankshaft", "barrels"] as const;
type Temps = readonly [oil: number, crankcase: number, crankshaft: number, barrels: number];

/** A course in °C, one entry for each sample `step` [s] apart. */
function courseOf(samples: readonly Temps[], step = 600): PartCourse {
  return {
    time: samples.map((_, s) => s * step),
    parts: PARTS,
    members: 1,
    temps: samples.flat().map(k),
  };
}

function outsideOf(course: PartCourse, air: number, dewPoint: number) {
  const samples = course.time.length;
  return { tempAir: Array(samples).fill(k(air)), tempDewPoint: Array(samples).fill(k(dewPoint)) };
}

const last = (values: ArrayLike<number>) => values[values.length - 1]!;
const WEEK = 7 * 24 * 6;
const COLD: Temps = [-9, -9, -9, -9];
/** What a sump pad alone holds: warm oil, cool walls. */
const PAD: Temps = [45, 12, 12, 8];

describe("one step of the vapour balance", () => {
  const exchange = fc.record({
    conductance: fc.double({ min: 1e-10, max: 1e-6, noNaN: true }),
    pressure: fc.double({ min: 1, max: 5000, noNaN: true }),
    available: fc.double({ min: 0, max: 1e-3, noNaN: true }),
    open: fc.boolean(),
  });

  test("loses no water, and nobody gives more than there is", () => {
    fc.assert(
      fc.property(
        fc.array(exchange, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0, max: 5000, noNaN: true }),
        (exchanges, pressure) => {
          const capacity = 8e-8;
          const { end, given } = settle(pressure, capacity, exchanges, 60);
          const sum = given.reduce((a, b) => a + b, 0);
          expect(capacity * (end - pressure)).toBeCloseTo(sum, 12);
          given.forEach((mass, i) => {
            expect(mass).toBeLessThanOrEqual(exchanges[i]!.available + 1e-18);
            if (!exchanges[i]!.open) expect(mass).toBe(0);
          });
        },
      ),
    );
  });

  test("two halves are one whole, and a long step ends between the exchanges", () => {
    const exchanges: Exchange[] = [
      { conductance: 1e-9, pressure: 1000, available: 1, open: true },
      { conductance: 3e-9, pressure: 200, available: 1, open: true },
    ];
    const whole = settle(700, 8e-8, exchanges, 60);
    const half = settle(700, 8e-8, exchanges, 30);
    const rest = settle(half.end, 8e-8, exchanges, 30);
    expect(rest.end).toBeCloseTo(whole.end, 9);
    expect(half.given[0]! + rest.given[0]!).toBeCloseTo(whole.given[0]!, 15);
    expect(settle(700, 8e-8, exchanges, 1e6).end).toBeCloseTo(400, 6);
  });

  test("a closed case keeps its vapour", () => {
    expect(settle(700, 8e-8, [{ conductance: 1e-9, pressure: 1, available: 0, open: false }], 60)).toEqual({
      end: 700,
      mean: 700,
      given: [0],
    });
  });
});

describe("water in the case", () => {
  test("is conserved: what left oil and walls went out of the breather or is in the air", () => {
    const samples = Array.from({ length: 200 }, (_, s): Temps => {
      const swing = 10 * Math.sin(s / 9);
      return [30 + swing, 5 + swing, 4 - swing, swing];
    });
    const course = courseOf(samples);
    const start = { inOil: 4e-3, onSurfaces: 1e-3 };
    const m = caseMoisture(geometry, course, outsideOf(course, -12, -14), start);
    const air = (s: number) => {
      const [, a, b, c] = samples[s]!;
      return (m.vapourPressure[s]! * geometry.airVolume) / (461.51805 * k((a + b + c) / 3));
    };
    const before = start.inOil + start.onSurfaces + air(0);
    const walls = [...m.onSurface.values()].reduce((sum, values) => sum + last(values), 0);
    const after = last(m.inOil) + walls + air(199) + m.vented;
    expect(m.vented).toBeGreaterThan(1e-4);
    // The air's own mass is taken at the middle of the last step: 0.1 mg.
    expect(Math.abs(after - before)).toBeLessThan(1e-7);
  });

  test("a dry case in step with the weather takes on the outside vapour and stays dry", () => {
    const course = courseOf(Array.from({ length: 600 }, (): Temps => [0, 0, 0, 0]));
    const m = caseMoisture(geometry, course, outsideOf(course, 0, -6), { inOil: 0, onSurfaces: 0 });
    const outside = vapourPressureFromDewPoint(k(-6));
    expect(last(m.vapourPressure)).toBeLessThanOrEqual(outside + 1e-9);
    expect(m.condensedMost).toBe(0);
    expect(m.wetTimeMost).toBe(0);
    expect(m.breatherFrost).toBe(0);
  });

  test("wet walls dry through the breather, and hold the air at saturation until then", () => {
    const course = courseOf(Array.from({ length: WEEK }, (): Temps => [15, 15, 15, 15]));
    const m = caseMoisture(geometry, course, outsideOf(course, 15, -10), { inOil: 0, onSurfaces: 5e-4 });
    expect(m.vapourPressure[1]).toBeCloseTo(saturationPressureOverStablePhase(k(15)), -1);
    const water = [...m.onSurface.values()].map(last);
    expect(water.every((mass) => mass === 0)).toBe(true);
    expect(m.vented).toBeGreaterThan(3e-4);
    expect(m.wetTimeMost).toBeGreaterThan(6 * HOUR);
  });

  test("plugged in all week under the sump wets the walls, two hours before the flight does not", () => {
    const week = courseOf(Array.from({ length: WEEK }, () => PAD));
    const two = courseOf(Array.from({ length: WEEK }, (_, s) => (s < WEEK - 12 ? COLD : PAD)));
    const outside = outsideOf(week, -9, -11);
    const always = caseMoisture(geometry, week, outside, winterOil);
    const before = caseMoisture(geometry, two, outside, winterOil);
    const liquid = (m: typeof always) => (m.wetTimeMost - m.frostTimeMost) / HOUR;
    expect(liquid(always)).toBeGreaterThan(100);
    expect(liquid(before)).toBeLessThan(3);
    // Humid air below 0 °C: the rest of the week counts as frosted.
    expect(before.frostTimeMost / HOUR).toBeGreaterThan(150);
    expect(always.condensedMost).toBeGreaterThan(10 * before.condensedMost);
    // The barrels are the coldest: that is where it goes.
    expect(last(always.wetTime.get("barrels")!)).toBe(always.wetTimeMost);
    expect(last(always.inOil)).toBeLessThan(0.6 * winterOil.inOil);
    expect(last(before.inOil)).toBeGreaterThan(0.97 * winterOil.inOil);
    expect(always.breatherFrost).toBeGreaterThan(before.breatherFrost);
    expect(WET_TIME_LIMITS).toContain("only ranks one habit against another");
  });

  test("frost on walls below 0 °C counts, and is told apart", () => {
    const course = courseOf(Array.from({ length: 300 }, (): Temps => [30, -5, -5, -12]));
    const m = caseMoisture(geometry, course, outsideOf(course, -20, -22), winterOil);
    expect(last(m.onSurface.get("barrels")!)).toBeGreaterThan(1e-5);
    expect(m.wetTimeMost).toBeGreaterThan(40 * HOUR);
    expect(m.frostTimeMost).toBe(m.wetTimeMost);
  });

  test.each([
    ["not heated", [0, 0, 0, 0]],
    ["heated under the oil", [40, 14, 14, 9]],
    ["heated a little", [12, 3, 3, 2]],
  ] as const)("a colder night is not drier for being colder alone: %s", (_, rise) => {
    const hours = (air: number) => {
      // Ten hours parked, then five of warming; the dew point 2 K below the air, as in the set cold cases.
      const course = courseOf(
        Array.from({ length: 90 }, (_, s): Temps => {
          const share = 1 - Math.exp(-Math.max(0, s - 60) / 9);
          return rise.map((kelvins) => air + share * kelvins) as unknown as Temps;
        }),
      );
      const m = caseMoisture(geometry, course, outsideOf(course, air, air - 2), winterOil);
      return m.wetTimeMost / HOUR;
    };
    const sweep = Array.from({ length: 46 }, (_, i) => hours(5 - i));
    // What oil and walls exchange does change with the cold, by half an hour in fifteen at most; counting only above 0 °C
    // lost ten hours and more.
    sweep.forEach((colder, i) => {
      expect(colder).toBeGreaterThan(Math.max(...sweep.slice(0, i + 1)) - 0.5);
    });
    expect(sweep.at(-1)).toBeGreaterThanOrEqual(sweep[0]!);
  });

  test("reads a simulated trajectory, one member of many", () => {
    const weather = steadyWeather(262, 3);
    const scenario = coldSoaked({ weather });
    const times = Array.from({ length: 25 }, (_, i) => i * HOUR);
    const course = simulate(scenario, centralDraws(weather), times);
    const outside = { tempAir: times.map(() => 262), tempDewPoint: times.map(() => 258) };
    const m = caseMoisture(geometry, course, outside, winterOil);
    expect(m.vapourPressure).toHaveLength(25);
    const doubled: PartCourse = {
      ...course,
      members: 2,
      temps: Array.from(course.temps).flatMap((temp) => [300, temp]),
    };
    expect(caseMoisture(geometry, doubled, outside, winterOil, 1)).toEqual(m);
  });
});

describe("what is refused", () => {
  const course = courseOf([COLD, COLD]);
  const outside = outsideOf(course, -9, -11);
  test("a course without a wall, unequal lengths, time that stands, dew points above the air, negative water", () => {
    const bare = { ...course, parts: ["oil", "crankcase", "crankshaft", "heads"] };
    expect(() => caseMoisture(geometry, bare, outside, winterOil)).toThrow(/^missing part: barrels/);
    expect(() => caseMoisture(geometry, course, { ...outside, tempAir: [260] }, winterOil)).toThrow(
      /^invalid tempAir: 1 values \(expected 2\)/,
    );
    expect(() => caseMoisture(geometry, { ...course, time: [0, 0] }, outside, winterOil)).toThrow(
      /^invalid time: 0 s \(expected more than 0\)/,
    );
    const humid = { ...outside, tempDewPoint: [k(-9), k(-8)] };
    expect(() => caseMoisture(geometry, course, humid, winterOil)).toThrow(/^invalid tempDewPoint: 265\.1/);
    expect(() => caseMoisture(geometry, course, outside, { ...winterOil, inOil: Number.NaN })).toThrow(
      /^invalid inOil: NaN/,
    );
  });
});
