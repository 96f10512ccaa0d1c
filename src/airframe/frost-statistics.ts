import { tempCondensationPoint } from "../properties/index.js";
import { durationAtLeast, timeFirstReached } from "./crossing.js";
import { type BandSeries, bandOf, bandSeries, timeBandOf } from "./ensemble.js";
import type { FaceFrost, FrostSeries, FrostVerdict } from "./night-frost.js";
import { PANEL_ROW } from "./panel-rows.js";
import type { WingWeather } from "./wing-weather.js";

/** [kg/m2] of ice that counts as frost: 5 µm of ice, 0.05 mm of loose frost, about what an eye sees. Project judgement. */
const FROST_COUNTED = 0.005;
/** [0..1] chances from which frost is called likely and possible. Project judgement. */
const CHANCE_LIKELY = 0.5;
const CHANCE_POSSIBLE = 0.05;

export function frostVerdict(chance: number): FrostVerdict {
  if (chance >= CHANCE_LIKELY) return "likely";
  return chance >= CHANCE_POSSIBLE ? "possible" : "none";
}

/** Faces and series of the members' states (sample s, row i at `[s * rows + i]`). */
export function frostStatistics(
  time: Float64Array,
  states: readonly Float64Array[],
  weather: readonly WingWeather[],
  covered: boolean,
): { upper: FaceFrost; lower: FaceFrost; series: FrostSeries } {
  const samples = time.length;
  const rows = states[0].length / samples;
  const around = weather.map((member) => surroundingsOf(member, time));
  const of = (row: number): BandSeries => bandSeries(states, samples, (y, s) => y[s * rows + row]);
  const outside = (value: (around: Outside) => Float64Array) =>
    bandSeries(around.map(value), samples, (values, s) => values[s]);
  const column = (state: Float64Array, row: number) =>
    Float64Array.from({ length: samples }, (_, s) => state[s * rows + row]);

  const face = (temp: number, ice: number, water: number): FaceFrost => {
    const ices = states.map((state) => column(state, ice));
    const most = Float64Array.from(ices, (values) => Math.max(...values));
    const last = (row: number) => Float64Array.from(states, (state) => state[(samples - 1) * rows + row]);
    const atEnd = last(ice);
    const below = Float64Array.from(states, (state, m) =>
      Math.max(...column(state, temp).map((value, s) => around[m].tempAir[s] - value)),
    );
    const chance = shareAtLeast(most, FROST_COUNTED);
    return {
      verdict: frostVerdict(chance),
      chance,
      chanceAtEnd: shareAtLeast(atEnd, FROST_COUNTED),
      first: timeBandOf(Float64Array.from(ices, (values) => timeFirstReached(time, values, FROST_COUNTED))),
      duration: bandOf(Float64Array.from(ices, (values) => durationAtLeast(time, values, FROST_COUNTED))),
      frostAtEnd: bandOf(atEnd),
      dewAtEnd: bandOf(last(water)),
      mostFrost: bandOf(most),
      mostBelowAir: bandOf(below),
    };
  };
  const row = PANEL_ROW;
  return {
    upper: face(row.tempUpper, row.iceUpper, row.waterUpper),
    lower: face(row.tempLower, row.iceLower, row.waterLower),
    series: {
      time,
      tempAir: outside((o) => o.tempAir),
      tempCondensation: outside((o) => o.tempCondensation),
      tempSky: outside((o) => o.tempSky),
      windSpeed: outside((o) => o.windSpeed),
      tempUpper: of(row.tempUpper),
      tempLower: of(row.tempLower),
      tempInside: of(row.tempInside),
      iceUpper: of(row.iceUpper),
      waterUpper: of(row.waterUpper),
      iceLower: of(row.iceLower),
      waterLower: of(row.waterLower),
      iceCover: covered ? of(row.iceCover) : undefined,
    },
  };
}

interface Outside {
  readonly tempAir: Float64Array;
  readonly tempCondensation: Float64Array;
  readonly tempSky: Float64Array;
  readonly windSpeed: Float64Array;
}

function surroundingsOf(weather: WingWeather, time: Float64Array): Outside {
  const around = { tempAir: 0, pressureVapour: 0, windSpeed: 0, tempAbove: 0, tempBelow: 0 };
  const outside: Outside = {
    tempAir: new Float64Array(time.length),
    tempCondensation: new Float64Array(time.length),
    tempSky: new Float64Array(time.length),
    windSpeed: new Float64Array(time.length),
  };
  time.forEach((t, s) => {
    weather.write(t, around);
    outside.tempAir[s] = around.tempAir;
    outside.tempCondensation[s] = tempCondensationPoint(around.pressureVapour);
    outside.tempSky[s] = around.tempAbove;
    outside.windSpeed[s] = around.windSpeed;
  });
  return outside;
}

function shareAtLeast(values: Float64Array, limit: number): number {
  return values.filter((value) => value >= limit).length / values.length;
}
