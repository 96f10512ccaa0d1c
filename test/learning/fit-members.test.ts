import { describe, expect, test } from "vitest";
import { createBatch, SNOW_LOAD } from "../../src/learning/fit-members.js";
import { drawEnsemble, prepareRun, type Scenario, timelineOf } from "../../src/simulation/index.js";
import { every, HOUR, heatedNight, weatherOf } from "./example-night.js";

const scenario = heatedNight("sump-pad-220");
const timelineFor = ({ initial, events }: Scenario) => timelineOf(initial.configuration, events);

describe("members of a batch", () => {
  test("run as an ensemble of the same draws runs", () => {
    const plain = drawEnsemble({ members: 8, seed: 2, weather: scenario.weather });
    // Every member in the scenario's own weather, as a batch has it.
    const weather = {
      ...plain.weather,
      tempOffset: plain.weather.tempOffset.map(() => 0),
      windFactor: plain.weather.windFactor.map(() => 1),
      cloudOffset: plain.weather.cloudOffset.map(() => 0),
    };
    const run = prepareRun(scenario, { ...plain, weather });
    const request = { from: 0, to: 6 * HOUR, sampleTimes: [HOUR, 3 * HOUR, 6 * HOUR], tolerance: 0.01 };
    const expected = run.advance({ ...request, state: run.initial, timeline: timelineFor(scenario) });
    const got = createBatch({ scenario }).advance({
      ...request,
      ...{ members: 8, multipliers: plain.multipliers, state: run.initial },
      timelines: [timelineFor(scenario)],
    });
    expect(got.status).toBe("completed");
    expect(got.samples).toEqual(expected.samples);
  });

  test("an error of the air moves what stands unheated by as much, on the ramp and in the hangar", () => {
    for (const place of ["ramp", "hangar"] as const) {
      const parked: Scenario = {
        ...scenario,
        weather: weatherOf(
          80,
          () => 260,
          () => 5,
        ),
        duration: 80 * HOUR,
        initial: { ...scenario.initial, configuration: { ...scenario.initial.configuration, place } },
        events: [],
      };
      const batch = createBatch({ scenario: parked });
      const members = 2;
      const result = batch.advance({
        members,
        multipliers: new Map(),
        airBias: Float64Array.of(0, 2),
        timelines: [timelineFor(parked)],
        ...{ state: new Float64Array(batch.parts.length * members).fill(265), from: 0, to: 80 * HOUR },
        tolerance: 0.01,
      });
      const oil = batch.parts.indexOf("oil") * members;
      expect(result.state[oil + 1] - result.state[oil], place).toBeCloseTo(2, 1);
    }
  });

  test("members may go by different timelines", () => {
    const batch = createBatch({ scenario });
    const members = 3;
    const cold = timelineFor({ ...scenario, events: [] });
    const result = batch.advance({
      members,
      multipliers: new Map(),
      timelines: [timelineFor(scenario), cold],
      variant: [0, 1, 0],
      ...{ state: new Float64Array(batch.parts.length * members).fill(256), from: 0, to: 4 * HOUR },
      tolerance: 0.01,
    });
    const oil = batch.parts.indexOf("oil") * members;
    expect(result.state[oil]).toBeGreaterThan(285);
    expect(result.state[oil + 1]).toBeLessThan(262);
    expect(result.state[oil + 2]).toBe(result.state[oil]);
  });

  test("measured hangar air replaces the site's", () => {
    const indoors: Scenario = {
      ...scenario,
      initial: {
        ...scenario.initial,
        configuration: { place: "hangar", heatersOn: new Set(), coversOn: new Set() },
      },
      events: [],
    };
    const hangarAir = { time: [HOUR, 3 * HOUR], temps: [283, 289] };
    const batch = createBatch({ scenario: indoors, hangarAir });
    const { configuration } = indoors.initial;
    expect(batch.tempAirAt(configuration, 0)).toBe(283);
    expect(batch.tempAirAt(configuration, 2 * HOUR)).toBe(286);
    const result = batch.advance({
      members: 1,
      multipliers: new Map(),
      timelines: [timelineFor(indoors)],
      ...{ state: new Float64Array(batch.parts.length).fill(283), from: 0, to: HOUR },
      ...{ sampleTimes: every(HOUR / 2, HOUR), tolerance: 0.01 },
    });
    for (const temp of result.state) expect(Math.abs(temp - 283)).toBeLessThan(0.02);
  });

  test("twice the snow takes twice as long to melt", () => {
    const snowy: Scenario = {
      ...scenario,
      weather: weatherOf(
        40,
        () => 277,
        () => 2,
      ),
      duration: 40 * HOUR,
      initial: { ...scenario.initial, snowOnCowl: 2, tempOthers: 272.5 },
      events: [],
    };
    const batch = createBatch({ scenario: snowy });
    const members = 2;
    const sampleTimes = every(600, 40 * HOUR);
    const result = batch.advance({
      members,
      multipliers: new Map([[SNOW_LOAD, Float64Array.of(1, 2)]]),
      timelines: [timelineFor(snowy)],
      ...{ state: new Float64Array(batch.parts.length * members).fill(272.5), from: 0, to: 40 * HOUR },
      ...{ sampleTimes, tolerance: 0.01 },
    });
    const skin = batch.parts.indexOf("cowl_skin");
    const melted = [0, 1].map((m) =>
      sampleTimes.findIndex((_, s) => result.samples[(s * batch.parts.length + skin) * members + m] > 274.5),
    );
    expect(melted[0]).toBeGreaterThan(3);
    expect(melted[1] / melted[0]).toBeGreaterThan(1.7);
    expect(melted[1] / melted[0]).toBeLessThan(2.3);
  });
});
