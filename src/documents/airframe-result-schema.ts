import { z } from "zod";
import { record } from "./record.js";
import { planSchema } from "./result-schema.js";

// What all answers about the airframe are made of.

const { soakline, name, start, zone, members, assumptions, warnings, cautions } = planSchema.shape;

export const header = {
  soakline,
  name,
  panel: z.string().meta({ description: "the piece of wing looked at" }),
  start,
  zone,
  members,
  assumptions,
  warnings,
  cautions,
};

export const stamp = start;
export const chance = z.number().min(0).max(1);
export const band = record({ p05: z.number(), p50: z.number(), p95: z.number() });
export const bandSeries = record({
  p05: z.array(z.number()),
  p50: z.array(z.number()),
  p95: z.array(z.number()),
});

/** When something happens; null where that share of the cases has not got there by the end. */
export const timeBand = record({
  p05: stamp.nullable(),
  p50: stamp.nullable(),
  p95: stamp.nullable(),
  share: chance.meta({ description: "of the cases that get there" }),
});

/** [min] after roll-out or take-off. */
export const minutesBand = record({
  p05: z.number().nullable(),
  p50: z.number().nullable(),
  p95: z.number().nullable(),
  share: chance,
});

export const verdict = z.enum(["none", "possible", "likely"]).meta({
  description: "none: below 5 %, never a clearance; likely: half of the cases or more",
});

export const timeHours = z.array(z.number()).meta({ description: "from the start" });
