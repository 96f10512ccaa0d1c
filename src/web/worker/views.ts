import { type Cover, coverById, type Heater, heaterById, installationById } from "../../aircraft/index.js";
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
import type {
  AircraftView,
  BaseView,
  CoverView,
  ForecastAsk,
  ForecastView,
  HeaterView,
  WeatherView,
} from "./protocol.js";
import { Refused } from "./refused.js";

const HOUR = 3_600_000;
/** [h] shown at most, the hour before now included. */
const SHOWN_HOURS = 49;
/** Chance aimed at where neither departure nor habit says; as scenario documents have it. */
const USUAL_CHANCE = 0.9;

/** What stands at the base, in the form the screens need. */
export function baseView(state: BaseState, now: number): BaseView {
  const { setUp, withoutEffect } = state;
  const { read, refused } = readForecasts(state);
  const [newest] = read;
  return {
    setUp,
    name: setUp.name,
    ...(setUp.notice === undefined ? {} : { notice: setUp.notice }),
    zone: setUp.zone,
    hasHangar: setUp.hangar !== undefined,
    circuits: setUp.circuits.map(({ id, name, limit_a, voltage_v, outlets }) => ({
      ...{ id, name, outlets },
      continuousA: continuousLimit({ limit_a }),
      voltageV: voltage_v,
    })),
    aircraft: [...state.aircraft.values()].map((aircraft) =>
      aircraftView(aircraft, unsafeSwitches(setUp), now),
    ),
    ...(newest === undefined
      ? {}
      : { weather: weatherView(newest.series, newest.received, now, newest.event.origin) }),
    ...(refused.length === 0 ? {} : { weatherTrouble: refused.join(" | ") }),
    withoutEffect,
  };
}

function aircraftView(aircraft: AircraftState, unsafe: UnsafeSwitches, now: number): AircraftView {
  const { setUp, place, running, heatersOn, coversOn, readings, lastStart, faults } = aircraft;
  const engine = typeof setUp.engine === "string" ? installationById(setUp.engine) : setUp.engine;
  const since = heatingSince(aircraft, heatersOn);
  return {
    id: setUp.id,
    name: setUp.name,
    engine: engine.name,
    cylinders: engine.cylinders,
    hasCoolant: engine.cooling === "liquid",
    ...(setUp.circuit === undefined ? {} : { circuit: setUp.circuit }),
    ...{ place, running, heatersOn, coversOn, readings },
    heaters: setUp.kit.heaters.map((h) => heaterView(typeof h === "string" ? heaterById(h) : (h as Heater))),
    covers: setUp.kit.covers.map((c) => coverView(typeof c === "string" ? coverById(c) : (c as Cover))),
    switches: setUp.switches.map((one) => {
      const reason = unsafe.get(`${setUp.id}/${one.id}`);
      return {
        ...{ id: one.id, name: one.name, heaters: one.heaters, cautions: cautionsOf(one) },
        ...(reason === undefined ? {} : { unsafe: reason }),
      };
    }),
    ...(since === undefined ? {} : { heatingSince: since }),
    chance: setUp.habits?.chance ?? USUAL_CHANCE,
    departures: aircraft.departures.filter((d) => d.departure > now),
    ...(lastStart === undefined ? {} : { lastStart }),
    faults: faults.map(({ text }) => text),
  };
}

export function heaterView(heater: Heater): HeaterView {
  const { id, name, elements, duct, attended, longest_on_h, cylinders, cautions } = heater;
  const ofElements = elements.reduce((sum, { power_w }) => sum + power_w, 0);
  return {
    ...{ id, name, attended, cautions },
    powerW: ofElements + (duct?.energy === "electric" ? duct.power_w : 0),
    electric: duct?.energy !== "fuel",
    longestOnH: longest_on_h,
    ...(cylinders === undefined ? {} : { cylinders }),
  };
}

export function coverView({ id, name, cautions }: Cover): CoverView {
  return { id, name, cautions };
}

function weatherView(series: WeatherSeries, received: number, now: number, origin: string): WeatherView {
  const first = HOUR * Math.floor(now / HOUR);
  const from = HOUR * Math.ceil(series.time[0] / 3600);
  const to = series.time[series.time.length - 1] * 1000;
  const time = Array.from({ length: SHOWN_HOURS }, (_, i) => first + (i - 1) * HOUR).filter(
    (t) => t >= from && t <= to,
  );
  return {
    origin,
    received,
    ...sampled(series, time),
    assumptions: [...new Set(series.assumptions.map(({ text }) => text))],
  };
}

/** Weather at these times [ms]. */
function sampled(series: WeatherSeries, time: readonly number[]) {
  const moments = time.map((t) => weatherAt(series, t / 1000));
  const rounded = (value: number, digits: number) => Math.round(value * 10 ** digits) / 10 ** digits + 0;
  return {
    time: [...time],
    airC: moments.map((m) => rounded(celsiusFromKelvin(m.tempAir), 1)),
    windMps: moments.map((m) => rounded(m.windSpeed, 1)),
    dewPointC: moments.map((m) => rounded(celsiusFromKelvin(m.tempDewPoint), 1)),
    cloud: moments.map((m) => rounded(m.cloudCover, 2)),
  };
}

/** [h] a pasted forecast is tried to be read to, then less. */
const REACHES = [24, 12, 6, 3];

/** What pasted reports say, or why they cannot be read. */
export function forecastWeather({ now, metar, taf }: ForecastAsk): ForecastView {
  const text = [metar, taf].filter((t) => t !== undefined && t.trim() !== "").join("=\n");
  if (text === "") throw new Refused(["METAR or TAF: expected text, received nothing"]);
  const reference = now / 1000;
  let reasons: readonly string[] = [];
  for (const hours of REACHES) {
    const reading = readForecastText(text, { reference, until: reference + hours * 3600 });
    if (!reading.ok) {
      reasons = reading.issues.map(issueWords);
      continue;
    }
    const { series, warnings } = reading;
    const first = Math.ceil(series.time[0] / 3600);
    const last = Math.floor(series.time[series.time.length - 1] / 3600);
    const time = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * HOUR);
    const { airC, windMps, cloud } = sampled(series, time);
    return {
      origin: series.origin,
      ...{ time, airC, windMps, cloud },
      assumptions: [...new Set(series.assumptions.map((a) => a.text))],
      warnings: warnings.map(issueWords),
    };
  }
  throw new Refused(reasons);
}

function issueWords({
  place,
  expected,
  received,
}: {
  place: string;
  expected: string;
  received: string;
}): string {
  return `${place}: expected ${expected}, received ${received}`;
}
