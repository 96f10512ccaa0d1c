import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { celsiusFromKelvin, kelvinFromCelsius, METRES_PER_SECOND_OF_KNOT } from "../../src/units/index.js";
import { nightCooling } from "../../src/weather/cautious.js";
import {
  ASSUMED_DEPRESSION,
  ASSUMED_WIND,
  readForecastText,
  type WeatherReading,
  type WeatherSeries,
  weatherAt,
} from "../../src/weather/index.js";
import { english } from "../../src/words/index.js";

const reference = Date.UTC(2026, 0, 9, 18) / 1000;
const at = (day: number, hour: number, minute = 0) => Date.UTC(2026, 0, day, hour, minute) / 1000;
const knots = (value: number) => value * METRES_PER_SECOND_OF_KNOT;

function seriesOf(reading: WeatherReading): WeatherSeries {
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading.series;
}

function read(text: string, until: number, points = {}): WeatherSeries {
  return seriesOf(readForecastText(text, { reference, until, ...points }));
}

function celsiusAt(series: WeatherSeries, time: number): number {
  return celsiusFromKelvin(weatherAt(series, time).tempAir);
}

function texts(series: WeatherSeries, quantity: string): string[] {
  return series.assumptions
    .filter((a) => a.quantity === quantity)
    .map((a) => english(a.text).replaceAll("\u00a0", " "));
}

const METAR = "METAR XXRV 091750Z 24008KT 9999 OVC030 M20/M23 Q1013=";
const TAF = "TAF XXRV 091700Z 0918/1018 24004KT 9999 SCT030 TXM14/1012Z TNM27/1006Z FM101300 21010KT BKN045=";

test("the example: readings as reported, then the points of the TAF", () => {
  const text = ["xxrv-metars.txt", "xxrv-taf.txt"]
    .map((file) => readFileSync(`examples/weather/${file}`, "utf8"))
    .join("\n");
  const reading = readForecastText(text, { reference, until: at(10, 18) });
  expect(reading).toMatchObject({ ok: true, warnings: [] });
  const series = seriesOf(reading);
  expect(series.time[0]).toBe(at(9, 11, 50));
  expect(series.time.at(-1)).toBe(at(10, 18));
  expect(series.issued).toBe(at(9, 20, 50));
  expect(series.tempBasis).toBeUndefined();
  expect(series.origin).toBe("METAR XXRV 2026-01-09T20:50Z, TAF XXRV 2026-01-09T17:00Z");
  expect(celsiusAt(series, at(9, 14, 50))).toBeCloseTo(-15.7, 9);
  expect(celsiusAt(series, at(9, 20, 50))).toBeCloseTo(-23.4, 9);
  expect(celsiusAt(series, at(10, 6))).toBeCloseTo(-27, 9);
  expect(celsiusAt(series, at(10, 12))).toBeCloseTo(-14, 9);
  // The low of the night is that of TN.
  expect(celsiusFromKelvin(Math.min(...series.tempAir))).toBeCloseTo(-27, 9);
  // 19:50 has no sky, 18:50 no dew point.
  expect(texts(series, "cloudCover")[0]).toBe(
    "cloud missing in reports (1): bridged from the neighbouring reports",
  );
  expect(texts(series, "tempDewPoint")).toHaveLength(2);
  // PROB30 TEMPO 31012KT lasts throughout; TEMPO 1002/1006 0800 BCFG changes nothing here.
  expect(weatherAt(series, at(10, 9)).windSpeed).toBeCloseTo(knots(12), 9);
  expect(texts(series, "windSpeed")).toEqual([expect.stringContaining("PROB30 TEMPO 1008/1011")]);
});

test("half way between two points the air is half way, and it leaves them level", () => {
  const series = read(`${METAR} ${TAF}`, at(10, 12));
  expect(celsiusAt(series, at(10, 9))).toBeCloseTo((-27 - 14) / 2, 9);
  expect(celsiusAt(series, at(10, 7)) - -27).toBeCloseTo((13 * (1 - Math.cos(Math.PI / 6))) / 2, 9);
  expect(texts(series, "tempAir")).toEqual([expect.stringContaining("half cosines")]);
});

test("an hourly axis with knots at readings, points and steps, strictly ascending", () => {
  const series = read(`${METAR} ${TAF}`, at(10, 15, 30));
  for (let hour = 18; hour < 39; hour++) expect(series.time).toContain(at(9, hour));
  expect(series.time).toContain(at(10, 13) - 60);
  expect(weatherAt(series, at(10, 13) - 60).windSpeed).toBeCloseTo(knots(4), 9);
  expect(weatherAt(series, at(10, 13)).windSpeed).toBeCloseTo(knots(10), 9);
  expect([...series.time].every((t, i) => i === 0 || t > series.time[i - 1]!)).toBe(true);
});

test("a METAR alone: cooling, wind, clear sky and dew point ahead are assumed and listed", () => {
  const series = read("METAR XXRV 091750Z 24004KT 9999 OVC030 M20/M23 Q1013=", at(10, 10));
  expect(series.tempBasis).toBe("persistence");
  expect(series.issued).toBe(at(9, 17, 50));
  expect(celsiusAt(series, at(9, 21))).toBeCloseTo(-20 - 10 * Math.sqrt((3 + 1 / 6) / 12), 9);
  expect(celsiusAt(series, at(10, 6))).toBeCloseTo(-30, 9);
  expect(celsiusAt(series, at(10, 10))).toBeCloseTo(-30, 9);
  expect(weatherAt(series, at(10, 1))).toMatchObject({ windSpeed: ASSUMED_WIND, cloudCover: 0 });
  const moment = weatherAt(series, at(10, 1));
  expect(moment.tempAir - moment.tempDewPoint).toBeCloseTo(3, 9);
  expect(series.assumptions.map((a) => a.quantity).sort()).toEqual([
    "cloudCover",
    "tempAir",
    "tempDewPoint",
    "windSpeed",
  ]);
});

test("a strong last wind is kept when nobody forecasts it, and a missing one is never zero", () => {
  expect(
    weatherAt(read("METAR XXRV 091750Z 24020KT CAVOK M20/M23=", at(10, 0)), at(9, 22)).windSpeed,
  ).toBeCloseTo(knots(20), 9);
  const none = read("METAR XXRV 091750Z /////KT CAVOK M20/M23=", at(10, 0));
  expect([...none.windSpeed]).toEqual([...none.time].map(() => ASSUMED_WIND));
  expect(texts(none, "windSpeed").length).toBeGreaterThan(0);
  const calm = read("METAR XXRV 091750Z 00000KT CAVOK M20/M23=", at(10, 0));
  expect(calm.windSpeed[0]).toBe(0);
  expect(calm.windSpeed.at(-1)).toBe(ASSUMED_WIND);
});

test("no humidity anywhere: a dew point near the air is assumed", () => {
  const series = read("METAR XXRV 091750Z 24008KT CAVOK M20/=", at(10, 0));
  series.tempAir.forEach((air, i) => {
    expect(air - series.tempDewPoint[i]!).toBeCloseTo(ASSUMED_DEPRESSION, 9);
  });
  expect(texts(series, "tempDewPoint")).toHaveLength(1);
});

test("the user's own low makes the curve a forecast", () => {
  const lows = [{ time: at(10, 5), tempAir: kelvinFromCelsius(-33) }];
  const series = read(METAR, at(10, 10), { lows });
  expect(series.tempBasis).toBeUndefined();
  expect(celsiusAt(series, at(10, 5))).toBeCloseTo(-33, 9);
  expect(celsiusAt(series, at(10, 10))).toBeCloseTo(-33, 9);
  expect(texts(series, "tempAir")).toContain(
    "no temperature forecast after the last low: the low is held, without the warming of the day",
  );
});

test("only a high forecast: a low of the night is assumed before it", () => {
  const series = read(
    "METAR XXRV 091750Z 24008KT CAVOK M20/M23= TAF XXRV 091700Z 0918/1018 24004KT CAVOK TXM14/1012Z=",
    at(10, 12),
  );
  const low = -20 - nightCooling(at(10, 6) - at(9, 17, 50), 0);
  expect(celsiusAt(series, at(10, 6))).toBeCloseTo(low, 9);
  expect(low).toBeLessThan(-29.9);
  expect(texts(series, "tempAir").join()).toContain("only the high that follows is forecast");
});

test("a low that is already undercut does not warm the air", () => {
  const series = read(
    "METAR XXRV 091750Z 24008KT CAVOK M30/M33= TAF XXRV 091700Z 0918/1018 24004KT CAVOK TNM27/1006Z=",
    at(10, 6),
  );
  expect(celsiusFromKelvin(Math.max(...series.tempAir))).toBeCloseTo(-30, 9);
  expect(texts(series, "tempAir").join()).toContain(
    "3.0 K colder than the low forecast for 2026-01-10T06:00Z",
  );
});

test("a TAF alone starts at its low, and without a low it is refused", () => {
  const series = read(TAF, at(10, 12));
  expect(series.issued).toBe(at(9, 17));
  expect(celsiusAt(series, at(9, 18))).toBeCloseTo(-27, 9);
  expect(texts(series, "tempAir").join()).toContain("held at the first low");
  const refused = readForecastText("TAF XXRV 091700Z 0918/1018 24004KT CAVOK TXM14/1012Z=", {
    reference,
    until: at(10, 12),
  });
  expect(refused).toMatchObject({ ok: false, issues: [{ place: "air temperature" }] });
});

test("before the TAF begins and after it ends the cooler side is taken", () => {
  const series = read(`METAR XXRV 091450Z 24020KT CAVOK M20/M23= ${TAF}`, at(10, 22));
  expect(weatherAt(series, at(9, 16)).windSpeed).toBeCloseTo(knots(20), 9);
  expect(weatherAt(series, at(9, 18)).windSpeed).toBeCloseTo(knots(4), 9);
  expect(weatherAt(series, at(10, 20)).windSpeed).toBeCloseTo(knots(10), 9);
  expect(weatherAt(series, at(10, 20)).cloudCover).toBe(0);
  expect(texts(series, "windSpeed")).toEqual([
    "before the TAF begins: the cooler of the last reading and its beginning",
    "after the TAF ends: wind taken as the larger of the last known and 5 m/s",
  ]);
});

test("a last reading long before the TAF begins is warned of", () => {
  const reading = readForecastText(`METAR XXRV 091350Z 24008KT CAVOK M20/M23= ${TAF}`, {
    reference,
    until: at(10, 12),
  });
  expect(reading.ok && reading.warnings).toMatchObject([
    { place: "METAR XXRV 2026-01-09T13:50Z to the TAF", received: "none for 4.2 h, bridged by assumption" },
  ]);
});

test("too far ahead is refused, and so is an end before the beginning", () => {
  expect(readForecastText(METAR, { reference, until: at(10, 18) })).toMatchObject({
    ok: false,
    issues: [{ place: "until", received: "2026-01-10T18:00Z" }],
  });
  expect(readForecastText(METAR, { reference, until: at(9, 12) })).toMatchObject({ ok: false });
  expect(readForecastText("", { reference, until: at(9, 12) })).toMatchObject({ ok: false });
});

test("what is left out is named: other stations, reports without temperature, an expired TAF, gaps", () => {
  const reading = readForecastText(
    `METAR XXRW 091650Z 24008KT CAVOK M10/M13= METAR XXRV 091150Z 24008KT CAVOK M18/M21=
     METAR XXRV 091720Z 24008KT CAVOK ///// Q1013= ${METAR}
     TAF XXRW 091700Z 0918/1018 24004KT CAVOK TNM27/1006Z= TAF XXRV 090500Z 0906/0915 24004KT CAVOK=`,
    { reference, until: at(10, 0) },
  );
  expect(reading.ok && reading.warnings.map((w) => [w.place, w.received])).toEqual([
    ["TAF XXRW", "XXRW, TAF left out"],
    ["METAR XXRW 2026-01-09T16:50Z", "XXRW, report left out"],
    ["METAR XXRV 2026-01-09T17:20Z", "none, report left out"],
    ["TAF XXRV 2026-01-09T05:00Z", "validity until 2026-01-09T15:00Z, TAF not used"],
    [
      "METAR XXRV 2026-01-09T11:50Z to METAR XXRV 2026-01-09T17:50Z",
      "none for 6.0 h, bridged by a straight line",
    ],
  ]);
});

test("readings of one station with the forecast of another are used and listed", () => {
  const series = read(`${METAR} ${TAF.replace("XXRV", "XXRW")}`, at(10, 12));
  expect(texts(series, "tempAir")).toContain("readings of XXRV and forecast of XXRW taken as one place");
});

test("law: the series stays between the coldest and warmest point, its dew point never above the air", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -40, max: 5 }),
      fc.integer({ min: 0, max: 20 }),
      fc.integer({ min: 1, max: 25 }),
      fc.integer({ min: 0, max: 40 }),
      (now, fall, rise, wind) => {
        const group = (t: number) => `${t < 0 ? "M" : ""}${String(Math.abs(t)).padStart(2, "0")}`;
        const series = read(
          `METAR XXRV 091750Z 24008KT CAVOK ${group(now)}/${group(now - 3)}=
           TAF XXRV 091700Z 0918/1018 240${String(wind).padStart(2, "0")}KT SCT030
           TX${group(now - fall + rise)}/1012Z TN${group(now - fall)}/1006Z=`,
          at(10, 12),
        );
        const air = [...series.tempAir].map(celsiusFromKelvin);
        expect(Math.min(...air)).toBeGreaterThan(now - fall - 1e-6);
        expect(Math.max(...air)).toBeLessThan(Math.max(now, now - fall + rise) + 1e-6);
        expect(series.tempAir.every((t, i) => series.tempDewPoint[i]! <= t)).toBe(true);
        const night = air.slice(0, series.time.indexOf(at(10, 6)) + 1);
        expect(night.every((t, i) => i === 0 || t <= night[i - 1]! + 1e-9)).toBe(true);
      },
    ),
    { numRuns: 60 },
  );
});
