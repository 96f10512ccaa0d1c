import { describe, expect, test } from "vitest";
import { heaterById, INSTALLATIONS } from "../../src/aircraft/index.js";
import type { FitRequest } from "../../src/learning/fit-aircraft.js";
import { type AircraftFit, fitAircraft, reportOf, type TemperatureLog } from "../../src/learning/index.js";
import { madeFleet, madeLog, madeNight } from "../../src/learning/made-aircraft.js";
import { PRIOR, type Scenario } from "../../src/simulation/index.js";
import { every, HOUR, heatedNight, probesOn } from "./example-night.js";

const scenario = heatedNight("sump-pad-220");
const probes = probesOn("oil", "heads", "crankcase");
const times = every(300, 12 * HOUR);
const fleet = madeFleet(scenario, 8, 21);
const night = madeNight(fleet, scenario, times, 22);
const logOf = (a: number) => madeLog(fleet, night, a, probes);

function fitted(request: FitRequest): AircraftFit {
  const fit = fitAircraft(request);
  if (fit.status !== "fitted") throw new Error(fit.message);
  return fit;
}

describe("sensitivities", () => {
  const fit = fitted({ log: logOf(0), scenario });
  const forward = fit.model.linearise(fit.z);
  const central = fit.model.linearise(fit.z, "central");

  test("by forward differences are those by central ones", () => {
    fit.unknowns.list.forEach(({ kind, of }, j) => {
      const greatest = Math.max(...central.slopes[j].flatMap((values) => [...values].map(Math.abs)));
      central.slopes[j].forEach((values, p) => {
        values.forEach((value, k) => {
          const error = Math.abs(forward.slopes[j][p][k] - value);
          expect(error, `${kind} ${of}, probe ${p}, time ${k}`).toBeLessThan(0.01 + 0.02 * greatest);
        });
      });
    });
  });

  test("by one step are those by steps of half a standard deviation, in runs of their own", () => {
    // Separate solves choose their own steps, so this would show noise of the solver taken for a slope.
    fit.unknowns.list.forEach(({ kind, of }, j) => {
      const at = (by: number) => fit.model.predict([fit.z.map((z, i) => (i === j ? z + by : z))])[0];
      const [up, down] = [at(0.25), at(-0.25)];
      central.slopes[j].forEach((values, p) => {
        const greatest = Math.max(...[...values].map(Math.abs));
        for (const k of [12, 40, 100, 140]) {
          const wide = (up[p][k] - down[p][k]) / 0.5;
          expect(Math.abs(wide - values[k]), `${kind} ${of}`).toBeLessThan(0.05 + 0.1 * greatest);
        }
      });
    });
  });
});

describe("fitting made aircraft", () => {
  const fits = Array.from({ length: fleet.count }, (_, a) => fitted({ log: logOf(a), scenario }));

  test("finds the truth to within what it says", () => {
    // z-scores of all multipliers of all aircraft: their mean square is 1 for honest standard deviations. The aircraft's
    // own deviations from the model come on top.
    const scores = fits.flatMap((fit, a) =>
      fit.posterior.names.map((name, i) => {
        const truth = Math.log(fleet.multipliers.get(name)?.[a] ?? Number.NaN);
        return (truth - fit.posterior.mean[i]) / Math.hypot(...fit.posterior.factor[i]);
      }),
    );
    const meanSquare = scores.reduce((sum, z) => sum + z * z, 0) / scores.length;
    expect(meanSquare).toBeGreaterThan(0.6);
    expect(meanSquare).toBeLessThan(1.6);
  });

  test("learns what a heating run shows and not what it cannot", () => {
    const left = (name: string) => {
      const all = fits.map(
        (fit) => reportOf(fit).multipliers.find((m) => m.name === name)?.left ?? Number.NaN,
      );
      return all.reduce((a, b) => a + b) / all.length;
    };
    for (const name of ["oil_inside", "ventilation", "engine_to_cowl_air"])
      expect(left(name), name).toBeLessThan(0.7);
    for (const name of ["battery_links", "journals"]) expect(left(name), name).toBeGreaterThan(0.9);
  });

  test("is nearer the truth than the priors are, where it has learned", () => {
    const distance = (of: (fit: AircraftFit, i: number) => number) =>
      fits.reduce((sum, fit, a) => {
        const i = fit.posterior.names.indexOf("ventilation");
        return sum + (Math.log(fleet.multipliers.get("ventilation")?.[a] ?? Number.NaN) - of(fit, i)) ** 2;
      }, 0);
    expect(distance((fit, i) => fit.posterior.mean[i])).toBeLessThan(0.6 * distance((_, i) => PRIOR.mean[i]));
  });

  test("fits readings to their noise", () => {
    for (const fit of fits) {
      for (const probe of reportOf(fit).probes) {
        expect(probe.readings).toBe(145);
        expect(probe.rms).toBeLessThan(1.2);
        expect(Math.abs(probe.whitenedRms - 1)).toBeLessThan(0.3);
        expect(probe.coverage).toBeGreaterThan(0.85);
      }
    }
  });

  test("a second night sharpens what the first taught", () => {
    const again = madeNight(fleet, scenario, times, 23);
    const second = fitted({
      log: madeLog(fleet, again, 0, probes),
      scenario,
      earlier: fits[0].posterior,
    });
    const spread = ({ posterior }: AircraftFit) =>
      posterior.factor.map((row) => Math.hypot(...row)).reduce((a, b) => a + b);
    expect(spread(second)).toBeLessThan(spread(fits[0]));
  });
});

describe("what else a log may hold", () => {
  test("a probe's offset and lag are found", () => {
    const [, heads, crankcase] = probes;
    const oil = { ...probes[0], offset: 3, offsetSd: 0, lag: 600, lagLogSd: 0 };
    const log = madeLog(fleet, night, 1, [oil, heads, crankcase]);
    const fit = fitted({ log, scenario });
    const found = fit.unknowns.sensorAt(fit.z, 0);
    expect(Math.abs(found.offset - 3)).toBeLessThan(2);
    expect(found.lag).toBeGreaterThan(200);
    expect(fit.unknowns.sensorAt(fit.z, 1).lag).toBeLessThan(200);
  });

  test("noise unlike the assumed one is noticed", () => {
    const loud = probes.map((probe) => ({ ...probe, noise: 1.5 }));
    const fit = fitted({ log: madeLog(fleet, night, 2, loud), scenario });
    for (const { noise } of reportOf(fit).probes) expect(Math.abs(noise - 1.5)).toBeLessThan(0.4);
  });

  test("far-off readings hardly count when told to distrust them", () => {
    const log = logOf(3);
    const temps = log.probes[0].temps.map((temp, k) => (k % 12 === 5 ? temp + 15 : temp));
    const spoilt: TemperatureLog = { ...log, probes: [{ ...log.probes[0], temps }, ...log.probes.slice(1)] };
    const clean = fitted({ log, scenario });
    const offset = (request: Partial<FitRequest>) => {
      const fit = fitted({ log: spoilt, scenario, ...request });
      return fit.unknowns.sensorAt(fit.z, 0).offset - clean.unknowns.sensorAt(clean.z, 0).offset;
    };
    expect(Math.abs(offset({ distrustOutliers: true }))).toBeLessThan(0.3);
    expect(Math.abs(offset({}))).toBeGreaterThan(2 * Math.abs(offset({ distrustOutliers: true })));
  });

  test("a probe in the air drives the model", () => {
    const air = { ...probesOn("air")[0], place: "outside-air" as const, offsetSd: 0.3 };
    const told: Scenario = {
      ...scenario,
      weather: { ...scenario.weather, tempAir: scenario.weather.tempAir.map((t) => t + 4) },
    };
    const rms = (log: TemperatureLog) =>
      reportOf(fitted({ log, scenario: told })).others.find(({ unknown }) => unknown.kind === "air")?.value ??
      Number.NaN;
    // The weather told is 4 K too warm: with a probe in the air nothing needs explaining, without it the air's error does.
    expect(Math.abs(rms(madeLog(fleet, night, 4, [...probes, air])))).toBeLessThan(0.7);
    expect(rms(logOf(4))).toBeLessThan(-0.7);
  });

  test("snow on the cowl is weighed", () => {
    const start = { ...scenario.initial, snowOnCowl: 1, tempOthers: 268 };
    const warm: Scenario = { ...scenario, initial: start };
    const heavy: Scenario = { ...warm, initial: { ...start, snowOnCowl: 3 } };
    const load = (truth: Scenario) => {
      const log = madeLog(fleet, madeNight(fleet, truth, times, 24), 5, probesOn("heads", "cowl_skin"));
      const found = reportOf(fitted({ log, scenario: warm })).others.find((o) => o.unknown.kind === "snow");
      return found?.value ?? Number.NaN;
    };
    expect(load(heavy)).toBeGreaterThan(1.4 * load(warm));
  });

  test("long logs are thinned and readings outside the scenario left out, both counted", () => {
    const long = { ...scenario, duration: 6 * HOUR };
    const dense = madeNight(fleet, scenario, every(20, 12 * HOUR), 22);
    const report = reportOf(fitted({ log: madeLog(fleet, dense, 0, probes.slice(0, 1)), scenario: long }));
    expect(report.outside).toBe(1080);
    expect(report.readings + report.thinned).toBe(1081);
    expect(report.readings).toBeLessThanOrEqual(1000);
  });
});

describe.each(INSTALLATIONS.map((installation) => [installation.id, installation] as const))(
  "the catalogue's %s",
  (_, installation) => {
    test("is fitted with snow on its cowl, through heating, uncovering and a move", () => {
      const pad = "sump-pad-300";
      const moved: Scenario = {
        ...{ ...scenario, installation, duration: 8 * HOUR },
        kit: { heaters: [heaterById(pad)], covers: scenario.kit.covers },
        initial: { ...scenario.initial, snowOnCowl: 1 },
        events: [
          { at: 2 * HOUR, change: { do: "plug-in", heaters: [pad] } },
          { at: 5 * HOUR, change: { do: "unplug", heaters: [pad] } },
          { at: 5.5 * HOUR, change: { do: "cover-off", covers: ["insulated-cover"] } },
          { at: 6 * HOUR, change: { do: "move", to: "hangar" } },
        ],
      };
      const one = madeFleet(moved, 1, 25);
      const made = madeNight(one, moved, every(600, 8 * HOUR), 26);
      const fit = fitAircraft({ log: madeLog(one, made, 0, probesOn("oil", "heads")), scenario: moved });
      expect(fit.status === "fitted" ? "fitted" : fit.message).toBe("fitted");
    });
  },
);

describe("not fitting", () => {
  test("stops when told to", () => {
    let calls = 0;
    const shares: number[] = [];
    const fit = fitAircraft({
      log: logOf(0),
      scenario,
      onProgress: (done) => {
        shares.push(done);
        return ++calls < 3;
      },
    });
    expect(fit).toEqual({ status: "cancelled", message: "the fit was stopped" });
    expect(calls).toBe(3);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });

  test("says when there is nothing to fit", () => {
    const log = logOf(0);
    const late = { ...log, time: log.time.map((t) => t + 1e6) };
    expect(fitAircraft({ log: late, scenario })).toMatchObject({ status: "nothing-to-fit" });
  });

  test("refuses a probe on a part that the aircraft has not", () => {
    expect(() => fitAircraft({ log: madeLogOn("coolant"), scenario })).toThrow("unknown part: coolant");
  });

  function madeLogOn(part: string): TemperatureLog {
    const [first] = logOf(0).probes;
    return { ...logOf(0), probes: [{ ...first, place: { part } }] };
  }
});

test("readings that contradict the model are told, and drag what was learned along far less than they would", () => {
  const log = logOf(0);
  const isOff = log.time.map((t) => Number(t >= 6 * HOUR && t < 7 * HOUR));
  const warm = log.probes.map((probe) =>
    probe.name === "heads"
      ? { ...probe, temps: probe.temps.map((temp, k) => (isOff[k] ? 303 : temp)) }
      : probe,
  );
  const clean = fitted({ log, scenario, distrustOutliers: true });
  const doubtful = fitted({ log: { ...log, probes: warm }, scenario, distrustOutliers: true });
  const averaged = fitted({ log: { ...log, probes: warm }, scenario });
  const told = (fit: AircraftFit) => reportOf(fit).probes.map(({ contradicts }) => contradicts);
  expect(told(clean)).toEqual([undefined, undefined, undefined]);
  const [, heads] = told(doubtful);
  expect(heads).toMatchObject({ count: 12, reading: 303 });
  expect(heads!.model).toBeLessThan(285);
  const moved = (fit: AircraftFit) =>
    Math.hypot(
      ...fit.posterior.mean.map(
        (mean, i) => (mean - clean.posterior.mean[i]) / Math.hypot(...clean.posterior.factor[i]),
      ),
    );
  expect(moved(doubtful)).toBeLessThan(0.6 * moved(averaged));
});
