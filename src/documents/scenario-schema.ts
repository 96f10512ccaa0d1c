import { z } from "zod";
import { coverSchema, heaterSchema, installationSchema } from "./description-schema.js";
import { learnedSchema } from "./learned-schema.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { record } from "./record.js";
import { WEATHER_SHAPE } from "./weather-sources/index.js";
import { airCelsius, moment, words } from "./weather-sources/source.js";

/** [°C] of metal and oil at the start: from cold-soaked to just shut down. */
const partCelsius = z.number().min(-90).max(250);
const hoursFromStart = z.number().min(0);
const ids = z.array(words);

const weather = record({
  ...WEATHER_SHAPE,
  issued: moment
    .exactOptional()
    .meta({ description: "when the points were forecast; left out for measured weather" }),
});

const at = { at_h: hoursFromStart.exactOptional(), time: moment.exactOptional() };

const event = z.discriminatedUnion("do", [
  record({ ...at, do: z.enum(["plug_in", "unplug"]), heaters: ids.min(1) }),
  record({ ...at, do: z.enum(["cover_on", "cover_off"]), covers: ids.min(1) }),
  record({ ...at, do: z.literal("move"), to: z.enum(["ramp", "hangar"]) }),
]);

const want = record({
  departure: words.meta({
    description: "when the engine is to be started: ISO 8601 with offset, or HH:MM, the next such local time",
  }),
  chance: z.number().gt(0).lt(1).exactOptional(),
  heaters: ids.exactOptional(),
  unplug_before_min: z.number().min(0).exactOptional(),
  cover_off_before_min: z.number().min(0).exactOptional(),
  pulled_out: z.boolean().exactOptional(),
});

const initial = record({
  all_c: partCelsius.exactOptional(),
  sump_c: partCelsius.exactOptional(),
  oil_c: partCelsius.exactOptional(),
  crankcase_c: partCelsius.exactOptional(),
  crankshaft_c: partCelsius.exactOptional(),
  cylinders_c: partCelsius.exactOptional(),
  heads_c: partCelsius.exactOptional(),
  accessories_c: partCelsius.exactOptional(),
  hub_c: partCelsius.exactOptional(),
  cowl_air_c: partCelsius.exactOptional(),
  cowl_skin_c: partCelsius.exactOptional(),
  battery_c: partCelsius.exactOptional(),
  coolant_c: partCelsius.exactOptional(),
  shut_down_h_ago: z.number().min(0).max(72).exactOptional().meta({
    description: "the engine was shut down from cruise this long before the start, and has cooled since",
  }),
  ground_run_min: z.number().min(0).max(120).exactOptional().meta({
    description: "the engine was idled this long up to the start, from the temperatures given here",
  }),
  snow_on_cowl_kg_m2: z.number().min(0).max(100).exactOptional(),
  uncertainty_k: z.number().min(0).max(30).exactOptional(),
});

/** One run: an aircraft, its kit, where it stands, the weather, what happens and what is wanted. */
export const scenarioSchema = record({
  soakline: z.literal(SCENARIO_VERSION),
  name: words,
  note: words.exactOptional().meta({ description: "free words, kept but not used" }),
  aircraft: z.union([words, installationSchema]),
  learned: z
    .union([words, learnedSchema])
    .exactOptional()
    .meta({ description: "what logs taught of this aircraft, or the name of the file that says so" }),
  kit: record({
    heaters: z.array(z.union([words, heaterSchema])),
    covers: z.array(z.union([words, coverSchema])),
  }),
  start: words.meta({ description: "ISO 8601 with offset, such as 2026-01-14T18:00+01:00" }),
  zone: words.exactOptional().meta({ description: "IANA time zone for local times, such as Europe/Oslo" }),
  hours: z.number().positive().max(168),
  place: z.enum(["ramp", "hangar"]),
  fitted: record({ covers: ids }).exactOptional(),
  plugged_in: ids.exactOptional(),
  plugged_in_since: moment.exactOptional(),
  battery: record({ fitted: z.boolean() })
    .exactOptional()
    .meta({ description: "whether a battery is in the aircraft; taken as fitted where left out" }),
  initial: initial.exactOptional(),
  weather,
  hangar: record({ air_c: airCelsius }).exactOptional(),
  site: record({
    roughness_m: z
      .number()
      .min(0.0001)
      .max(1)
      .meta({ description: "aerodynamic roughness length of the ground upwind" }),
  }).exactOptional(),
  events: z.array(event).exactOptional(),
  want: want.exactOptional(),
  limits: record({
    engine_at_least_c: partCelsius.exactOptional(),
    oil_at_least_c: partCelsius.exactOptional(),
    evenness_at_most_k: z.number().positive().exactOptional(),
    warm_through_c: z
      .number()
      .min(-10)
      .max(40)
      .exactOptional()
      .meta({ description: "what the owner calls warm through; 5 where left out" }),
  })
    .exactOptional()
    .meta({ description: "the owner's limits, stricter than the maker's" }),
  ensemble: record({
    members: z.int().min(20).max(5000).exactOptional(),
    seed: z
      .int()
      .min(0)
      .max(2 ** 31 - 1)
      .exactOptional(),
    correction: record({
      air_k: z.number().min(-20).max(10).meta({ description: "added to the outside air of every case" }),
      spread: z.number().min(0.5).max(4).meta({ description: "by which cases lie further apart" }),
      plans: z.int().min(1).meta({ description: "checked plans that ask for it" }),
    })
      .exactOptional()
      .meta({ description: "what the outcomes of earlier plans of this base ask of new ones" }),
  }).exactOptional(),
}).meta({
  title: "Soakline scenario",
  description: "One aircraft, its kit, the weather and what is wanted. Keys carry units.",
});

export type ScenarioDocument = z.infer<typeof scenarioSchema>;
export type ScenarioSections = Partial<ScenarioDocument>;
