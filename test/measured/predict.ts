import { type Configuration, coverById } from "../../src/aircraft/index.js";
import { drawEnsemble, prepareRun, type TimedChange, timelineOf } from "../../src/simulation/index.js";
import { shutDownTemps } from "../../src/starting/index.js";
import { celsiusFromKelvin, kelvinFromCelsius, SECONDS_OF_HOUR } from "../../src/units/index.js";
import type { WeatherSeries } from "../../src/weather/index.js";
import { nearestHeater, nearestInstallation } from "./nearest.js";
import type { MeasuredRun } from "./run.js";

const MEMBERS = 120;
/** Winds between the run's bounds that stand for one that nobody recorded, each with its own members. */
const WINDS = 4;
const PARTS = {
  oil: ["oil"],
  heads: ["heads_front", "heads_rear"],
  battery: ["battery"],
  coolant: ["coolant"],
} as const;

/** What the model says of each reading before it is known: temperatures [°C] of all members and winds. */
export function predicted(run: MeasuredRun): Float64Array[] {
  const [least, most] = run.wind_mps;
  const winds = run.unrecorded.includes("wind")
    ? Array.from({ length: WINDS }, (_, i) => least + ((i + 0.5) / WINDS) * (most - least))
    : [(least + most) / 2];
  const ofWinds = winds.map((wind, i) => played(run, wind, i + 1));
  return run.readings.map((_, r) => Float64Array.from(ofWinds.flatMap((one) => [...one[r]])));
}

function played(run: MeasuredRun, wind: number, seed: number): Float64Array[] {
  const installation = nearestInstallation(run.aircraft.described_as);
  const end = Math.max(...run.readings.map((r) => r.at_h)) * SECONDS_OF_HOUR;
  const weather = weatherOf(run, wind, end);
  const { start } = run;
  const air = kelvinFromCelsius(run.air_c[0][1]);
  const temps = new Map<string, number>(start.shut_down ? shutDownTemps(installation, air) : []);
  if (start.heads_c !== undefined) {
    for (const part of PARTS.heads) temps.set(part, kelvinFromCelsius(start.heads_c));
  }
  if (start.coolant_c !== undefined) {
    for (const part of ["coolant", "barrels", ...PARTS.heads]) {
      temps.set(part, kelvinFromCelsius(start.coolant_c));
    }
  }
  if (start.oil_c !== undefined) temps.set("oil", kelvinFromCelsius(start.oil_c));
  const configuration: Configuration = {
    place: run.place,
    heatersOn: new Set(),
    coversOn: new Set(run.covers),
  };
  const events: TimedChange[] =
    run.heaters.length === 0 ? [] : [{ at: 0, change: { do: "plug-in", heaters: run.heaters } }];
  const prepared = prepareRun(
    {
      installation,
      kit: { heaters: run.heaters.map(nearestHeater), covers: run.covers.map(coverById) },
      start: 0,
      duration: end,
      weather,
      site: { tempHangar: air, roughness: 0.03 },
      initial: {
        configuration,
        temps,
        tempOthers: kelvinFromCelsius(start.others_c ?? run.air_c[0][1]),
        sd: start.error_k,
      },
      events,
    },
    drawEnsemble({ members: MEMBERS, seed, weather }),
  );
  const times = [...new Set(run.readings.map((r) => r.at_h * SECONDS_OF_HOUR))].sort((a, b) => a - b);
  const result = prepared.advance({
    state: prepared.initial,
    from: 0,
    to: end,
    timeline: timelineOf(configuration, events),
    sampleTimes: times,
    tolerance: 0.02,
  });
  if (result.status !== "completed") throw new Error(`${run.run}: ${result.status}: ${result.remedy}`);
  const names = prepared.network.parts.map((p) => p.name);
  const size = names.length * MEMBERS;
  return run.readings.map(({ at_h, part }) => {
    const base = times.indexOf(at_h * SECONDS_OF_HOUR) * size;
    const rows = PARTS[part].map((name) => names.indexOf(name));
    return Float64Array.from({ length: MEMBERS }, (_, m) => {
      const sum = rows.reduce((s, row) => s + result.samples[base + row * MEMBERS + m], 0);
      return celsiusFromKelvin(sum / rows.length);
    });
  });
}

function weatherOf(run: MeasuredRun, wind: number, end: number): WeatherSeries {
  const points = run.air_c.map(([h, c]) => ({ t: h * SECONDS_OF_HOUR, temp: kelvinFromCelsius(c) }));
  const last = points[points.length - 1];
  if (last.t < end) points.push({ t: end, temp: last.temp });
  const each = (value: number) => new Float64Array(points.length).fill(value);
  return {
    time: Float64Array.from(points, (p) => p.t),
    tempAir: Float64Array.from(points, (p) => p.temp),
    windSpeed: each(wind),
    tempDewPoint: Float64Array.from(points, (p) => p.temp - 5),
    cloudCover: each(0.5),
    origin: run.run,
    assumptions: [],
  };
}
