import { expect, test } from "vitest";
import { solve } from "../../src/solver/index.js";
import { checkedNetwork, createThermalSystem } from "../../src/thermal/index.js";
import { madeYear, PLACES, type WeatherSeries } from "../../src/weather/index.js";
import { thinnedWeather } from "../../src/winter/season-weather.js";
import { toleranceOf } from "../../src/winter/tolerance.js";

// Where a network is linear with constant conductances, heat is degree-hours: what a thermostat takes to hold its set point
// through a winter is UA times the sum of set point less outside air, and what power always on brings is P/UA above the
// mean of the air. The weather is thinned and the steps are as loose as a season's.

const HOUR = 3600;
const FROM = Date.UTC(2025, 9, 1) / 1000;
const TO = Date.UTC(2026, 4, 1) / 1000;
/** [K] and [W/K] */
const SET_POINT = 288.15;
const UA = 4;
/** [K] of the thermostat: it holds to within a few of these. */
const WIDTH = 0.05;
const POWER = 400;

const weather = madeYear({ place: PLACES[0]!, from: FROM, to: TO, seed: 11, year: 1 });
// Three flights a week keep their hours.
const flights = Array.from({ length: 88 }, (_, i) => FROM + (33 + 56 * i) * HOUR);
const thinned = thinnedWeather(
  weather,
  flights.map((t) => ({ departure: t, back: t + 2 * HOUR })),
);

test("thinned weather keeps a winter's degree-hours", () => {
  expect(thinned.time.length).toBeLessThan(0.6 * weather.time.length);
  expect(Math.abs(degreeHours(thinned) / degreeHours(weather) - 1)).toBeLessThan(0.001);
});

test("thinned weather keeps every hour around a flight, and a series that is coarse already as it is", () => {
  const around = weather.time.filter((t) => t >= flights[5]! - 3 * HOUR && t <= flights[5]! + 2 * HOUR);
  expect(around.length).toBe(6);
  for (const t of around) expect(thinned.time).toContain(t);
  const every = 3;
  const coarse = {
    ...weather,
    ...Object.fromEntries(
      (["time", "tempAir", "windSpeed", "tempDewPoint", "cloudCover"] as const).map((key) => [
        key,
        weather[key].filter((_, i) => i % every === 0),
      ]),
    ),
  };
  const near = (time: Float64Array) => time.filter((t) => t > flights[5]! - 8 * HOUR && t < flights[5]!);
  expect(near(thinnedWeather(coarse, [{ departure: flights[5]!, back: flights[5]! + HOUR }]).time)).toEqual(
    near(coarse.time),
  );
});

test("a thermostat's energy is UA times degree-hours", () => {
  const { energy } = heated((sensed) => POWER / (1 + Math.exp((sensed - SET_POINT) / WIDTH)), true);
  // The set point is held to ±0.2 K of some 22 K below it, and the weather's thinning costs up to 0.1 %.
  expect(energy / (UA * degreeHours(weather) * HOUR)).toBeGreaterThan(0.99);
  expect(energy / (UA * degreeHours(weather) * HOUR)).toBeLessThan(1.01);
});

test("power always on stands P/UA above the mean of the air", () => {
  const { meanTemp, endTemp } = heated(() => 100, false);
  const air = meanOf(thinned, (t) => t);
  // Heat in less heat lost is what is stored in 40 kJ/K at the end; the start was at the first air.
  const stored = (40_000 * (endTemp - weather.tempAir[0]!)) / (UA * (TO - FROM));
  expect(meanTemp - air + stored).toBeCloseTo(100 / UA, 1);
});

/** One body of 40 kJ/K through a winter, sampled hourly as a season is. */
function heated(power: (sensed: number) => number, thermostat: boolean) {
  const network = checkedNetwork({
    parts: [{ name: "engine", heatCapacity: 40_000 }],
    inputs: ["outside_air"],
    links: [{ name: "loss", from: "engine", to: "outside_air", law: "conduction", parameters: [] }],
    sources: [
      {
        name: "heater",
        part: "engine",
        parameters: [],
        ...(thermostat ? { limiter: { senses: "engine", setPoint: SET_POINT, width: WIDTH } } : {}),
      },
    ],
  });
  const system = createThermalSystem(network, 1, Float64Array.of(1));
  system.configure({ conductance: Float64Array.of(UA), power: Float64Array.of(thermostat ? POWER : 100) });
  const knots = thinned.time.map((t) => t - FROM);
  const at = (t: number) => {
    const k = knots.indexOf(t);
    return Float64Array.of(thinned.tempAir[k]!);
  };
  const start = thermostat ? SET_POINT : weather.tempAir[0]!;
  const times = Array.from({ length: (TO - FROM) / HOUR + 1 }, (_, h) => h * HOUR);
  const result = solve({
    system,
    initial: Float64Array.of(start),
    start: 0,
    end: TO - FROM,
    tolerance: toleranceOf(["engine"]),
    jumps: knots.subarray(1, knots.length - 1),
    sampleTimes: times,
    onStretch: (a, b) => system.setInputs(a, b, at(a), at(b)),
  });
  expect(result.status).toBe("completed");
  let energy = 0;
  let sum = 0;
  for (let s = 1; s < times.length; s++) {
    const [before, after] = [result.samples[s - 1]!, result.samples[s]!];
    energy += 0.5 * HOUR * (power(before) + power(after));
    sum += 0.5 * (before + after);
  }
  return { energy, meanTemp: sum / (times.length - 1), endTemp: result.state[0]! };
}

/** [K h] below the set point, by trapezoids. */
function degreeHours(series: WeatherSeries): number {
  return (meanOf(series, (temp) => SET_POINT - temp) * (TO - FROM)) / HOUR;
}

function meanOf({ time, tempAir }: WeatherSeries, f: (temp: number) => number): number {
  let sum = 0;
  for (let k = 1; k < time.length; k++)
    sum += 0.5 * (f(tempAir[k - 1]!) + f(tempAir[k]!)) * (time[k]! - time[k - 1]!);
  return sum / (time.at(-1)! - time[0]!);
}
