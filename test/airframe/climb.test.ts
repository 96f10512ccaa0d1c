import fc from "fast-check";
import { expect, test } from "vitest";
import { coldestBelow, freezingLevel, temperatureProfile } from "../../src/airframe/climb.js";
import type { Climb } from "../../src/airframe/index.js";

const CLIMB: Climb = { elevation: 200, cruiseAltitude: 2500, rate: 3, airspeed: 50 };
const INVERSION: Climb = {
  ...CLIMB,
  sounding: { altitude: [100, 600, 1200, 2000], tempAir: [260, 276, 275, 268] },
};

test("without a sounding the standard lapse, with one its corners, above it the lapse again", () => {
  const standard = temperatureProfile(CLIMB, 270);
  expect(standard.tempAt(200)).toBe(270);
  expect(standard.tempAt(1200)).toBeCloseTo(263.5, 9);
  const inversion = temperatureProfile(INVERSION, 265);
  expect(inversion.tempAt(100)).toBe(265);
  expect(inversion.tempAt(400)).toBeCloseTo(270.5, 9);
  expect(inversion.tempAt(600)).toBe(276);
  expect(inversion.tempAt(1600)).toBeCloseTo(271.5, 9);
  expect(inversion.tempAt(3000)).toBeCloseTo(268 - 6.5, 9);
});

test("the freezing level is the aerodrome in frost, the crossing otherwise, none in warm air", () => {
  expect(freezingLevel(temperatureProfile(INVERSION, 265), 2500)).toBe(200);
  expect(freezingLevel(temperatureProfile(INVERSION, 274), 2500)).toBeCloseTo(1200 + (1.85 / 7) * 800, 6);
  expect(freezingLevel(temperatureProfile(CLIMB, 300), 2500)).toBeUndefined();
  expect(coldestBelow(temperatureProfile(INVERSION, 265), 1000)).toBe(265);
  expect(coldestBelow(temperatureProfile(INVERSION, 274), 2500)).toBeCloseTo(264.75, 9);
});

test("a warmer aerodrome has a higher freezing level", () => {
  fc.assert(
    fc.property(fc.double({ min: 274, max: 285, noNaN: true }), (ground) => {
      const level = freezingLevel(temperatureProfile(CLIMB, ground), 9000)!;
      expect(temperatureProfile(CLIMB, ground).tempAt(level)).toBeCloseTo(273.15, 6);
      expect(freezingLevel(temperatureProfile(CLIMB, ground + 1), 9000)!).toBeGreaterThan(level);
    }),
  );
});
