import { expect, test } from "vitest";
import { fitAircraft } from "../../src/learning/index.js";
import { madeFleet, madeLog, madeNight, trueTemps } from "../../src/learning/made-aircraft.js";
import { bandOf } from "../../src/numerics/index.js";
import { drawEnsemble, partTemps, simulate } from "../../src/simulation/index.js";
import { every, HOUR, heatedNight, nextNight, probesOn } from "./example-night.js";

// benchmarks/coverage.mjs does the same with 200 aircraft and several kits; its figures are in docs/learning.md.
const AIRCRAFT = 24;
const PARTS = ["oil", "crankshaft", "crankcase", "heads_rear", "barrels", "sump"];
const LATER = [6 * HOUR, 9 * HOUR];

test("bands for the night after hold the truth about nine times in ten, and are far narrower than without a log", () => {
  const first = heatedNight("sump-pad-220");
  const next = nextNight("sump-pad-220", true);
  const fleet = madeFleet(first, AIRCRAFT, 41);
  const night = madeNight(fleet, first, every(600, 12 * HOUR), 42);
  const truth = madeNight(fleet, next, [0, ...LATER], 43);
  let held = 0;
  let count = 0;
  const width = { fitted: 0, prior: 0 };
  for (let a = 0; a < AIRCRAFT; a++) {
    const fit = fitAircraft({ log: madeLog(fleet, night, a, probesOn("oil", "heads")), scenario: first });
    if (fit.status !== "fitted") throw new Error(fit.message);
    const request = { members: 100, seed: 44 + a, weather: next.weather };
    const course = simulate(next, drawEnsemble({ ...request, posterior: fit.posterior }), [0, ...LATER]);
    const unfitted = simulate(next, drawEnsemble(request), [0, ...LATER]);
    for (const part of PARTS) {
      const temps = trueTemps(truth, AIRCRAFT, a, part);
      for (const s of [1, 2]) {
        const band = bandOf(partTemps(course, part, s));
        if (temps[s] >= band.low && temps[s] <= band.high) held++;
        count++;
        if (part !== "oil") continue;
        const prior = bandOf(partTemps(unfitted, part, s));
        width.fitted += band.high - band.low;
        width.prior += prior.high - prior.low;
      }
    }
  }
  // Parts of one aircraft err together: 24 aircraft tell the share to about ±6 points (one standard deviation).
  expect(held / count).toBeGreaterThan(0.76);
  expect(held / count).toBeLessThan(0.98);
  expect(width.fitted).toBeLessThan(0.4 * width.prior);
});
