import { z } from "zod";
import {
  coverSchema,
  heaterSchema,
  installationSchema,
  learnedSchema,
  record,
  scenarioSchema,
} from "../documents/index.js";
import { probeViaSchema, switchViaSchema } from "../switching/index.js";
import { SET_UP_VERSION } from "./migrate-set-up.js";

// What a base is: its place, its power, its aircraft with kit, probes and switches. Stored whole, as one event.

const words = z.string().min(1).max(200);
/** Names things in topics, addresses and events. */
export const idSchema = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,63}$/, {
    error: "at most 64 small letters, figures and hyphens, such as lynx or outlet-2",
  })
  .meta({ description: "lower-case letters, digits and hyphens, such as lynx or outlet-2" });
export const momentSchema = z.iso
  .datetime({
    offset: true,
    error: "a date and time with seconds and offset, such as 2026-01-14T18:00:00+01:00",
  })
  .meta({ description: "ISO 8601 with offset" });
export const probePlaces = [
  "sump",
  "oil",
  "crankcase",
  "crankshaft",
  "cylinders",
  "heads",
  "accessories",
  "hub",
  "cowl_air",
  "cowl_skin",
  "battery",
  "coolant",
  "heater_surface",
  "outside_air",
  "hangar_air",
] as const;

const probe = record({
  id: idSchema,
  name: words,
  at: z.enum(probePlaces),
  via: probeViaSchema
    .exactOptional()
    .meta({ description: "how its readings come; left out, nothing is heard" }),
  unit: z.enum(["c", "f", "k"]),
  lag_s: z.number().min(1).max(3600).exactOptional(),
  offset_c: z.number().min(-30).max(30).exactOptional().meta({ description: "added to what it says" }),
  at_most_c: z
    .number()
    .min(20)
    .max(400)
    .exactOptional()
    .meta({ description: "switch off above it; the heater's own limit where left out" }),
  silent_after_s: z
    .number()
    .min(10)
    .max(7200)
    .exactOptional()
    .meta({ description: "lost when nothing came for so long; 600 where left out" }),
});

const heaterSwitch = record({
  id: idSchema,
  name: words,
  heaters: z.array(words).min(1).meta({ description: "ids of the heaters it feeds" }),
  longest_on_min: z
    .number()
    .min(1)
    .max(24 * 60)
    .meta({ description: "never on longer in one go, whatever the plan says" }),
  rest_min: z
    .number()
    .min(0)
    .max(24 * 60)
    .exactOptional()
    .meta({ description: "off for at least so long after longest_on_min was used up; 30 where left out" }),
  on_time_s: z
    .number()
    .min(30)
    .max(24 * 3600)
    .exactOptional()
    .meta({ description: "the device switches itself off unless the on command is renewed within it" }),
  confirm_within_s: z.number().min(1).max(300).exactOptional(),
  via: switchViaSchema,
});

const aircraft = record({
  id: idSchema,
  name: words,
  engine: z.union([words, installationSchema]),
  learned: learnedSchema.exactOptional(),
  kit: record({
    heaters: z.array(z.union([words, heaterSchema])),
    covers: z.array(z.union([words, coverSchema])),
  }),
  known: record({
    at: momentSchema,
    place: z.enum(["ramp", "hangar"]),
    covers_on: z.array(words),
    initial: scenarioSchema.shape.initial.unwrap(),
  }).meta({ description: "how it stood when it was entered" }),
  limits: scenarioSchema.shape.limits,
  habits: record({
    chance: z.number().gt(0).lt(1),
    unplug_before_min: z.number().min(0).max(240),
    cover_off_before_min: z.number().min(0).max(240),
  }).exactOptional(),
  circuit: idSchema.exactOptional().meta({ description: "the circuit its outlet hangs on" }),
  probes: z.array(probe),
  switches: z.array(heaterSwitch),
});

const circuit = record({
  id: idSchema,
  name: words,
  limit_a: z.number().positive().max(1000),
  voltage_v: z.number().min(10).max(480),
  outlets: z.int().min(1).max(200),
  generator: z.boolean().exactOptional(),
});

/** One base, whole. A change is a new `set-up` event with the whole document. */
export const baseSetUpSchema = record({
  soakline_base: z.literal(SET_UP_VERSION),
  name: words,
  notice: words.exactOptional().meta({ description: "said wherever the base is shown, such as: invented" }),
  zone: words.meta({ description: "IANA time zone" }),
  latitude_deg: z.number().min(-90).max(90).exactOptional(),
  longitude_deg: z.number().min(-180).max(180).exactOptional(),
  roughness_m: z.number().min(0.0001).max(1).exactOptional(),
  hangar: record({
    bays: z.int().min(1).max(100),
    air_c: z.number().min(-60).max(40),
    move_min: z.number().min(0).max(240).meta({ description: "to move one aircraft in or out" }),
  }).exactOptional(),
  circuits: z.array(circuit),
  carts: z
    .array(record({ id: idSchema, heater: words }))
    .exactOptional()
    .meta({ description: "heaters that go from aircraft to aircraft" }),
  people: z
    .array(record({ from: momentSchema, to: momentSchema, count: z.int().min(1).max(100) }))
    .exactOptional()
    .meta({ description: "when somebody is there to plug in by hand; always, where left out" }),
  aircraft: z.array(aircraft).max(2000),
  probes: z.array(probe).meta({ description: "of the base itself: outside air, hangar air" }),
}).meta({ title: "Soakline base", description: "A base with its aircraft, kit, probes and switches." });

export type BaseSetUp = z.infer<typeof baseSetUpSchema>;
export type BaseAircraft = z.infer<typeof aircraft>;
export type BaseProbe = z.infer<typeof probe>;
export type HeaterSwitch = z.infer<typeof heaterSwitch>;
export type BaseCircuit = z.infer<typeof circuit>;
