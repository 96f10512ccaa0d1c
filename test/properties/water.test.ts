import fc from "fast-check";
import { expect, test } from "vitest";
import {
  diffusivityVapourMontgomery,
  evaporationFluxAshraePool,
  heatCapacityIceYen,
  latentHeatVaporisation,
  latentHeatVaporisationMurphyKoop,
  lewisNumber,
  massTransferCoefficientChiltonColburn,
  saturationPressureLiquidMurphyKoop,
} from "../../src/properties/index.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("heat of vaporisation falls with temperature and joins at the triple point", () => {
  fc.assert(
    fc.property(between(236, 640), between(0.5, 5), (temp, step) => {
      expect(latentHeatVaporisation(temp + step)).toBeLessThan(latentHeatVaporisation(temp) + 400);
    }),
  );
  const below = latentHeatVaporisationMurphyKoop(273.1599);
  expect(Math.abs(below - latentHeatVaporisation(273.16))).toBeLessThan(400);
});

test("Murphy & Koop's heat agrees with Clapeyron's law on their own vapour pressure", () => {
  const gasConstant = 461.51805;
  for (let temp = 240; temp <= 272; temp += 4) {
    const slope =
      Math.log(
        saturationPressureLiquidMurphyKoop(temp + 0.05) / saturationPressureLiquidMurphyKoop(temp - 0.05),
      ) / 0.1;
    expect((slope * gasConstant * temp * temp) / latentHeatVaporisationMurphyKoop(temp)).toBeCloseTo(1, 2);
  }
});

test("diffusivity rises with temperature and falls with pressure", () => {
  fc.assert(
    fc.property(between(235, 370), between(50000, 110000), (temp, pressure) => {
      expect(diffusivityVapourMontgomery(temp + 1, pressure)).toBeGreaterThan(
        diffusivityVapourMontgomery(temp, pressure),
      );
      expect(diffusivityVapourMontgomery(temp, pressure) * pressure).toBeCloseTo(
        diffusivityVapourMontgomery(temp, 101325) * 101325,
        9,
      );
    }),
  );
});

test("a Lewis number of 1 makes mass transfer h/(rho cp), one of 8 a quarter of it", () => {
  expect(lewisNumber(2e-5, 2e-5)).toBe(1);
  expect(massTransferCoefficientChiltonColburn(12, 1.2, 1000, 1)).toBeCloseTo(0.01, 12);
  expect(massTransferCoefficientChiltonColburn(12, 1.2, 1000, 8)).toBeCloseTo(0.0025, 12);
});

test("evaporation turns into condensation when the air is wetter than the surface, and grows with wind", () => {
  fc.assert(
    fc.property(between(0, 3000), between(0, 3000), between(0, 10), (surface, air, wind) => {
      fc.pre(Math.abs(surface - air) > 1e-6);
      const flux = evaporationFluxAshraePool(surface, air, wind, 2.5e6);
      expect(Math.sign(flux)).toBe(Math.sign(surface - air));
      expect(Math.abs(evaporationFluxAshraePool(surface, air, wind + 1, 2.5e6))).toBeGreaterThan(
        Math.abs(flux),
      );
    }),
  );
});

test("bad input is refused by name", () => {
  expect(() => latentHeatVaporisation(230)).toThrow(/^invalid temp: 230/);
  expect(() => heatCapacityIceYen(280)).toThrow(/^invalid temp: 280/);
  expect(() => evaporationFluxAshraePool(1000, 500, 0, 2500)).toThrow(/^invalid latentHeat: 2500/);
  expect(() => diffusivityVapourMontgomery(200, 101325)).toThrow(/^invalid temp: 200/);
});
