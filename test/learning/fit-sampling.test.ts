import { expect, test } from "vitest";
import { fitAircraft } from "../../src/learning/index.js";
import { madeFleet, madeLog, madeNight } from "../../src/learning/made-aircraft.js";
import { every, HOUR, heatedNight, probesOn } from "./example-night.js";
import { checkBySampling } from "./sampling.js";

test("sampling the posterior finds the means and spreads that the fit gives", () => {
  const scenario = heatedNight("sump-pad-220", { duration: 4 * HOUR });
  const fleet = madeFleet(scenario, 1, 31);
  const night = madeNight(fleet, scenario, every(900, 4 * HOUR), 32);
  const fit = fitAircraft({ log: madeLog(fleet, night, 0, probesOn("oil", "crankcase")), scenario });
  if (fit.status !== "fitted") throw new Error(fit.message);
  const { accepted, unknowns } = checkBySampling(fit, { chains: 50, steps: 160, seed: 1 });
  expect(accepted).toBeGreaterThan(0.1);
  expect(accepted).toBeLessThan(0.5);
  unknowns.forEach(({ meanShift, sdRatio }, j) => {
    const { kind, of } = fit.unknowns.list[j];
    expect(Math.abs(meanShift), `${kind} ${of}`).toBeLessThan(0.45);
    expect(Math.abs(sdRatio - 1), `${kind} ${of}`).toBeLessThan(0.25);
  });
});
