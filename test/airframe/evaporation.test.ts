import fc from "fast-check";
import { expect, test } from "vitest";
import { airFilm } from "../../src/airframe/air-film.js";
import { evaporationBetween, vapourPerHeatTransfer } from "../../src/airframe/evaporation.js";
import { evaporationFluxAshraePool, evaporationShareMeasured } from "../../src/properties/index.js";

const LATENT = 2.5e6;
const CONDITIONS = { tempFilm: 278.15, pressure: 101_325 };
const SIZE = { alongWind: 1.4, stillAir: 0.5 };
const winds = fc.double({ min: 0.05, max: 10, noNaN: true });

test("the band holds both rival laws within one standard deviation and grows with wind", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e-6, noNaN: true }), winds, (analogy, wind) => {
      const { middle, logSd } = evaporationBetween(analogy, wind, LATENT);
      const pool = evaporationShareMeasured(wind) * evaporationFluxAshraePool(1, 0, wind, LATENT);
      for (const rival of [analogy, pool]) {
        expect(Math.abs(Math.log(rival / middle))).toBeLessThanOrEqual(logSd * (1 + 1e-9));
      }
      expect(evaporationBetween(analogy, wind + 1, LATENT).middle).toBeGreaterThan(middle);
    }),
  );
});

test("vapour moves more easily in thin air and is defined below the range of the diffusivity", () => {
  const high = vapourPerHeatTransfer({ tempFilm: 278.15, pressure: 80_000 });
  expect(high).toBeGreaterThan(vapourPerHeatTransfer(CONDITIONS));
  expect(vapourPerHeatTransfer({ tempFilm: 223.15, pressure: 101_325 })).toBeGreaterThan(0);
});

test("convection grows with wind and with the difference, and an air film held in place carries less", () => {
  const up = airFilm("up", SIZE, CONDITIONS);
  const down = airFilm("down", SIZE, CONDITIONS);
  const side = airFilm("side", SIZE, CONDITIONS);
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 30, noNaN: true }), winds, (difference, wind) => {
      expect(up(difference, wind + 0.5)).toBeGreaterThan(up(difference, wind));
      expect(up(difference + 5, wind)).toBeGreaterThan(up(difference, wind));
      // Cold face up and warm face down hold their air; the other two shed it.
      expect(up(-difference, wind)).toBeLessThan(up(difference, wind));
      expect(up(-difference, wind)).toBe(down(difference, wind));
      expect(side(difference, wind)).toBe(side(-difference, wind));
    }),
  );
  expect(up(0, 0)).toBe(0);
});
