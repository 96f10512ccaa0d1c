import { z } from "zod";
import { learnedSchema } from "./learned-schema.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { record } from "./record.js";
import { finding } from "./said.js";

const stamp = record({ at_h: z.number(), time: z.string() });

/** One thing found in a log: left out, or kept with doubt. */
export const findingSchema = record({
  kind: z.string(),
  place: z.string(),
  probe: z.string().exactOptional(),
  expected: z.string(),
  received: z.string(),
  rejected: z.boolean(),
});

/** What `learn` answers. */
export const learningSchema = record({
  soakline: z.literal(SCENARIO_VERSION),
  kind: z.literal("learning"),
  name: z.string(),
  aircraft: record({ id: z.string(), name: z.string() }),
  zone: z.string(),
  log: record({
    origin: z.string(),
    readings: z.int(),
    outside: z.int(),
    thinned: z.int(),
    findings: z.array(findingSchema),
    columns: z
      .array(
        record({
          column: z.string(),
          as: z.string().meta({
            description: "a part, outside-air, hangar-air, time, rpm, fuel-flow, egt or not-used",
          }),
          unit: z.enum(["c", "f"]).exactOptional(),
          unit_by: z
            .literal("values")
            .exactOptional()
            .meta({ description: "nothing names the unit, but only one is possible" }),
          group: z.string().exactOptional().meta({ description: "the mean that it goes into" }),
          why: z.enum(["open", "told", "other-quantity", "other-engine"]).exactOptional(),
        }),
      )
      .meta({ description: "what each column was taken for, to be confirmed" }),
    engine: z
      .union([z.literal(1), z.literal(2)])
      .exactOptional()
      .meta({ description: "taken of two: 1 is the left one" }),
  }),
  multipliers: z.array(
    record({
      name: z.string(),
      label: finding,
      multiplier: z.number(),
      within: z
        .number()
        .meta({ description: "90 % lie between the multiplier divided and multiplied by this" }),
      moved_sd: z.number().meta({ description: "change from the general value, in its standard deviations" }),
      left: z.number().meta({ description: "doubt left, as a share of what was doubted before" }),
    }),
  ),
  untold: z.array(finding).meta({ description: "what the log could not tell" }),
  suspicious: z
    .array(finding)
    .meta({ description: "what went so far off that probe, events or kit are doubtful" }),
  probes: z.array(
    record({
      name: z.string(),
      cooling_since: stamp.exactOptional().meta({
        description: "the shut-down that these readings follow; the scenario's start where left out",
      }),
      readings: z.int(),
      bias_k: z.number(),
      rms_k: z.number(),
      worst_k: z.number(),
      worst_at: stamp,
      coverage: z.number().meta({ description: "share of the readings within the 90 % band" }),
      offset_k: z.number(),
      lag_s: z.number(),
    }),
  ),
  contradictions: z
    .array(
      record({
        probe: z.string(),
        readings: z.int(),
        at: stamp,
        reading_c: z.number(),
        model_c: z.number(),
      }),
    )
    .meta({ description: "readings that no aircraft like this one explains, with the worst of each probe" }),
  discrepancy_scale: z.number().meta({ description: "the model's own error, as a factor on what is usual" }),
  next_readings: record({
    sd_k: z.number(),
    readings: z.array(record({ part: z.string(), at: stamp, sd_after_k: z.number() })),
  }).meta({
    description: "how well the crankshaft at departure would be known, now and after one more reading",
  }),
  learned: learnedSchema,
  assumptions: z.array(finding),
}).meta({ title: "Soakline learning" });

export type LearningDocument = z.infer<typeof learningSchema>;
