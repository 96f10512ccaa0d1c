import type { BaseSetUp, LogbookEvent } from "../../../logbook/index.js";
import { newId } from "../../data/app.svelte.js";
import { isoOf } from "../../units/times.js";
import type { WeatherSection } from "../forecast/weather-entry.js";

/** What a newcomer says of the first aircraft. */
export interface FirstAnswers {
  readonly name: string;
  readonly engine: string;
  readonly heaters: readonly string[];
  readonly covers: readonly string[];
  readonly areCoversOn: boolean;
  readonly place: "ramp" | "hangar";
  readonly hangarC: number;
  /** From cruise, this long ago; undefined: long ago, as cold as the air. */
  readonly shutDownHours?: number;
  readonly weather: WeatherSection;
  readonly origin: string;
  readonly departure: number;
}

/** The events that open a logbook for one aircraft. */
export function openingEvents(answers: FirstAnswers, now: number, zone: string): LogbookEvent[] {
  const at = isoOf(now);
  const id = idOf(answers.name);
  const base: BaseSetUp = {
    soakline_base: 3,
    name: answers.name,
    zone,
    ...(answers.place === "hangar" ? { hangar: { bays: 1, air_c: answers.hangarC, move_min: 20 } } : {}),
    circuits: [],
    aircraft: [
      {
        id,
        name: answers.name,
        engine: answers.engine,
        kit: { heaters: [...answers.heaters], covers: [...answers.covers] },
        known: {
          at,
          place: answers.place,
          covers_on: answers.areCoversOn ? [...answers.covers] : [],
          initial: answers.shutDownHours === undefined ? {} : { shut_down_h_ago: answers.shutDownHours },
        },
        probes: [],
        switches: [],
      },
    ],
    probes: [],
  };
  return [
    { kind: "set-up", id: newId(), at, base },
    { kind: "forecast", id: newId(), at, origin: answers.origin, weather: answers.weather },
    {
      ...{ kind: "departure-wanted", id: newId(), at, aircraft: id, departure: isoOf(answers.departure) },
      pulled_out: answers.place === "hangar",
    },
  ];
}

/** @example idOf("Lynx 2") // "lynx-2" */
export function idOf(name: string): string {
  const plain = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/ø/g, "o")
    .replace(/æ/g, "ae")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 64);
  return plain === "" ? "aircraft" : plain;
}
