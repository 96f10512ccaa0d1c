import { z } from "zod";
import { findingSchema, record, scenarioSchema } from "../documents/index.js";
import type { Said } from "../findings/index.js";
import { baseSetUpSchema, idSchema, momentSchema as moment, probePlaces } from "./set-up.js";

// The logbook is a record of events that is only ever added to. What stands is derived from it.

const words = z.string().min(1).max(2000);
/** What happened as a finding; a sentence in an event of an earlier program, which stands as it was written. */
const said: z.ZodType<Said> = z.union([words, findingSchema]);
const ids = z.array(z.string().min(1).max(200)).min(1);
/** Made by whoever writes the event down, so that sending it twice is harmless. */
export const eventIdSchema = z.uuid({ error: "an id such as 6f0c2b1e-4a55-4e0e-9d0a-0c8f2a7b9e31 (UUID)" });
const tempC = z.number().min(-90).max(400);
const chance = z.number().min(0).max(1);

const common = {
  id: eventIdSchema,
  at: moment.meta({ description: "when it happened" }),
  by: z.string().min(1).max(200).exactOptional(),
  note: words.exactOptional(),
};
const ofAircraft = { ...common, aircraft: idSchema };
const ofSwitch = { ...ofAircraft, switch: idSchema };

export const FAULTS = [
  "over-temperature",
  "probe-lost",
  "probe-stuck",
  "no-confirmation",
  "switched-by-other",
  "clock-jump",
  "store-unwritable",
  "longest-on",
  "device-offline",
  "heater-not-heating",
  "probe-out",
  "cover-off",
  "plan-failed",
] as const;
export type FaultCode = (typeof FAULTS)[number];

const done = [
  record({ ...ofAircraft, kind: z.literal("plugged-in"), heaters: ids }),
  record({ ...ofAircraft, kind: z.literal("unplugged"), heaters: ids }),
  record({ ...ofAircraft, kind: z.literal("cover-on"), covers: ids }),
  record({ ...ofAircraft, kind: z.literal("cover-off"), covers: ids }),
  record({ ...ofAircraft, kind: z.literal("moved"), to: z.enum(["ramp", "hangar"]) }),
  record({ ...ofAircraft, kind: z.literal("shut-down") }),
  record({ ...ofAircraft, kind: z.literal("started"), how: z.enum(["easy", "hard", "failed"]) }),
  record({ ...ofAircraft, kind: z.literal("reading"), part: z.enum(probePlaces), temp_c: tempC }),
] as const;

const wanted = [
  record({
    ...ofAircraft,
    kind: z.literal("departure-wanted"),
    departure: moment,
    chance: z.number().gt(0).lt(1).exactOptional(),
    pulled_out: z.boolean().exactOptional(),
    heaters: ids.exactOptional(),
  }),
  record({ ...ofAircraft, kind: z.literal("departure-dropped"), of: eventIdSchema }),
] as const;

const known = [
  record({ ...common, kind: z.literal("set-up"), base: baseSetUpSchema }),
  record({
    ...common,
    kind: z.literal("forecast"),
    origin: words.meta({ description: "where it came from, in words" }),
    weather: scenarioSchema.shape.weather.meta({
      description: "at_h counts from when the event happened; no files can be named",
    }),
  }),
  record({ ...common, kind: z.literal("note"), aircraft: idSchema.exactOptional() }),
] as const;

const temps = z.array(tempC);
/** What was said of parts over time, to be checked by what is read of them. */
const bands = record({
  at: z.array(moment).min(1).max(24),
  parts: z.record(z.string(), record({ p05_c: temps, p50_c: temps, p95_c: temps })),
});

const planned = [
  record({
    ...ofAircraft,
    kind: z.literal("plan-issued"),
    of: eventIdSchema.meta({ description: "the departure-wanted event it answers" }),
    status: z.enum(["ready", "not-reachable"]),
    plug_in: moment.nullable(),
    unplug: moment,
    departure: moment,
    heaters: z.array(z.string()),
    chance,
    weakest: z.string(),
    message: said,
    energy_kwh: z.number().min(0),
    bands: bands
      .exactOptional()
      .meta({ description: "temperatures of parts that the plan expects: middle, and 9 in 10 between" }),
    corrected: record({ air_k: z.number(), spread: z.number().positive() })
      .exactOptional()
      .meta({ description: "what the base's own record had changed in it" }),
  }),
  record({
    ...ofAircraft,
    kind: z.literal("plan-withdrawn"),
    of: eventIdSchema.meta({ description: "the plan-issued event" }),
    reason: said,
  }),
  record({
    ...ofAircraft,
    kind: z.literal("probes-read"),
    of: eventIdSchema.meta({ description: "the departure-wanted event whose plan was followed" }),
    readings: z
      .array(record({ part: z.enum(probePlaces), temp_c: tempC }))
      .min(1)
      .max(probePlaces.length)
      .meta({
        description:
          "what the probes on each part read last when the plan was through; it checks the plan, no more",
      }),
  }),
] as const;

const switched = [
  record({ ...ofSwitch, kind: z.literal("switch-commanded"), to: z.enum(["on", "off"]), reason: said }),
  record({ ...ofSwitch, kind: z.literal("switch-confirmed"), is: z.enum(["on", "off"]) }),
  record({
    ...common,
    kind: z.literal("fault"),
    aircraft: idSchema.exactOptional(),
    switch: idSchema.exactOptional(),
    probe: idSchema.exactOptional(),
    fault: z.enum(FAULTS),
    text: said,
  }),
  record({ ...common, kind: z.literal("fault-cleared"), of: eventIdSchema }),
] as const;

const plain = [...done, ...wanted, ...known, ...planned, ...switched] as const;

/** A correction never changes what was written: it says what holds instead. */
const correction = record({
  ...common,
  kind: z.literal("correction"),
  of: eventIdSchema,
  instead: z.discriminatedUnion("kind", plain).nullable().meta({
    description: "what holds in its place, with an id of its own; null when it never happened",
  }),
});

export const eventSchema = z.discriminatedUnion("kind", [...plain, correction]).meta({
  title: "Soakline logbook event",
  description: "One thing that happened, was wanted, planned or switched at a base.",
});

export type LogbookEvent = z.infer<typeof eventSchema>;
export type EventKind = LogbookEvent["kind"];
export type EventOf<K extends EventKind> = Extract<LogbookEvent, { kind: K }>;

/** An event as a store keeps it. */
export interface StoredEvent {
  /** Grows by at least one with every event kept; clients go on from the highest they have. */
  readonly sequence: number;
  /** ISO 8601, UTC: when the store took it. */
  readonly received: string;
  readonly event: LogbookEvent;
}
