import fc from "fast-check";
import { expect, test } from "vitest";
import {
  densitySteamWagnerPruss,
  densityVapour,
  densityWaterWagnerPruss,
  diffusivityVapourMontgomery,
  evaporationFluxAshraePool,
  heatCapacityIceYen,
  latentHeatSublimationMurphyKoop,
  latentHeatVaporisation,
  latentHeatVaporisationMurphyKoop,
  latentHeatVaporisationRogersYau,
  lewisNumber,
  massTransferCoefficientChiltonColburn,
  saturationPressureLiquidMurphyKoop,
  saturationPressureLiquidWagnerPruss,
  snowMeltByVapourKojimaLaminar,
  snowMeltByVapourKojimaTurbulent,
  snowMeltKojimaCalm,
  snowMeltKojimaLaminar,
  snowMeltKojimaTurbulent,
} from "../../src/properties/index.js";
import { kelvinFromCelsius } from "../../src/units/index.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("it takes more heat to sublime ice than to evaporate supercooled water, by about the heat of fusion", () => {
  fc.assert(
    fc.property(between(236, 273.16), (temp) => {
      const fusion = latentHeatSublimationMurphyKoop(temp) - latentHeatVaporisation(temp);
      expect(fusion).toBeGreaterThan(230e3);
      expect(fusion).toBeLessThan(334e3);
    }),
  );
});

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

test("saturated steam is nearly an ideal gas when cold, and meets the liquid at the critical point", () => {
  expect(
    densitySteamWagnerPruss(280) / densityVapour(saturationPressureLiquidWagnerPruss(280), 280),
  ).toBeCloseTo(1, 2);
  expect(densityWaterWagnerPruss(647.096)).toBeCloseTo(densitySteamWagnerPruss(647.096), 6);
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

test("snow melts faster in warmer and faster air, and not at all at 0 °C", () => {
  const zero = kelvinFromCelsius(0);
  expect(snowMeltKojimaCalm(zero, 1)).toBe(0);
  expect(snowMeltKojimaLaminar(zero, 1, 3)).toBe(0);
  expect(snowMeltKojimaTurbulent(zero, 1, 3)).toBe(0);
  fc.assert(
    fc.property(between(273.16, 312), between(0.1, 10), between(0.1, 10), (tempAir, length, wind) => {
      expect(snowMeltKojimaCalm(tempAir + 1, length)).toBeGreaterThan(snowMeltKojimaCalm(tempAir, length));
      for (const melt of [snowMeltKojimaLaminar, snowMeltKojimaTurbulent]) {
        expect(melt(tempAir + 1, length, wind)).toBeGreaterThan(melt(tempAir, length, wind));
        expect(melt(tempAir, length, wind + 1)).toBeGreaterThan(melt(tempAir, length, wind));
        expect(melt(tempAir, length + 1, wind)).toBeLessThan(melt(tempAir, length, wind));
      }
      expect(snowMeltByVapourKojimaLaminar(500, length, wind)).toBeLessThan(0);
      expect(snowMeltByVapourKojimaTurbulent(700, length, wind)).toBeGreaterThan(0);
    }),
  );
});

test("bad input is refused by name", () => {
  expect(() => snowMeltKojimaCalm(kelvinFromCelsius(-1), 1)).toThrow(/^invalid tempAir: 272.15/);
  expect(() => snowMeltKojimaCalm(280, 0)).toThrow(/^invalid length: 0/);
  expect(() => snowMeltKojimaLaminar(280, 1, -1)).toThrow(/^invalid windSpeed: -1/);
  expect(() => snowMeltByVapourKojimaLaminar(Number.NaN, 1, 1)).toThrow(/^invalid pressureVapour: NaN/);
  expect(() => latentHeatVaporisation(230)).toThrow(/^invalid temp: 230/);
  expect(() => latentHeatVaporisationRogersYau(320)).toThrow(/^invalid temp: 320/);
  expect(() => heatCapacityIceYen(280)).toThrow(/^invalid temp: 280/);
  expect(() => evaporationFluxAshraePool(1000, 500, 0, 2500)).toThrow(/^invalid latentHeat: 2500/);
  expect(() => diffusivityVapourMontgomery(200, 101325)).toThrow(/^invalid temp: 200/);
});
