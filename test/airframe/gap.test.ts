import fc from "fast-check";
import { expect, test } from "vitest";
import { timeLastAbove } from "../../src/airframe/crossing.js";
import { diffusivityVapour } from "../../src/airframe/evaporation.js";
import {
  capillaryColumn,
  dryPath,
  evaporationFluxStefanTube,
  type Gap,
  mouthPath,
  waterInGap,
} from "../../src/airframe/gap.js";
import { GAP_ROW, GAP_ROWS, gapModel } from "../../src/airframe/gap-model.js";
import { HINGE_GAP } from "../../src/airframe/index.js";
import { evenTimes, integrate } from "../../src/airframe/integrate.js";
import {
  diffusivityVapourMontgomery,
  GAS_CONSTANT_VAPOUR,
  saturationPressureOverLiquid,
} from "../../src/properties/index.js";

const PRESSURE = 101_325;

test("a simulated gap dries in the time the closed form gives", () => {
  const temp = 288.15;
  const pressureVapour = 0.4 * saturationPressureOverLiquid(temp);
  const conditions = { tempFilm: temp, pressure: PRESSURE };
  const evaporation = 2e-8;
  // So much metal that the small heat of evaporation does not cool it.
  const gap = { ...HINGE_GAP, heatCapacity: 1e5, outerPerMouth: 1e4 };
  const model = gapModel({ gap, conditions, transferFactor: 1, evaporation: () => evaporation });
  const around = { tempAir: temp, pressureVapour, windSpeed: 0.1, tempAbove: temp, tempBelow: temp };
  const times = evenTimes(0, 40 * 3600, 600);
  const { samples, status } = integrate({
    initial: model.initial(temp),
    scales: Float64Array.of(1, 0.01, 0.01),
    sums: [],
    start: 0,
    sampleTimes: times,
    derivative: (_, y, dydt) => model.writeRates(y, 0, around, 0, dydt),
  });
  expect(status).toBe("completed");
  const column = times.map(
    (_, s) => samples[s * GAP_ROWS + GAP_ROW.ice] + samples[s * GAP_ROWS + GAP_ROW.water],
  );
  const boundaryLayer = diffusivityVapour(conditions) / (evaporation * GAS_CONSTANT_VAPOUR * temp);
  const expected = gapDryingTime(
    gap,
    waterInGap(gap),
    saturationPressureOverLiquid(temp),
    pressureVapour,
    temp,
    PRESSURE,
    boundaryLayer,
  );
  // The last 10 µm thin out more slowly than the closed form.
  expect(timeLastAbove(times, column, 0.02) / expected).toBeGreaterThan(0.97);
  expect(timeLastAbove(times, column, 0.02) / expected).toBeLessThan(1.02);
});

test("deeper, fuller and damper gaps take longer; saturated air never dries one", () => {
  const hours = (depth: number, fill: number, relativeHumidity: number) => {
    const gap = { ...HINGE_GAP, depth, fill };
    const saturated = saturationPressureOverLiquid(283.15);
    return gapDryingTime(
      gap,
      waterInGap(gap),
      saturated,
      relativeHumidity * saturated,
      283.15,
      PRESSURE,
      0.01,
    );
  };
  const share = fc.double({ min: 0.1, max: 0.8, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: 0.002, max: 0.01, noNaN: true }), share, share, (depth, fill, humidity) => {
      const time = hours(depth, fill, humidity);
      expect(hours(depth * 1.1, fill, humidity)).toBeGreaterThan(time);
      expect(hours(depth, fill * 1.1, humidity)).toBeGreaterThan(time);
      expect(hours(depth, fill, humidity * 1.1)).toBeGreaterThan(time);
    }),
  );
  expect(hours(0.005, 0.3, 1)).toBe(Number.POSITIVE_INFINITY);
});

test("the flux is Fick's for little vapour, more by Stefan's wind for much, and turns with the difference", () => {
  const fick = (0.25e-4 * 100) / (GAS_CONSTANT_VAPOUR * 293 * 0.1);
  expect(evaporationFluxStefanTube(100, 0, 0.1, 293, PRESSURE, 0.25e-4) / fick).toBeCloseTo(1, 3);
  expect(evaporationFluxStefanTube(30_000, 0, 0.1, 293, PRESSURE, 0.25e-4) / (300 * fick)).toBeGreaterThan(
    1.15,
  );
  expect(evaporationFluxStefanTube(500, 900, 0.1, 293, PRESSURE, 0.25e-4)).toBeLessThan(0);
});

test("a wide slot holds only what capillarity carries, and its mouth adds little path", () => {
  expect(capillaryColumn(0.001)).toBeCloseTo(0.0154, 4);
  expect(waterInGap({ ...HINGE_GAP, depth: 0.05, width: 0.005, fill: 1 })).toBeCloseTo(3.08, 2);
  expect(mouthPath(0.0005, 0.01)).toBeLessThan(0.001);
  // Where the boundary layer is far thinner than the slot is wide it counts nearly as it is.
  expect(mouthPath(0.005, 0.0001) / 0.0001).toBeCloseTo(1.23, 1);
});

/**
 * [s] until `column` [kg/m2] of water in a gap is gone, all constant: the integral of rho dl / j over a path that grows
 * from x0 to x1, rho (x1^2 - x0^2) / (2 j x).
 */
function gapDryingTime(
  gap: Gap,
  column: number,
  pressureSurface: number,
  pressureMouth: number,
  temp: number,
  pressure: number,
  boundaryLayer: number,
): number {
  const diffusivity = diffusivityVapourMontgomery(temp, pressure);
  const last = dryPath(gap, 0, boundaryLayer);
  const first = dryPath(gap, column, boundaryLayer);
  const perPath = evaporationFluxStefanTube(pressureSurface, pressureMouth, 1, temp, pressure, diffusivity);
  return perPath > 0 ? (1000 * (last ** 2 - first ** 2)) / (2 * perPath) : Number.POSITIVE_INFINITY;
}
