import { expect, test } from "vitest";
import { installationById } from "../../src/aircraft/index.js";
import { stretchesOf } from "../../src/learning/cool-down.js";
import { fitAircraft, type TemperatureLog } from "../../src/learning/index.js";
import { madeFleet, madeLog, madeNight, trueTemps } from "../../src/learning/made-aircraft.js";
import { bandOf } from "../../src/numerics/index.js";
import { drawEnsemble, partTemps, type Scenario, simulate } from "../../src/simulation/index.js";
import { shutDownTemps } from "../../src/starting/index.js";
import { every, HOUR, heatedNight, probesOn } from "./example-night.js";

const AIRCRAFT = 20;
/** A flight at hotter or colder air than the model's typical one leaves the parts off their typical rises. */
const AIR = 256;
const installation = installationById("four-carburettor-160");

/** Shut down under its cover at the start, and left alone. */
function cooling(rise: number): Scenario {
  const temps = new Map(
    [...shutDownTemps(installation, AIR)].map(([part, temp]) => [part, AIR + rise * (temp - AIR)]),
  );
  return {
    ...heatedNight("sump-pad-220"),
    duration: 10 * HOUR,
    events: [],
    initial: {
      configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) },
      temps,
      tempOthers: temps.get("cowl_air") ?? AIR,
      sd: 2,
    },
  };
}

/** The made log as an engine monitor gives it: in the middle of a longer scenario, with its cool-down marked. */
function logged(scenario: Scenario, log: TemperatureLog, hours: number): TemperatureLog {
  const shutDown = scenario.start;
  const rows = log.time.filter((t) => t <= shutDown + hours * HOUR).length;
  return {
    ...log,
    time: log.time.slice(0, rows),
    probes: log.probes.map((probe) => ({ ...probe, temps: probe.temps.slice(0, rows) })),
    coolDowns: [{ shutDown, until: log.time[rows - 1] }],
    ranFrom: shutDown - HOUR,
  };
}

test("a cool-down teaches cover, ventilation and stores within what it says, and bands of the next one hold", () => {
  const first = cooling(0.8);
  const next = cooling(1.1);
  const fleet = madeFleet(first, AIRCRAFT, 51);
  const night = madeNight(fleet, first, every(300, 8 * HOUR), 52);
  const later = [2 * HOUR, 5 * HOUR, 9 * HOUR];
  const truth = madeNight(fleet, next, [0, ...later], 53);
  const held = { parameters: 0, bands: 0 };
  const count = { parameters: 0, bands: 0 };
  const width = { fitted: 0, prior: 0 };
  const left = { ventilation: 0, cowl_skin_loss: 0, heat_stores: 0 };
  for (let a = 0; a < AIRCRAFT; a++) {
    const log = logged(first, madeLog(fleet, night, a, probesOn("oil", "heads")), 8);
    // The document does not know how the engine stood: it was cold before the flight.
    const asked = { ...first, start: first.start - 2 * HOUR, duration: 13 * HOUR };
    const [stretch, ...others] = stretchesOf(log, asked);
    expect(others).toEqual([]);
    const fit = fitAircraft(stretch);
    if (fit.status !== "fitted") throw new Error(fit.message);
    for (const name of Object.keys(left) as (keyof typeof left)[]) {
      const i = fit.posterior.names.indexOf(name);
      const sd = Math.hypot(...fit.posterior.factor[i]);
      const z = (Math.log(fleet.multipliers.get(name)![a]) - fit.posterior.mean[i]) / sd;
      if (Math.abs(z) <= 1.645) held.parameters++;
      count.parameters++;
      left[name] += sd / AIRCRAFT;
    }
    const request = { members: 100, seed: 54 + a, weather: next.weather };
    const course = simulate(next, drawEnsemble({ ...request, posterior: fit.posterior }), [0, ...later]);
    const unfitted = simulate(next, drawEnsemble(request), [0, ...later]);
    for (const part of ["oil", "heads_rear", "barrels", "crankcase"]) {
      const temps = trueTemps(truth, AIRCRAFT, a, part);
      later.forEach((_, s) => {
        const band = bandOf(partTemps(course, part, s + 1));
        const prior = bandOf(partTemps(unfitted, part, s + 1));
        if (temps[s + 1] >= band.low && temps[s + 1] <= band.high) held.bands++;
        count.bands++;
        width.fitted += band.high - band.low;
        width.prior += prior.high - prior.low;
      });
    }
  }
  // Parameters of one aircraft err together, so do its parts: 20 aircraft tell a share to about ±7 points.
  expect(held.parameters / count.parameters).toBeGreaterThan(0.78);
  expect(held.bands / count.bands).toBeGreaterThan(0.78);
  expect(width.fitted).toBeLessThan(0.75 * width.prior);
  expect(left.ventilation).toBeLessThan(0.5);
});
