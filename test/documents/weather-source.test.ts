import { expect, test } from "vitest";
import { z } from "zod";
import { newNotes, weatherOf } from "../../src/documents/index.js";
import { WEATHER_SOURCES, type WeatherSource } from "../../src/documents/weather-sources/index.js";
import { readRows } from "../../src/weather/index.js";

const shape = { steady_c: z.number().exactOptional() };
/** A source as somebody would add it: one temperature for all of the time. */
const STEADY: WeatherSource<typeof shape> = {
  name: "steady_c",
  shape,
  named: ["steady_c"],
  isForecast: false,
  path: ["weather", "steady_c"],
  read({ steady_c = 0 }, { clock }) {
    const rows = [clock.start, clock.end].map((time, i) => ({
      ...{ time, tempAir: steady_c + 273.15, windSpeed: 2, place: `end ${i}` },
      ...{ tempDewPoint: steady_c + 270, cloudCover: 0 },
    }));
    return readRows(rows, { origin: "somebody who says so" });
  },
};

const clock = { start: 1_768_410_000, end: 1_768_417_200, zone: "UTC" };

function read(weather: object) {
  const notes = newNotes();
  const sources = [...WEATHER_SOURCES, STEADY as WeatherSource];
  return { found: weatherOf({ weather }, clock, undefined, notes, sources), notes };
}

test("a source is one object in the list: it is chosen by its keys, read and cut like the others", () => {
  const { found, notes } = read({ steady_c: -20 });
  expect(notes.issues).toEqual([]);
  expect(found?.cut.tempAir[1]).toBeCloseTo(253.15, 9);
});

test("what belongs to another source is refused beside it, and two sources too", () => {
  expect(read({ steady_c: -20, lows: [] }).notes.issues).toMatchObject([
    { path: "weather.lows", expected: "nothing: lows goes with metar and taf" },
  ]);
  expect(read({ steady_c: -20, taf: "TAF" }).notes.issues).toMatchObject([
    { path: "weather", received: JSON.stringify("metar and taf and steady_c") },
  ]);
  expect(read({ steady_c: -20, issued: "2026-01-14T18:00Z" }).notes.issues).toMatchObject([
    { path: "weather.issued", expected: "nothing: issued goes with points or csv_file" },
  ]);
});
