import { heaterById } from "../aircraft/index.js";
import { DEMO_SEED, demoBase, demoPoints } from "../documents/index.js";
import type { BaseAircraft, BaseProbe, BaseSetUp, EventOf, LogbookEvent } from "../logbook/index.js";
import { epochFromLocal, localText } from "../weather/index.js";
import { isoOf, MS_OF_HOUR } from "./forecast.js";

/** [h] of weather given from the demo's present on. */
const WEATHER_HOURS = 48;
/** [h] the first departure lies at least ahead, so that there is a night to plan. */
const LEAST_AHEAD = 5;
const ZONE = "CET";

/** The demo base at a present of the caller's, with the events that open its logbook. */
export interface DemoOpening {
  readonly setUp: BaseSetUp;
  readonly events: readonly LogbookEvent[];
}

/**
 * The invented base as it is kept live: its aircraft with probes and switches over MQTT, and its night from `now` on.
 * @param now [ms] since 1970 UTC
 */
export function demoOpening(now: number, seed = DEMO_SEED): DemoOpening {
  const setUp = demoSetUp(now, seed);
  const hour = MS_OF_HOUR * Math.floor(now / MS_OF_HOUR);
  const forecast: EventOf<"forecast"> = {
    ...{ kind: "forecast", id: demoId(seed, now, 1), at: isoOf(now), by: "demo" },
    origin: `invented weather of seed ${seed}`,
    weather: {
      issued: isoOf(hour),
      points: demoPoints(seed, {
        hours: WEATHER_HOURS,
        hourOfDay: Number(localText(hour / 1000, ZONE).slice(11, 13)),
      }).map(({ at_h = 0, ...point }) => ({ ...point, time: isoOf(hour + at_h * MS_OF_HOUR) })),
    },
  };
  const { scenarios } = demoBase(seed);
  const day = departureDay(
    now,
    scenarios.map(({ want }) => want?.departure ?? "12:00"),
  );
  return {
    setUp,
    events: [
      { kind: "set-up", id: demoId(seed, now, 0), at: isoOf(now), by: "demo", base: setUp },
      forecast,
      ...scenarios.flatMap(({ name, want }, i): LogbookEvent[] =>
        want === undefined
          ? []
          : [
              {
                ...{ kind: "departure-wanted", id: demoId(seed, now, 2 + i), at: isoOf(now), by: "demo" },
                ...{ aircraft: name.toLowerCase(), departure: isoOf(localMs(day, want.departure)) },
                ...(want.pulled_out === undefined ? {} : { pulled_out: want.pulled_out }),
                ...(want.heaters === undefined ? {} : { heaters: want.heaters }),
              },
            ],
      ),
    ],
  };
}

/** The demo base: four aircraft on one circuit of two outlets, one heated bay. */
export function demoSetUp(now: number, seed = DEMO_SEED): BaseSetUp {
  const { name, notice, scenarios } = demoBase(seed);
  return {
    soakline_base: 3,
    name,
    notice,
    zone: ZONE,
    latitude_deg: 66.6,
    longitude_deg: 15,
    roughness_m: scenarios[0].site?.roughness_m ?? 0.005,
    hangar: { bays: 1, air_c: scenarios[0].hangar?.air_c ?? 6, move_min: 20 },
    circuits: [{ id: "ramp-circuit", name: "ramp circuit", limit_a: 16, voltage_v: 230, outlets: 2 }],
    aircraft: scenarios.map((scenario): BaseAircraft => {
      const id = scenario.name.toLowerCase();
      const { want } = scenario;
      return {
        id,
        name: scenario.name,
        engine: scenario.aircraft,
        kit: scenario.kit,
        known: {
          at: isoOf(now),
          place: scenario.place,
          covers_on: scenario.fitted?.covers ?? [],
          initial: scenario.initial ?? { all_c: -18 },
        },
        habits: {
          chance: want?.chance ?? 0.9,
          unplug_before_min: want?.unplug_before_min ?? 15,
          cover_off_before_min: want?.cover_off_before_min ?? 10,
        },
        circuit: "ramp-circuit",
        probes: PROBED.map((at) => probe(id, at)),
        switches: [
          {
            id: "lead",
            name: `${scenario.name}'s cord`,
            heaters: switchable(scenario.kit.heaters),
            longest_on_min: 12 * 60,
            rest_min: 30,
            on_time_s: 120,
            confirm_within_s: 10,
            via: {
              kind: "mqtt",
              say: { topic: `soakline/demo/${id}/lead/wanted`, on: "heat", off: "stop" },
              hear: { topic: `soakline/demo/${id}/lead/reports`, on: "heating", off: "idle" },
            },
          },
        ],
      };
    }),
    probes: [probe("base", "outside_air"), probe("base", "hangar_air")],
  };
}

/** A heater that somebody has to stand by is plugged in by hand. */
function switchable(heaters: BaseAircraft["kit"]["heaters"]): string[] {
  return heaters.flatMap((heater) => {
    const { id, attended } = typeof heater === "string" ? heaterById(heater) : heater;
    return attended ? [] : [id];
  });
}

/** What the demo's probes sit on; an aircraft of any engine has them. */
const PROBED = ["oil", "heads", "crankcase"] as const;

function probe(of: string, at: BaseProbe["at"]): BaseProbe {
  const id = at.replaceAll("_", "-");
  return {
    id,
    name: at.replaceAll("_", " "),
    at,
    via: {
      kind: "mqtt",
      topic: `soakline/demo/${of}/probe/${id}`,
      pointer: "/temp_c",
      time_pointer: "/time",
    },
    unit: "c",
    silent_after_s: 300,
  };
}

/** The local date of the first morning on which even the earliest departure is far enough ahead. */
function departureDay(now: number, times: readonly string[]): string {
  for (let day = 0; ; day++) {
    const date = localText(now / 1000 + day * 86_400, ZONE).slice(0, 10);
    if (times.every((time) => localMs(date, time) >= now + LEAST_AHEAD * MS_OF_HOUR)) return date;
  }
}

function localMs(date: string, time: string): number {
  const reading = epochFromLocal(`${date}T${time}`, ZONE);
  if (!reading.ok) throw new RangeError(`invalid time: ${date}T${time} (expected ${reading.expected})`);
  return reading.epoch * 1000;
}

/** Ids that are the same for the same demo, in the form of a UUID of version 8 (RFC 9562: contents of one's own). */
function demoId(seed: number, now: number, n: number): string {
  const hex = (value: number, digits: number) =>
    Math.floor(value).toString(16).padStart(digits, "0").slice(-digits);
  const time = hex(now, 12);
  return `${hex(seed, 8)}-${hex(n, 4)}-8${time.slice(0, 3)}-8${time.slice(3, 6)}-${time}`;
}
