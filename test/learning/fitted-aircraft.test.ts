import { describe, expect, test } from "vitest";
import { learnedSensors, priorOf, withPriors } from "../../src/learning/fitted-aircraft.js";
import {
  type AircraftFit,
  fitAircraft,
  fittedAircraft,
  hashOf,
  posteriorFor,
  sensorsAsLearned,
} from "../../src/learning/index.js";
import { madeFleet, madeLog, madeNight } from "../../src/learning/made-aircraft.js";
import { drawEnsemble, type MultiplierPosterior } from "../../src/simulation/index.js";
import { every, HOUR, heatedNight, probesOn } from "./example-night.js";

const scenario = heatedNight("sump-pad-220");
const fleet = madeFleet(scenario, 2, 51);
const night = madeNight(fleet, scenario, every(900, 12 * HOUR), 52);
const probes = probesOn("oil", "heads");
const log = madeLog(fleet, night, 0, probes);
const fit = fitOf(fitAircraft({ log, scenario }));
const aircraft = fittedAircraft(fit, log);
const usual = { setting: { place: "ramp" as const, covers: ["insulated-cover"] }, heaters: ["sump-pad-220"] };

function fitOf(result: ReturnType<typeof fitAircraft>): AircraftFit {
  if (result.status !== "fitted") throw new Error(result.message);
  return result;
}

describe("a fitted aircraft", () => {
  test("carries its evidence", () => {
    expect(aircraft).toMatchObject({
      version: 1,
      base: "four-carburettor-160",
      evidence: [
        {
          origin: "made aircraft 0 of seed 51",
          readings: 98,
          from: 0,
          to: 12 * HOUR,
          heaters: ["sump-pad-220"],
          settings: [{ place: "ramp", covers: ["insulated-cover"] }],
        },
      ],
    });
    expect(aircraft.evidence[0].hash).toMatch(/^[0-9a-f]{16}$/);
  });

  test("survives being written down", () => {
    expect(JSON.parse(JSON.stringify(aircraft))).toEqual(aircraft);
  });

  test("is drawn from like any aircraft, and left out again without a trace", () => {
    const request = { members: 300, seed: 1, weather: scenario.weather };
    const before = drawEnsemble(request);
    const learned = drawEnsemble({ ...request, posterior: posteriorFor(aircraft, usual) });
    const spread = (values: Float64Array | undefined) => {
      const logs = Array.from(values ?? [], Math.log);
      const mean = logs.reduce((a, b) => a + b) / logs.length;
      return Math.sqrt(logs.reduce((a, b) => a + (b - mean) ** 2, 0) / logs.length);
    };
    const name = "oil_inside";
    expect(spread(learned.multipliers.get(name))).toBeLessThan(0.6 * spread(before.multipliers.get(name)));
    expect(drawEnsemble(request)).toEqual(before);
  });

  test("grows by further logs, not twice by the same, and not by another installation's", () => {
    const other = madeLog(fleet, night, 1, probes);
    const more = fittedAircraft(
      fitOf(fitAircraft({ log: other, scenario, earlier: aircraft.multipliers })),
      other,
      aircraft,
    );
    expect(more.evidence.map(({ origin }) => origin)).toEqual([log.origin, other.origin]);
    expect(() => fittedAircraft(fit, log, aircraft)).toThrow(`duplicate log: ${log.origin}`);
    expect(() => fittedAircraft(fit, other, { ...aircraft, base: "six-injected-300" })).toThrow(
      "invalid earlier: fitted on six-injected-300 (expected four-carburettor-160)",
    );
  });

  test("hands its probes on while they stay where they are", () => {
    const [oil, heads] = learnedSensors(fit);
    expect(oil.offsetSd).toBeLessThan(probes[0].offsetSd);
    const moved = { ...probes[1], place: { part: "barrels" } };
    expect(sensorsAsLearned([probes[0], moved], aircraft)).toEqual([oil, moved]);
    expect(sensorsAsLearned(probes, aircraft)).toEqual([oil, heads]);
  });
});

describe("the hash of a log", () => {
  test("tells readings, times, names and places apart", () => {
    const [first, ...rest] = log.probes;
    const variants = [
      log,
      { ...log, probes: [{ ...first, temps: first.temps.map((t, k) => (k === 7 ? t + 0.1 : t)) }, ...rest] },
      { ...log, time: log.time.map((t) => t + 1) },
      { ...log, probes: [{ ...first, name: "oil2" }, ...rest] },
      { ...log, probes: [{ ...first, place: { part: "sump" } }, ...rest] },
    ];
    expect(new Set(variants.map(hashOf)).size).toBe(variants.length);
    expect(hashOf({ ...log, origin: "elsewhere" })).toBe(hashOf(log));
  });
});

describe("what holds for another use", () => {
  const sds = ({ names, factor }: MultiplierPosterior) =>
    new Map(names.map((name, i) => [name, Math.hypot(...factor[i])]));

  test("everything does as it was learned", () => {
    expect(posteriorFor(aircraft, usual)).toBe(aircraft.multipliers);
  });

  test.each([
    ["another place", { ...usual, setting: { place: "hangar" as const, covers: ["insulated-cover"] } }],
    ["other covers", { ...usual, setting: { place: "ramp" as const, covers: [] } }],
  ])("at %s losses are unknown again, the engine is not", (_, use) => {
    const sd = sds(posteriorFor(aircraft, use));
    expect(sd.get("ventilation")).toBeCloseTo(priorOf("ventilation").sd, 12);
    expect(sd.get("cowl_skin_loss")).toBeCloseTo(priorOf("cowl_skin_loss").sd, 12);
    expect(sd.get("oil_inside")).toBeCloseTo(sds(aircraft.multipliers).get("oil_inside") ?? Number.NaN, 12);
  });

  test("with another heater its contact and power are unknown again", () => {
    const sd = sds(posteriorFor(aircraft, { ...usual, heaters: ["whole-engine-4"] }));
    expect(sd.get("heater_contact")).toBeCloseTo(priorOf("heater_contact").sd, 12);
    expect(sd.get("ventilation")).toBeLessThan(0.4);
  });

  test("what is set back is free of all else, and the rest keeps its correlations", () => {
    const posterior: MultiplierPosterior = {
      names: ["ventilation", "journals", "flanges"],
      mean: [0.3, 0.1, -0.2],
      factor: [
        [0.2, 0, 0],
        [0.1, 0.3, 0],
        [-0.1, 0.2, 0.15],
      ],
    };
    const { mean, factor } = withPriors(posterior, ["ventilation"]);
    const covariance = (f: readonly (readonly number[])[], i: number, j: number) =>
      f[i].reduce((sum, v, k) => sum + v * f[j][k], 0);
    expect(mean).toEqual([priorOf("ventilation").mean, 0.1, -0.2]);
    expect(covariance(factor, 0, 0)).toBeCloseTo(priorOf("ventilation").sd ** 2, 12);
    expect(covariance(factor, 0, 1)).toBe(0);
    expect(covariance(factor, 1, 2)).toBeCloseTo(covariance(posterior.factor, 1, 2), 12);
    expect(covariance(factor, 2, 2)).toBeCloseTo(covariance(posterior.factor, 2, 2), 12);
  });
});
