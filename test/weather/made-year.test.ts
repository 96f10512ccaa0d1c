import { expect, test } from "vitest";
import { kelvinFromCelsius } from "../../src/units/index.js";
import { madeYear, PLACES, type WeatherSeries } from "../../src/weather/index.js";
import { normalsOf } from "./normals-of.js";

const FROM = Date.UTC(2025, 0, 1) / 1000;
const TO = Date.UTC(2026, 0, 1) / 1000;
const YEARS = 40;

const years = (index: number): WeatherSeries[] =>
  Array.from({ length: YEARS }, (_, year) =>
    madeYear({ place: PLACES[index]!, from: FROM, to: TO, seed: 5, year }),
  );

test.each(PLACES.map(({ id }, index) => ({ id, index })))(
  "the normals of $id come back from forty years",
  ({ index }) => {
    const place = PLACES[index]!;
    const found = normalsOf(years(index), place.longitude);
    // Forty years of a month are some 200 independent days: its mean is known to sd/14, its spread to 5 %.
    place.months.forEach((wanted, month) => {
      const got = found[month]!;
      expect(Math.abs(got.tempAir - wanted.tempAir)).toBeLessThan(0.25 * wanted.daySd);
      // Where the year moves quickly the month's own rise adds to the spread of its days: a few tenths at most.
      expect(got.daySd / wanted.daySd).toBeGreaterThan(0.85);
      expect(got.daySd / wanted.daySd).toBeLessThan(1.25);
      expect(got.dailyRange / wanted.dailyRange).toBeGreaterThan(0.9);
      expect(got.dailyRange / wanted.dailyRange).toBeLessThan(1.1);
      expect(Math.abs(got.persistence - wanted.persistence)).toBeLessThan(0.12);
      expect(got.windSpeed / wanted.windSpeed).toBeGreaterThan(0.93);
      expect(got.windSpeed / wanted.windSpeed).toBeLessThan(1.07);
      expect(Math.abs(got.cloudCover - wanted.cloudCover)).toBeLessThan(0.06);
      expect(got.depression / wanted.depression).toBeGreaterThan(0.93);
      expect(got.depression / wanted.depression).toBeLessThan(1.07);
    });
  },
);

test("the same seed gives the same year, another year or seed another one", () => {
  const [place] = PLACES;
  const make = (seed: number, year: number) => madeYear({ place: place!, from: FROM, to: TO, seed, year });
  expect(make(5, 1)).toEqual(make(5, 1));
  const start = (series: WeatherSeries) => [...series.tempAir.slice(0, 48)];
  expect(start(make(5, 1))).not.toEqual(start(make(5, 2)));
  expect(start(make(5, 1))).not.toEqual(start(make(6, 1)));
});

test("a made series is one that the model can take", () => {
  const { time, tempAir, tempDewPoint, windSpeed, cloudCover } = years(3)[0]!;
  expect(time).toHaveLength(8761);
  for (let i = 0; i < time.length; i++) {
    expect(tempDewPoint[i]).toBeLessThan(tempAir[i]!);
    expect(windSpeed[i]).toBeGreaterThanOrEqual(0);
    expect(cloudCover[i]! >= 0 && cloudCover[i]! <= 1).toBe(true);
  }
  // A continental winter's coldest hour lies well below its mean of -29 °C, and above what the model is made for.
  expect(Math.min(...tempAir)).toBeLessThan(kelvinFromCelsius(-38));
  expect(Math.min(...tempAir)).toBeGreaterThan(kelvinFromCelsius(-65));
});

test("cold spells are clearer and calmer than warm ones", () => {
  const cold = { cloud: 0, wind: 0, hours: 0 };
  const warm = { cloud: 0, wind: 0, hours: 0 };
  for (const { tempAir, time, cloudCover, windSpeed } of years(0)) {
    for (let i = 0; i < 24 * 31; i++) {
      const spell = tempAir[i]! - PLACES[0]!.months[0]!.tempAir;
      if (Math.abs(spell) < 5) continue;
      const into = spell < 0 ? cold : warm;
      into.cloud += cloudCover[i]!;
      into.wind += windSpeed[i]!;
      into.hours++;
      expect(time[i]).toBeDefined();
    }
  }
  expect(cold.cloud / cold.hours).toBeLessThan(warm.cloud / warm.hours - 0.1);
  expect(cold.wind / cold.hours).toBeLessThan((0.8 * warm.wind) / warm.hours);
});

test("what makes no sense is refused with its place", () => {
  const [place] = PLACES;
  expect(() => madeYear({ place: place!, from: TO, to: FROM, seed: 1, year: 0 })).toThrow(/invalid to/);
  expect(() => madeYear({ place: place!, from: FROM, to: TO, seed: 1.5, year: 0 })).toThrow(/invalid seed/);
  const short = { ...place!, months: place!.months.slice(1) };
  expect(() => madeYear({ place: short, from: FROM, to: TO, seed: 1, year: 0 })).toThrow(
    /invalid months: 11/,
  );
});
