import { expect, test } from "vitest";
import { nextDeparture, scenarioOf } from "../../src/base/index.js";
import { readScenarioDocument } from "../../src/documents/index.js";
import { english } from "../../src/words/index.js";
import { plainWords } from "../plain-words.js";
import { at, HOUR, OPENED, opening, stateOf, withoutForecast } from "./example-base.js";

const now = OPENED + 3 * HOUR;

function documentOf(scenario: ReturnType<typeof scenarioOf>) {
  if (!scenario.ok) throw new Error(english(scenario.reason));
  return scenario.document();
}

test("a scenario from now wants the soonest departure by the aircraft's habits and reaches past it", () => {
  const state = stateOf(opening.events);
  const document = documentOf(scenarioOf(state, "lynx", { now, from: "now" }));
  const lynx = state.aircraft.get("lynx");
  expect(document.want).toEqual({
    departure: new Date(lynx === undefined ? 0 : (nextDeparture(lynx, now)?.departure ?? 0)).toISOString(),
    pulled_out: false,
    chance: 0.9,
    heaters: ["whole-engine-4", "battery-blanket-60"],
    unplug_before_min: 15,
    cover_off_before_min: 10,
  });
  expect(document.fitted).toEqual({ covers: ["insulated-cover"] });
  const reading = readScenarioDocument(document);
  expect(reading.ok && reading.scenario.start * 1000).toBe(now);
  const departure = Date.parse(document.want?.departure ?? "");
  expect(now + document.hours * HOUR).toBeGreaterThanOrEqual(departure + 6 * HOUR);
});

test("shortly before the departure the habit is cut to what time is left", () => {
  const state = stateOf(opening.events);
  const departure = state.aircraft.get("lynx")?.departures[0].departure ?? 0;
  const document = documentOf(scenarioOf(state, "lynx", { now: departure - 14 * 60_000, from: "now" }));
  expect(document.want).toMatchObject({ unplug_before_min: 7, cover_off_before_min: 7 });
  expect(readScenarioDocument(document).ok).toBe(true);
});

test("a scenario from the anchor carries every change since, one from now how it stands", () => {
  const state = stateOf([
    ...opening.events,
    { ...at(1), kind: "plugged-in", aircraft: "lynx", heaters: ["whole-engine-4"] },
    { ...at(2), kind: "cover-off", aircraft: "lynx", covers: ["insulated-cover"] },
    { ...at(2.5), kind: "moved", aircraft: "lynx", to: "hangar" },
  ]);
  const past = documentOf(scenarioOf(state, "lynx", { now, from: "anchor" }));
  expect(Date.parse(past.start)).toBe(OPENED);
  expect(past.place).toBe("ramp");
  expect(past.fitted?.covers).toEqual(["insulated-cover"]);
  expect(past.events).toEqual([
    { time: new Date(OPENED + HOUR).toISOString(), do: "plug_in", heaters: ["whole-engine-4"] },
    { time: new Date(OPENED + 2 * HOUR).toISOString(), do: "cover_off", covers: ["insulated-cover"] },
    { time: new Date(OPENED + 2.5 * HOUR).toISOString(), do: "move", to: "hangar" },
  ]);
  const present = documentOf(scenarioOf(state, "lynx", { now, from: "now" }));
  expect(present).toMatchObject({ place: "hangar", plugged_in: ["whole-engine-4"], events: [] });
  expect(present.fitted?.covers).toEqual([]);
});

test("a plug that went in within this minute is heat that is on, not heat still to come", () => {
  const state = stateOf([
    ...opening.events,
    { ...at(3 + 20 / 3600), kind: "plugged-in", aircraft: "lynx", heaters: ["whole-engine-4"] },
  ]);
  const document = documentOf(scenarioOf(state, "lynx", { now: now + 40_000, from: "now" }));
  expect(document).toMatchObject({
    start: new Date(now).toISOString(),
    plugged_in: ["whole-engine-4"],
    plugged_in_since: new Date(now).toISOString(),
    events: [],
  });
  const reading = readScenarioDocument(document);
  expect(reading.ok && reading.scenario.initial.heatedFor).toBe(0);
});

test("without a forecast, or with one that ends before the departure, it says so by name", () => {
  const none = scenarioOf(stateOf(withoutForecast), "lynx", { now, from: "now" });
  expect(none.ok ? "" : english(none.reason)).toMatch(/no forecast was entered/);
  const short = stateOf([
    ...withoutForecast,
    {
      ...at(1),
      kind: "forecast",
      origin: "the evening's sheet",
      weather: { points: [{ at_h: 0, air_c: -20, wind_mps: 2, dew_point_c: -22, cloud_fraction: 0 }] },
    },
  ]);
  const refused = scenarioOf(short, "lynx", { now, from: "now" });
  expect(refused.ok ? "" : english(refused.reason)).toMatch(/the evening's sheet.*weather/);
});

test("the newest forecast that reaches far enough is used, with its age; hours in it count from its receipt", () => {
  const point = (at_h: number, air_c: number) => ({
    at_h,
    air_c,
    wind_mps: 2,
    dew_point_c: -30,
    cloud_fraction: 0,
  });
  const state = stateOf([
    ...opening.events,
    {
      ...at(2),
      kind: "forecast",
      origin: "second sheet",
      weather: { points: Array.from({ length: 31 }, (_, h) => point(h, -10)) },
    },
    { ...at(2.5), kind: "forecast", origin: "too short", weather: { points: [point(0, -5)] } },
  ]);
  const scenario = scenarioOf(state, "lynx", { now, from: "now" });
  expect(scenario).toMatchObject({ ok: true, forecast: { origin: "second sheet" } });
  expect(scenario.ok && plainWords(scenario.assumptions)).toBe("Weather: second sheet, received 1.0 h ago.");
  expect(documentOf(scenario).weather.points?.[3].time).toBe(new Date(OPENED + 5 * HOUR).toISOString());
});

test("reports as text serve too", () => {
  const state = stateOf([
    ...withoutForecast,
    {
      ...at(0.1),
      kind: "forecast",
      origin: "pasted reports",
      weather: {
        metar: "METAR XXRV 141820Z 36004KT 9999 FEW020 M18/M21 Q1020",
        taf: "TAF XXRV 141700Z 1418/1518 35005KT 9999 FEW020 TNM24/1505Z TXM15/1513Z",
      },
    },
  ]);
  expect(scenarioOf(state, "lynx", { now, from: "now" })).toMatchObject({ ok: true });
  const past = documentOf(scenarioOf(state, "lynx", { now, from: "anchor" }));
  expect(past.weather.points?.length).toBeGreaterThan(5);
  expect(past.weather.points?.[1].air_c).toBeLessThan(-15);
});

test("an aircraft parked for weeks is run from three days ago on, and what it was is not taken for known", () => {
  const long = OPENED + 20 * 24 * HOUR;
  const points = Array.from({ length: 26 * 8 }, (_, i) => ({
    at_h: 3 * i,
    air_c: -20,
    wind_mps: 2,
    dew_point_c: -22,
    cloud_fraction: 0,
  }));
  const state = stateOf([
    ...withoutForecast,
    { ...at(0), kind: "forecast", origin: "a long sheet", weather: { points } },
  ]);
  const scenario = scenarioOf(state, "wren", { now: long, from: "anchor" });
  const document = documentOf(scenario);
  expect(long - Date.parse(document.start)).toBeGreaterThanOrEqual(72 * HOUR);
  expect(long - Date.parse(document.start)).toBeLessThan(96 * HOUR);
  expect(document.initial).toEqual({ uncertainty_k: 5 });
  expect(scenario.ok && plainWords(scenario.assumptions)).toMatch(/is not used/);
});

test.each(["anchor", "now"] as const)("its document, read, is the scenario itself, from %s", (from) => {
  const state = stateOf([
    ...opening.events,
    { ...at(1), kind: "plugged-in", aircraft: "lynx", heaters: ["whole-engine-4"] },
    { ...at(2), kind: "moved", aircraft: "wren", to: "hangar" },
  ]);
  for (const id of state.aircraft.keys()) {
    const found = scenarioOf(state, id, { now, from });
    if (!found.ok) throw new Error(english(found.reason));
    const reading = readScenarioDocument(JSON.stringify(found.document()));
    if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
    const { ok: _, document: __, ...read } = reading;
    const { assumptions, ...made } = found.aircraft;
    expect(made).toEqual({ ...read, assumptions: undefined });
    expect(assumptions).toEqual([...read.assumptions, ...found.assumptions]);
  }
});
