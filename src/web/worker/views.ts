import {
  type Cover,
  coverById,
  type Heater,
  heaterBasis,
  heaterById,
  installationById,
} from "../../aircraft/index.js";
import { eachOnce } from "../../findings/index.js";
import {
  type AircraftState,
  type BaseState,
  continuousLimit,
  type UnsafeSwitches,
  unsafeSwitches,
} from "../../logbook/index.js";
import { cautionsOf } from "../../switching/index.js";
import { celsiusFromKelvin } from "../../units/index.js";
import { readForecastText, type WeatherSeries, weatherAt } from "../../weather/index.js";
import { heatingSince, readForecasts } from "../data/base.js";
import { Refused } from "./refused.js";

const HOUR = 3_600_000;
/** [h] shown at most, the hour before now included. */
const SHOWN_HOURS = 49;
/** Chance aimed at where neither departure nor habit says; as scenario documents have it. */
const USUAL_CHANCE = 0.9;

/** What stands at the base, in the form the screens need. */
export function baseView(state: BaseState, now: number) {
  const { setUp, withoutEffect } = state;
  const { read, refused } = readForecasts(state);
  const [newest] = read;
  const unsafe = unsafeSwitches(setUp);
  return {
    /** As it is set up, whole, for those who change it. */
    setUp,
    name: setUp.name,
    notice: setUp.notice,
    zone: setUp.zone,
    hasHangar: setUp.hangar !== undefined,
    circuits: setUp.circuits.map(({ id, name, limit_a, voltage_v, outlets }) => ({
      id,
      name,
      outlets,
      /** [A] that a continuous load may draw on its breaker. */
      continuousA: continuousLimit({ limit_a }),
      voltageV: voltage_v,
    })),
    aircraft: [...state.aircraft.values()].map((aircraft) => aircraftView(aircraft, unsafe, now)),
    weather: newest && weatherView(newest.series, newest.received, now, newest.event.origin),
    /** Why there is no weather, or what is wrong with it. */
    weatherTrouble: refused.length === 0 ? undefined : refused.join(" | "),
    withoutEffect,
    /** How often plans came out as they said. */
    record: state.record,
  };
}

function aircraftView(aircraft: AircraftState, unsafe: UnsafeSwitches, now: number) {
  const { setUp, place, running, heatersOn, coversOn, readings, lastStart, faults } = aircraft;
  const engine = typeof setUp.engine === "string" ? installationById(setUp.engine) : setUp.engine;
  return {
    id: setUp.id,
    name: setUp.name,
    engine: engine.name,
    cylinders: engine.cylinders,
    hasCoolant: engine.cooling === "liquid",
    circuit: setUp.circuit,
    place,
    running,
    heatersOn,
    coversOn,
    readings,
    lastStart,
    heaters: setUp.kit.heaters.map((h) => heaterView(typeof h === "string" ? heaterById(h) : (h as Heater))),
    covers: setUp.kit.covers.map((c) => coverView(typeof c === "string" ? coverById(c) : (c as Cover))),
    switches: setUp.switches.map((one) => ({
      id: one.id,
      name: one.name,
      /** Ids of the heaters it feeds. */
      heaters: one.heaters,
      cautions: cautionsOf(one),
      /** Why it never puts a heater on. */
      unsafe: unsafe.get(`${setUp.id}/${one.id}`),
    })),
    /** Since when the heaters now on have been on. */
    heatingSince: heatingSince(aircraft, heatersOn),
    chance: setUp.habits?.chance ?? USUAL_CHANCE,
    departures: aircraft.departures.filter((d) => d.departure > now),
    faults: faults.map(({ text }) => text),
  };
}

export function heaterView({ elements, duct, longest_on_h, ...heater }: Heater) {
  const { id, name, attended, cylinders, cautions } = heater;
  const ofElements = elements.reduce((sum, { power_w }) => sum + power_w, 0);
  return {
    id,
    name,
    attended,
    basis: heaterBasis(heater),
    cylinders,
    cautions,
    powerW: ofElements + (duct?.energy === "electric" ? duct.power_w : 0),
    /** Draws on the base's circuit. */
    electric: duct?.energy !== "fuel",
    longestOnH: longest_on_h,
  };
}

export function coverView({ id, name, cautions }: Cover) {
  return { id, name, cautions };
}

/** Weather on the hour, from the hour before now as far as it is known. */
function weatherView(series: WeatherSeries, received: number, now: number, origin: string) {
  const first = HOUR * Math.floor(now / HOUR);
  const from = HOUR * Math.ceil(series.time[0] / 3600);
  const to = series.time[series.time.length - 1] * 1000;
  const time = Array.from({ length: SHOWN_HOURS }, (_, i) => first + (i - 1) * HOUR).filter(
    (t) => t >= from && t <= to,
  );
  /** `received`: when the newest forecast was taken in. */
  return { origin, received, ...sampled(series, time), assumptions: assumptionsOf(series) };
}

function assumptionsOf({ assumptions }: WeatherSeries) {
  return eachOnce(assumptions.map(({ text }) => text));
}

/** Weather at these times [ms]. */
function sampled(series: WeatherSeries, time: readonly number[]) {
  const moments = time.map((t) => weatherAt(series, t / 1000));
  const rounded = (value: number, digits: number) => Math.round(value * 10 ** digits) / 10 ** digits + 0;
  return {
    time,
    airC: moments.map((m) => rounded(celsiusFromKelvin(m.tempAir), 1)),
    windMps: moments.map((m) => rounded(m.windSpeed, 1)),
    dewPointC: moments.map((m) => rounded(celsiusFromKelvin(m.tempDewPoint), 1)),
    cloud: moments.map((m) => rounded(m.cloudCover, 2)),
  };
}

interface Pasted {
  readonly now: number;
  readonly metar?: string;
  readonly taf?: string;
}

/** What pasted reports say before they are kept, or why they cannot be read. */
export function forecastWeather({ now, metar, taf }: Pasted) {
  const text = [metar, taf].filter((t) => t !== undefined && t.trim() !== "").join("=\n");
  if (text === "") throw new Refused(["METAR or TAF: expected text, received nothing"]);
  const reading = readForecastText(text, { reference: now / 1000 });
  if (!reading.ok) throw new Refused(reading.issues.map(issueWords));
  const { series, warnings } = reading;
  const first = Math.ceil(series.time[0] / 3600);
  const last = Math.floor(series.time[series.time.length - 1] / 3600);
  const time = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * HOUR);
  const { origin } = series;
  const assumptions = assumptionsOf(series);
  return { origin, ...sampled(series, time), assumptions, warnings: warnings.map(issueWords) };
}

function issueWords(issue: { place: string; expected: string; received: string }): string {
  return `${issue.place}: expected ${issue.expected}, received ${issue.received}`;
}
