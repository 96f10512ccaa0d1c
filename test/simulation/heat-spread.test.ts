import { describe, expect, it } from "vitest";
import type { Heater, HeaterBasis } from "../../src/aircraft/index.js";
import { heaterById, installationById } from "../../src/aircraft/index.js";
import { drawEnsemble, prepareRun, type TimedChange, timelineOf } from "../../src/simulation/index.js";
import { SECONDS_OF_HOUR } from "../../src/units/index.js";
import type { WeatherSeries } from "../../src/weather/index.js";

const MEMBERS = 200;
const END = 4 * SECONDS_OF_HOUR;
const AIR = 253.15;
const ends = (value: number) => Float64Array.of(value, value);
const weather: WeatherSeries = {
  time: Float64Array.of(0, END),
  tempAir: ends(AIR),
  windSpeed: ends(2),
  tempDewPoint: ends(AIR - 4),
  cloudCover: ends(0.5),
  origin: "steady",
  assumptions: [],
};

/** [K] of the oil of every case after four hours under one pad, whose numbers rest on `basis`. */
function oilUnder(basis: HeaterBasis): Float64Array {
  const heater: Heater = { ...heaterById("sump-pad-220"), basis };
  const events: TimedChange[] = [{ at: 0, change: { do: "plug-in", heaters: [heater.id] } }];
  const configuration = {
    place: "hangar",
    heatersOn: new Set<string>(),
    coversOn: new Set<string>(),
  } as const;
  const run = prepareRun(
    {
      installation: installationById("four-carburettor-160"),
      kit: { heaters: [heater], covers: [] },
      start: 0,
      duration: END,
      weather,
      site: { tempHangar: AIR, roughness: 0.03 },
      initial: { configuration, temps: new Map(), tempOthers: AIR, sd: 0 },
      events,
    },
    drawEnsemble({ members: MEMBERS, seed: 5, weather }),
  );
  const result = run.advance({
    state: run.initial,
    from: 0,
    to: END,
    timeline: timelineOf(configuration, events),
    sampleTimes: [END],
    tolerance: 0.02,
  });
  if (result.status !== "completed") throw new Error(result.remedy);
  const oil = run.network.parts.findIndex(({ name }) => name === "oil") * MEMBERS;
  return result.samples.slice(oil, oil + MEMBERS).sort();
}

const width = (sorted: Float64Array) => sorted[MEMBERS * 0.95] - sorted[MEMBERS * 0.05];
const measured = oilUnder({ kind: "measured", runs: 2 });
const scaled = oilUnder({ kind: "scaled", from: "sump-pad-220" });
const estimated = oilUnder({ kind: "estimated" });

describe("the band of what a heater does", () => {
  it("is wider where its numbers are scaled, and widest where they are estimated", () => {
    expect(width(scaled)).toBeGreaterThan(width(measured) + 0.5);
    expect(width(estimated)).toBeGreaterThan(width(scaled) + 1);
  });

  it("is colder at its cold end, which is what a plan goes by", () => {
    expect(estimated[MEMBERS * 0.1]).toBeLessThan(measured[MEMBERS * 0.1] - 0.5);
  });

  it("keeps its middle", () => {
    expect(Math.abs(estimated[MEMBERS / 2] - measured[MEMBERS / 2])).toBeLessThan(1.5);
  });
});
