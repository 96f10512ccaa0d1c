import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CheckedPlan, trackRecord } from "../../src/learning/track-record.js";
import { createRandom, normalProbability, normalQuantile } from "../../src/numerics/index.js";
import { runs } from "../tiers.js";

const SD = 4;

/** Plans of a base whose parts come out at `bias` + `spread` z standard deviations of what is said. */
function base(count: number, { bias = 0, spread = 1, seed = 1, isRead = true }): CheckedPlan[] {
  const random = createRandom(seed).stream("base");
  return Array.from({ length: count }, (_, n) => {
    const chance = [0.85, 0.9, 0.92, 0.95][n % 4];
    const z = bias + spread * random.normal();
    const readings = isRead ? [{ at: n, part: "oil", off: SD * z, sd: SD }] : [];
    return { chance, held: normalQuantile(chance) + z > 0, readings, place: "ramp" };
  });
}

describe("a base's record", () => {
  test("counts starts by the chance that was said, with the interval that so few of them leave", () => {
    const plan = (chance: number, held: boolean): CheckedPlan => ({
      chance,
      held,
      readings: [],
      place: "ramp",
    });
    const { starts, curve } = trackRecord([plan(0.9, true), plan(0.95, true), plan(0.6, false)]);
    expect(starts).toMatchObject({ count: 3, held: 2 });
    expect(curve.map(({ from, to, count, held }) => [from, to, count, held])).toEqual([
      [0.5, 0.8, 1, 0],
      [0.9, 0.97, 2, 2],
    ]);
    // Two of two leave much open: Wilson's interval with z = 1.645 begins at n/(n + z²).
    expect(curve[1].low).toBeCloseTo(2 / (2 + 1.6448536 ** 2), 6);
    expect(curve[1].high).toBe(1);
  });

  test("counts readings within the bands, and plans alike in the bias however many readings they have", () => {
    const reading = (off: number) => ({ at: 0, part: "oil", off, sd: 2 });
    const { readings } = trackRecord([
      { chance: 0.9, readings: [reading(-4), reading(-4), reading(-4)], place: "ramp" },
      { chance: 0.9, readings: [reading(2)], place: "ramp" },
    ]);
    expect(readings).toEqual({ count: 4, within: 1, bias: -1 });
  });

  test("a plan without start and readings says nothing", () => {
    expect(trackRecord([{ chance: 0.9, readings: [], place: "ramp" }]).plans).toBe(0);
  });
});

describe("what the record asks of plans", () => {
  test("law: few plans ask for nothing, whatever came of them", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            chance: fc.double({ min: 0, max: 1, noNaN: true }),
            held: fc.boolean(),
            off: fc.double({ min: -40, max: 40, noNaN: true }),
          }),
          { maxLength: 4 },
        ),
        (plans) => {
          const checked = plans.map(({ chance, held, off }): CheckedPlan => {
            return { chance, held, readings: [{ at: 0, part: "oil", off, sd: 3 }], place: "ramp" };
          });
          expect(trackRecord(checked).correction).toBeUndefined();
        },
      ),
      { numRuns: runs(100, 2000) },
    );
  });

  test("law: without much evidence no plan gets bolder: never warmer, never narrower", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 29 }),
        fc.double({ min: -1, max: 2, noNaN: true }),
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        fc.integer({ min: 1, max: 1e6 }),
        (count, bias, spread, seed) => {
          const { correction } = trackRecord(base(count, { bias, spread, seed }));
          expect(correction?.airShift ?? 0).toBeLessThanOrEqual(0);
          expect(correction?.spread ?? 1).toBeGreaterThanOrEqual(1);
        },
      ),
      { numRuns: runs(60, 1000) },
    );
  });

  test("colder than said: the plan is made for colder air, by readings, and by starts alone", () => {
    for (const isRead of [true, false]) {
      const { correction } = trackRecord(base(14, { bias: -1.5, isRead, seed: 3 }));
      expect(correction!.airShift).toBeLessThan(-1.5);
      expect(correction!.airShift).toBeGreaterThanOrEqual(-8);
    }
  });

  test("bands that are too narrow get wider; a record as said is left alone as far as chance lets it", () => {
    expect(trackRecord(base(25, { spread: 2.2, seed: 5 })).correction!.spread).toBeGreaterThan(1.4);
    const asSaid = Array.from({ length: 40 }, (_, seed) => trackRecord(base(20, { seed: 100 + seed })));
    const shifts = asSaid.map(({ correction }) => correction?.airShift ?? 0);
    // Chance alone makes a good base look cold now and then: seldom, and by little.
    expect(shifts.filter((shift) => shift < 0).length).toBeLessThan(14);
    expect(Math.min(...shifts)).toBeGreaterThan(-2.5);
  });

  test("only much evidence makes a plan bolder, and by no more than half of it", () => {
    const { correction } = trackRecord(base(80, { bias: 0.8, spread: 0.6, seed: 7 }));
    expect(correction!.airShift).toBeGreaterThan(0);
    expect(correction!.airShift).toBeLessThanOrEqual(0.5 * 0.8 * SD);
    expect(correction!.spread).toBeGreaterThanOrEqual(0.8);
    expect(correction!.spread).toBeLessThan(1);
  });

  test("what was corrected already is not corrected again: the same base asks for the same", () => {
    const raw = base(20, { bias: -1.2, seed: 9 });
    const { airShift, spread } = trackRecord(raw).correction!;
    const corrected = raw.map(({ chance, readings, ...rest }): CheckedPlan => {
      const told = normalProbability((normalQuantile(chance) + airShift / SD) / spread);
      return {
        ...rest,
        chance: told,
        readings: readings.map((one) => ({ ...one, off: one.off - airShift, sd: one.sd * spread })),
        corrected: { airShift, spread },
      };
    });
    const again = trackRecord(corrected).correction!;
    expect(Math.abs(again.airShift - airShift)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(again.spread - spread)).toBeLessThanOrEqual(0.1);
  });
});
