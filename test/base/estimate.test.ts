import { expect, test } from "vitest";
import type { KnownReading } from "../../src/base/index.js";
import type { BaseState } from "../../src/logbook/index.js";
import { estimateNow, type SavedEstimate } from "../../src/questions/index.js";
import { at, HOUR, OPENED, opening, stateOf, withoutForecast } from "./example-base.js";

const now = OPENED + 3 * HOUR + 12_345;
const PROBES = ["oil", "heads", "crankcase"] as const;

/** Readings every 20 s that cool slowly, but for a gap of an hour. */
function readings(until = now): KnownReading[] {
  const rows: KnownReading[] = [];
  for (let time = OPENED + 5000; time < until; time += 30_000) {
    const hours = (time - OPENED) / HOUR;
    if (hours > 1.5 && hours < 2.3) continue;
    for (const probe of PROBES) rows.push({ aircraft: "lynx", probe, time, tempC: -17 - 0.6 * hours });
  }
  return rows;
}

function estimated(state: BaseState, saved?: SavedEstimate, rows = readings(), when = now) {
  const outcome = estimateNow(state, "lynx", { now: when, readings: rows, ...(saved ? { saved } : {}) });
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

const state = stateOf(opening.events);

test("an estimate taken up from what was saved is the same to the last bit as one in one go", () => {
  const whole = estimated(state);
  expect(whole.resumed).toBe(false);
  for (const hours of [0.7, 2.4]) {
    const then = OPENED + hours * HOUR + 7777;
    const { saved } = estimated(state, undefined, readings(then), then);
    const on = estimated(
      state,
      JSON.parse(JSON.stringify(saved)),
      readings().filter(({ time }) => time > saved.through - 60_000),
    );
    expect(on.resumed).toBe(true);
    expect(on.now).toEqual(whole.now);
    expect(on.saved).toEqual(whole.saved);
  }
});

test("it follows its probes, and its band is wider without them", () => {
  const { parts, probes } = estimated(state).now;
  expect(Math.abs(parts.oil.p50_c - (-17 - 0.6 * 3))).toBeLessThan(1);
  expect(probes.map(({ name }) => name)).toEqual(PROBES);
  expect(probes[0].readings).toBeGreaterThan(120);
  const blind = estimated(state, undefined, []).now;
  const width = ({ p05_c, p95_c }: { p05_c: number; p95_c: number }) => p95_c - p05_c;
  expect(width(blind.parts.oil)).toBeGreaterThan(1.2 * width(parts.oil));
  expect(blind.probes[0].readings).toBe(0);
});

test("an event that comes late, and a new set-up of the probes, make it work everything out anew", () => {
  const { saved } = estimated(state);
  const late = stateOf([
    ...opening.events,
    { ...at(1), kind: "plugged-in", aircraft: "lynx", heaters: ["whole-engine-4"] },
  ]);
  const anew = estimated(late, saved);
  expect(anew.resumed).toBe(false);
  expect(anew.now).toEqual(estimated(late).now);
  const byHand = stateOf([
    ...opening.events,
    { ...at(1.5), kind: "reading", aircraft: "lynx", part: "oil", temp_c: -18 },
  ]);
  expect(estimated(byHand, saved).resumed).toBe(false);
});

test("a newer forecast changes what is ahead, not what was estimated", () => {
  const { saved } = estimated(state, undefined, readings(now - HOUR), now - HOUR);
  const newer = stateOf([
    ...opening.events,
    {
      ...at(2.6),
      kind: "forecast",
      origin: "a newer sheet",
      weather: {
        points: Array.from({ length: 31 }, (_, at_h) => ({
          at_h,
          air_c: -12,
          wind_mps: 3,
          dew_point_c: -20,
          cloud_fraction: 1,
        })),
      },
    },
  ]);
  const on = estimated(newer, saved);
  expect(on.resumed).toBe(true);
  expect(on.now).toEqual(estimated(newer).now);
});

test("without weather there is no estimate, and it says why", () => {
  const outcome = estimateNow(stateOf(withoutForecast), "lynx", { now, readings: readings() });
  expect(outcome).toMatchObject({
    status: "refused",
    issues: [{ received: expect.stringMatching(/no forecast/) }],
  });
});

test("it can be stopped", () => {
  const outcome = estimateNow(state, "lynx", { now, readings: readings(), onProgress: () => false });
  expect(outcome.status).toBe("cancelled");
});
