import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { winterFromDocument } from "../../src/questions/index.js";
import { celsiusFromKelvin } from "../../src/units/index.js";
import { cutSeries, localText, madeYear, PLACES, type WeatherSeries } from "../../src/weather/index.js";
import { type PieceResult, runPiece, winterStudy } from "../../src/winter/index.js";
import { readWinter, winterDocument } from "./small-winter.js";
import { weatherCsv } from "./weather-files.js";

// The same winter as files: what comes out must be what the weather itself gives, whatever year the files are of.

const HOUR = 3600;
const DAY = 24 * HOUR;
const START = Date.parse("2026-01-05T00:00+01:00") / 1000;
const END = Date.parse("2026-02-05T00:00+01:00") / 1000;
const made = madeYear({ place: PLACES[0]!, from: START - DAY, to: END + 2 * DAY, seed: 2, year: 1 });
const inside = cutSeries(made, START, END);
if (!inside.ok) throw new Error("the made winter does not cover the study");
const base = readWinter();
const straight = runPiece(
  { ...base, years: [{ name: "as made", weather: inside.series }] },
  { kit: 0, year: 0 },
)!;

/** Moved to another year; 2019 and 2026 have the same days in January and February. */
const inYear = (t: number, year: number) => {
  const moved = new Date(t * 1000);
  moved.setUTCFullYear(moved.getUTCFullYear() + year - 2026);
  return moved.getTime() / 1000;
};

const csv = (year: number, series = made) =>
  weatherCsv({ ...series, time: series.time.map((t) => inYear(t, year)) });

/** Whole years of rows: January and February as made, the rest of the year far warmer, to be seen if it were used. */
function epw({ time, tempAir, tempDewPoint, windSpeed, cloudCover }: WeatherSeries): string {
  const example = readFileSync("examples/weather/ravnholt.epw", "utf8").split("\r\n");
  const template = example[8]!.split(",");
  const first = Date.UTC(2019, 0, 1) / 1000 - HOUR;
  const byTime = new Map(Array.from(time, (t, i) => [inYear(t, 2019), i]));
  const rows = Array.from({ length: 365 * 24 }, (_, h) => {
    const i = byTime.get(first + (h + 1) * HOUR);
    const day = new Date((first + HOUR + Math.floor(h / 24) * DAY) * 1000);
    const cells = [...template];
    cells.splice(0, 4, "2019", `${day.getUTCMonth() + 1}`, `${day.getUTCDate()}`, `${(h % 24) + 1}`);
    cells[6] = i === undefined ? "30.0" : celsiusFromKelvin(tempAir[i]!).toFixed(2);
    cells[7] = i === undefined ? "20.0" : celsiusFromKelvin(tempDewPoint[i]!).toFixed(2);
    cells[21] = i === undefined ? "1.0" : windSpeed[i]!.toFixed(2);
    cells[22] = i === undefined ? "0" : `${Math.round(10 * cloudCover[i]!)}`;
    return cells.join(",");
  });
  return [...example.slice(0, 7), "DATA PERIODS,1,1,Data,Tuesday, 1/1,12/31", ...rows].join("\r\n");
}

function near(result: PieceResult): void {
  result.habits.forEach((habit, h) => {
    const other = straight.habits[h]!;
    // Plans follow a forecast that is read from the weather: rounded to hundredths, a lead may move by minutes.
    expect(Math.abs(habit.heaterTime / other.heaterTime - 1)).toBeLessThan(0.01);
    expect(Math.abs(habit.energy[0]! / other.energy[0]! - 1)).toBeLessThan(0.01);
    expect(Math.abs(habit.hottestSurface[0]! - other.hottestSurface[0]!)).toBeLessThan(0.5);
    habit.ready.forEach((count, d) => {
      expect(Math.abs(count - other.ready[d]!)).toBeLessThanOrEqual(1);
    });
  });
}

test("an hourly log of another year", () => {
  const read = readWinter({ weather: { csv_files: ["a.csv"] } }, { "a.csv": csv(2019) });
  expect(read.years.map(({ name }) => name)).toEqual(["a.csv"]);
  near(runPiece(read, { kit: 0, year: 0 })!);
});

test("an EPW year", () => {
  const read = readWinter({ weather: { epw_files: ["a.epw"] } }, { "a.epw": epw(made) });
  near(runPiece(read, { kit: 0, year: 0 })!);
});

test("two winters of logs are two winters of the study", () => {
  const milder = { ...made, tempAir: made.tempAir.map((t) => t + 4), tempDewPoint: made.tempDewPoint };
  const read = readWinter(
    { weather: { csv_files: ["cold.csv", "mild.csv"] } },
    { "cold.csv": csv(2019), "mild.csv": csv(2021, milder) },
  );
  const [cold, mild] = [0, 1].map((year) => runPiece(read, { kit: 0, year })!);
  const [always, clock, planned] = [0, 1, 2].map((h) => [cold!.habits[h]!, mild!.habits[h]!] as const);
  expect(always![0].energy[0]).toBeCloseTo(always![1].energy[0]!, 0);
  expect(clock![1].ready[0]!).toBeGreaterThanOrEqual(clock![0].ready[0]!);
  expect(planned![1].heaterTime).toBeLessThan(planned![0].heaterTime);
  const study = winterStudy(read, [cold!, mild!]);
  expect(study.rows.length).toBe(3);
});

test("departures out of a file are those of the schedule it was written from", () => {
  const rows = base.departures.map((t) => localText(t, "CET").slice(0, 16));
  const read = readWinter(
    { flying: { departures_csv: "flights.csv", flight_h: 1.5 } },
    { "flights.csv": ["who,time", ...rows.map((row) => `somebody,${row}`)].join("\n") },
  );
  expect(read.departures).toEqual(base.departures);
  expect(runPiece(read, { kit: 0, year: 0 })).toEqual(runPiece(base, { kit: 0, year: 0 }));
});

test("rows that cannot be used, and files that are not there, are named with their places", () => {
  const outcome = winterFromDocument(
    winterDocument({
      weather: { csv_files: ["a.csv", "gone.csv"] },
      flying: { departures_csv: "flights.csv" },
    }),
    {
      readFile: (name) => {
        if (name === "a.csv") return { ok: true, text: csv(2019).replace(/,-?\d+\.\d+,/, ",cold,") };
        if (name === "flights.csv")
          return { ok: true, text: "time\n2026-01-20T10:00\n2026-07-01T10:00\nnoon" };
        return { ok: false, reason: "there is no such file" };
      },
    },
  );
  if (outcome.status !== "refused") throw new Error(outcome.status);
  const told = outcome.issues.map(({ path, received }) => `${path}: ${received}`);
  expect(told).toEqual([
    "weather.csv_files[0], line 2, column air_c: cold",
    'weather.csv_files[1]: "gone.csv"',
    "flying.departures_csv, line 3: 2026-07-01T10:00",
    "flying.departures_csv, line 4: noon",
  ]);
});
