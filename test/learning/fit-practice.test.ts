import { describe, expect, test } from "vitest";
import { coverById, heaterById, type Installation, installationById } from "../../src/aircraft/index.js";
import {
  type FittedAircraft,
  fitAircraft,
  fittedAircraft,
  posteriorFor,
  type TemperatureLog,
} from "../../src/learning/index.js";
import { USUAL_DISCREPANCY } from "../../src/learning/sensor-noise.js";
import {
  drawEnsemble,
  type MultiplierPosterior,
  partTemps,
  type Scenario,
  simulate,
} from "../../src/simulation/index.js";
import { kelvinFromCelsius as kelvin } from "../../src/units/index.js";
import { HOUR, weatherOf } from "./example-night.js";

// The heating runs of test/validation/practice.cases.ts (common practice, no published source; readings to about ±2 K and
// ±10 min): learned from the two hangar runs, held against the ramp run, of which nothing was learned.
const READING_SD = 2;
const TIME_SD = 600;
const PAD = "sump-pad-220";
const QUILT = "improvised-quilt";
const kit = { heaters: [heaterById(PAD)], covers: [coverById(QUILT)] };

function hangarRuns(installation: Installation): Scenario {
  return {
    ...{ installation, kit, start: 0, duration: 17 * HOUR },
    weather: steady(8.5),
    site: { tempHangar: kelvin(8.5), roughness: 0.005 },
    initial: {
      configuration: { place: "hangar", heatersOn: new Set(), coversOn: new Set() },
      temps: new Map(
        Object.entries({ oil: 9.4, sump: 9, heads_front: 6, heads_rear: 6, battery: 6 }).map(([part, c]) => [
          part,
          kelvin(c),
        ]),
      ),
      tempOthers: kelvin(7),
      sd: 1,
    },
    events: [
      { at: 0, change: { do: "plug-in", heaters: [PAD] } },
      { at: 5 * HOUR, change: { do: "cover-on", covers: [QUILT] } },
    ],
  };
}

/** [h, oil, heads, battery, pad centre] in °C; NaN where nobody read. The quilted run settles by about 12 h. */
const HANGAR_READINGS = [
  [0, 9.4, 6, 6, Number.NaN],
  [3, 54, 15.5, Number.NaN, Number.NaN],
  [5, 55.5, 18.3, 10.5, Number.NaN],
  [17, 61, 29, Number.NaN, 230],
];
const log: TemperatureLog = {
  time: Float64Array.from(HANGAR_READINGS, ([h]) => h * HOUR),
  probes: ["oil", "heads", "battery", "heater_surface"].map((part, p) => ({
    name: part,
    place: { part },
    temps: Float64Array.from(HANGAR_READINGS, (row) => kelvin(row[p + 1])),
  })),
  findings: [],
  origin: "hangar runs",
};

/** [part, h, °C] of the ramp run. */
const RAMP_READINGS: readonly (readonly [string, number, number])[] = [
  ["oil", 0.5, -1],
  ["oil", 2, 28],
  ["oil", 4, 34],
  ["heads", 4, -7],
  ["battery", 4, -17],
  ["oil", 9, 34],
  ["heads", 9, -7],
  ["battery", 9, -17],
];

function learned(installation: Installation): FittedAircraft {
  const reading = { noise: READING_SD, offsetSd: 0.5 };
  // The pad's temperature differs by tens of kelvin over its area.
  const pad = { noise: 20, offsetSd: 0.5 };
  const fit = fitAircraft({
    log,
    scenario: hangarRuns(installation),
    sensors: { oil: reading, heads: reading, battery: reading, heater_surface: pad },
  });
  if (fit.status !== "fitted") throw new Error(fit.message);
  return fittedAircraft(fit, log);
}

/** The ramp run as foretold: mean and sd of each reading, errors of reading and model included. */
function foretold(installation: Installation, posterior: MultiplierPosterior | undefined) {
  const ramp: Scenario = {
    ...hangarRuns(installation),
    duration: 10 * HOUR,
    weather: steady(-23),
    initial: {
      configuration: { place: "ramp", heatersOn: new Set([PAD]), coversOn: new Set([QUILT]) },
      temps: new Map(),
      tempOthers: kelvin(-23),
      sd: 1,
    },
    events: [],
  };
  const draws = drawEnsemble({
    ...{ members: 200, seed: 3, weather: ramp.weather },
    ...(posterior === undefined ? {} : { posterior }),
  });
  const times = [
    0,
    600,
    ...RAMP_READINGS.flatMap(([, h]) => [h * HOUR - TIME_SD, h * HOUR, h * HOUR + TIME_SD]),
  ];
  const grid = [...new Set(times)].sort((a, b) => a - b);
  const course = simulate(ramp, draws, grid);
  const values = (part: string, t: number) => {
    const parts = part === "heads" ? ["heads_front", "heads_rear"] : [part];
    const s = grid.indexOf(t);
    return Array.from(
      { length: 200 },
      (_, m) => parts.reduce((sum, p) => sum + partTemps(course, p, s)[m] / parts.length, 0) - kelvin(0),
    );
  };
  const readings = RAMP_READINGS.map(([part, h, read]) => {
    const t = h * HOUR;
    const temps = values(part, t);
    const mean = meanOf(temps);
    const perSecond = (meanOf(values(part, t + TIME_SD)) - meanOf(values(part, t - TIME_SD))) / (2 * TIME_SD);
    const { floor, share } = USUAL_DISCREPANCY;
    const variance =
      meanOf(temps.map((c) => (c - mean) ** 2)) +
      READING_SD ** 2 +
      (TIME_SD * perSecond) ** 2 +
      floor ** 2 +
      (share * (mean + 23)) ** 2;
    return { part, h, read, mean, sd: Math.sqrt(variance) };
  });
  return { readings, pad: values(`heater:${PAD}:pad`, 600) };
}

const onRamp = { setting: { place: "ramp" as const, covers: [QUILT] }, heaters: [PAD] };
const right = installationById("four-carburettor-160");
/** The same aircraft described badly: stiffer heat paths from the oil and a tighter cowl. */
const wrong: Installation = {
  ...right,
  contacts: {
    ...right.contacts,
    oil_crankcase_w_per_k: 0.5 * right.contacts.oil_crankcase_w_per_k,
    oil_crankshaft_w_per_k: 0.5 * right.contacts.oil_crankshaft_w_per_k,
    sump_crankcase_w_per_k: 0.6 * right.contacts.sump_crankcase_w_per_k,
  },
  cowl: {
    ...right.cowl,
    inlet_area_m2: 0.6 * right.cowl.inlet_area_m2,
    outlet_area_m2: 0.6 * right.cowl.outlet_area_m2,
  },
};

describe.each([
  ["described as in the catalogue", right],
  ["described badly", wrong],
])("learned in a hangar, an aircraft %s", (_, installation) => {
  const posterior = posteriorFor(learned(installation), onRamp);
  const { readings, pad } = foretold(installation, posterior);
  const unfitted = foretold(installation, undefined).readings;

  test.each(readings)("is foretold on the ramp: $part at $h h", ({ read, mean, sd }) => {
    expect(Math.abs(read - mean)).toBeLessThan(1.645 * sd);
  });

  test("bands of the oil are hardly more than half as wide as without learning", () => {
    const width = (of: typeof readings) =>
      of.filter(({ part, h }) => part === "oil" && h >= 2).reduce((sum, { sd }) => sum + sd, 0);
    expect(width(readings)).toBeLessThan(0.6 * width(unfitted));
  });

  test("the pad is above 150 °C within ten minutes in the upper half of its band", () => {
    const sorted = [...pad].sort((a, b) => a - b);
    expect(sorted[Math.floor(0.5 * sorted.length)]).toBeGreaterThan(140);
    expect(sorted[Math.floor(0.95 * sorted.length)]).toBeGreaterThan(150);
  });
});

test("a bad description is mended by the log", () => {
  const error = (readings: ReturnType<typeof foretold>["readings"]) =>
    Math.sqrt(meanOf(readings.map(({ read, mean }) => (read - mean) ** 2)));
  const before = error(foretold(wrong, undefined).readings);
  const after = error(foretold(wrong, posteriorFor(learned(wrong), onRamp)).readings);
  expect(before).toBeGreaterThan(5);
  expect(after).toBeLessThan(3.5);
});

function steady(celsius: number) {
  return weatherOf(
    18,
    () => kelvin(celsius),
    () => 1,
  );
}

function meanOf(values: readonly number[]): number {
  return values.reduce((a, b) => a + b) / values.length;
}
