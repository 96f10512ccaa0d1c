import {
  type Configuration,
  coverById,
  type Heater,
  heaterById,
  type Installation,
  installationById,
  type PartName,
} from "../aircraft/index.js";
import { type Draws, prepareRun, type Scenario, timelineOf } from "../simulation/index.js";
import { shutDownTemps } from "../starting/index.js";
import { celsiusFromKelvin, kelvinFromCelsius, SECONDS_OF_HOUR } from "../units/index.js";
import type { WeatherSeries } from "../weather/index.js";
import type { MeasuredRun } from "./measured-run.js";
import { type Member, memberOf, POPULATION } from "./unknowns.js";

/** Parts that a reading is the mean of. */
const PARTS_READ = {
  oil: ["oil"],
  heads: ["heads_front", "heads_rear"],
  battery: ["battery"],
  coolant: ["coolant"],
} as const;
/** [K] of a single step: readings are to be right to a tenth. */
const TOLERANCE = 0.02;
/** [m/s] what the members' own winds are counted in. */
const UNIT_WIND = 1;

/** What ids of runs stand for: the catalogue, or engines that stand beside it. */
export interface Equipment {
  installation(id: string): Installation;
  heater(id: string): Heater;
}

const CATALOGUE: Equipment = { installation: installationById, heater: heaterById };

/** What the model says of each reading before it is known: [°C] of every member, one array a reading. */
export function play(
  run: MeasuredRun,
  vectors: readonly ArrayLike<number>[],
  equipment = CATALOGUE,
): Float64Array[] {
  const members = vectors.map(memberOf);
  const count = members.length;
  const scenario = scenarioOf(run, equipment);
  const prepared = prepareRun(scenario, drawsOf(members, scenario.weather));
  const names = prepared.network.parts.map((part) => part.name);
  const state = new Float64Array(prepared.initial.length);
  members.forEach((member, m) => {
    const initial = initialOf(run, scenario.installation, member);
    names.forEach((name, i) => {
      state[i * count + m] = initial(name);
    });
  });
  const times = [...new Set(run.readings.map(({ at_h }) => at_h * SECONDS_OF_HOUR))].sort((a, b) => a - b);
  const result = prepared.advance({
    state,
    ...{ from: 0, to: scenario.duration, sampleTimes: times, tolerance: TOLERANCE },
    timeline: timelineOf(scenario.initial.configuration, scenario.events),
  });
  if (result.status !== "completed") throw new Error(`${run.run}: ${result.status}: ${result.remedy}`);
  return run.readings.map(({ at_h, part }) => {
    const base = times.indexOf(at_h * SECONDS_OF_HOUR) * names.length * count;
    const rows = PARTS_READ[part].map((name) => names.indexOf(name));
    return Float64Array.from(members, (_, m) => {
      const sum = rows.reduce((s, row) => s + result.samples[base + row * count + m], 0);
      return celsiusFromKelvin(sum / rows.length);
    });
  });
}

function scenarioOf(run: MeasuredRun, { installation, heater }: Equipment): Scenario {
  const duration = Math.max(...run.readings.map(({ at_h }) => at_h)) * SECONDS_OF_HOUR;
  const air = kelvinFromCelsius(run.air_c[0][1]);
  const configuration: Configuration = {
    place: run.place,
    heatersOn: new Set(run.heaters),
    coversOn: new Set(run.covers),
  };
  return {
    installation: installation(run.aircraft.described_as),
    kit: { heaters: run.heaters.map(heater), covers: run.covers.map(coverById) },
    start: 0,
    duration,
    weather: weatherOf(run, duration),
    site: { tempHangar: air, roughness: 0.03 },
    initial: { configuration, temps: new Map(), tempOthers: air, sd: 0 },
    events: [],
  };
}

/** [K] of each part at the start for one member: what was read, the rest off by the member's error. */
function initialOf(
  { start, air_c }: MeasuredRun,
  installation: Installation,
  { startError }: Member,
): (part: string) => number {
  const air = kelvinFromCelsius(air_c[0][1]);
  const read = new Map<string, number>();
  const note = (celsius: number | undefined, ...parts: PartName[]) => {
    if (celsius !== undefined) for (const part of parts) read.set(part, kelvinFromCelsius(celsius));
  };
  note(start.oil_c, "oil");
  note(start.heads_c, "heads_front", "heads_rear");
  // What the coolant flows through is as warm.
  note(start.coolant_c, "coolant", "barrels", "heads_front", "heads_rear");
  const [oil, heads] = [read.get("oil"), read.get("heads_front")];
  const shutDown = start.shut_down
    ? shutDownTemps(installation, air, {
        ...(oil === undefined ? {} : { oil }),
        ...(heads === undefined ? {} : { heads }),
      })
    : undefined;
  const others = start.others_c === undefined ? air : kelvinFromCelsius(start.others_c);
  return (part) => read.get(part) ?? (shutDown?.get(part as PartName) ?? others) + startError;
}

function drawsOf(members: readonly Member[], weather: WeatherSeries): Draws {
  const count = members.length;
  const each = (value: (member: Member) => number) => {
    const row = Float64Array.from(members, value);
    const all = new Float64Array(weather.time.length * count);
    for (let k = 0; k < weather.time.length; k++) all.set(row, k * count);
    return all;
  };
  return {
    members: count,
    multipliers: new Map(
      POPULATION.map((name, p) => [name, Float64Array.from(members, (m) => m.multipliers[p])]),
    ),
    initialOffset: new Float64Array(count),
    weather: {
      members: count,
      tempOffset: each((m) => m.airError),
      windFactor: each((m) => m.wind / UNIT_WIND),
      cloudOffset: each(() => 0),
    },
  };
}

function weatherOf(run: MeasuredRun, end: number): WeatherSeries {
  const points = run.air_c.map(([h, c]) => ({ t: h * SECONDS_OF_HOUR, temp: kelvinFromCelsius(c) }));
  const last = points[points.length - 1];
  if (last.t < end) points.push({ t: end, temp: last.temp });
  const each = (value: number) => new Float64Array(points.length).fill(value);
  return {
    time: Float64Array.from(points, (p) => p.t),
    tempAir: Float64Array.from(points, (p) => p.temp),
    windSpeed: each(UNIT_WIND),
    tempDewPoint: Float64Array.from(points, (p) => p.temp - 5),
    cloudCover: each(0.5),
    origin: run.run,
    assumptions: [],
  };
}
