import { z } from "zod";
import { findingSchema } from "./learning-schema.js";
import { record } from "./record.js";
import { criterionSchema, resultHeader, stampSchema, startSchema } from "./result-schema.js";

const chance = z.number().min(0).max(1);
const band = record({ p05_c: z.number(), p50_c: z.number(), p95_c: z.number() });

/** What `now` answers. */
export const nowSchema = record({
  ...resultHeader,
  kind: z.literal("now"),
  at: stampSchema.meta({ description: "time of the last reading, which the estimate holds for" }),
  chance,
  weakest: z.string(),
  criteria: z.array(criterionSchema),
  start_briefing: startSchema,
  parts: z.record(z.string(), band).meta({ description: "every part, probed or not" }),
  probes: z.array(record({ name: z.string(), part: z.string(), readings: z.int(), left_aside: z.int() })),
  deviations: z.array(
    record({
      finding: z.enum(["heater-not-heating", "cover-off", "other-place", "probe-out"]),
      probe: z.string().exactOptional(),
      chance,
      believed: z.boolean(),
      since: stampSchema.exactOptional(),
    }),
  ),
  log_findings: z.array(findingSchema),
}).meta({ title: "Soakline estimate of now" });

export type NowDocument = z.infer<typeof nowSchema>;
