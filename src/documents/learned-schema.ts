import { z } from "zod";
import { PARAMETERS } from "../aircraft/index.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { record } from "./record.js";

const words = z.string().min(1);
const numbers = z.array(z.number());

/** Since the second edition the catalogue's heat stores are those of the engine's mass. */
export const CATALOGUE_EDITION = 2;

/** What logs taught of one aircraft, with the evidence: named beside `aircraft` in a scenario, and left out to go back. */
export const learnedSchema = record({
  soakline: z.literal(SCENARIO_VERSION),
  kind: z.literal("learned"),
  base: words.meta({ description: "id of the installation it was learned on" }),
  catalogue: z.literal(CATALOGUE_EDITION).exactOptional().meta({
    description: "edition of the catalogue whose numbers are multiplied; the first one without it",
  }),
  multipliers: record({
    names: z.array(z.enum(PARAMETERS.map((p) => p.name))).min(1),
    mean_log: numbers.meta({ description: "natural logarithm of each multiplier's middle" }),
    factor_log: z.array(numbers).meta({
      description: "rows of the lower-triangular Cholesky factor of the logarithms' covariance",
    }),
  }),
  evidence: z
    .array(
      record({
        of: words.exactOptional().meta({ description: "another aircraft of the base that it was logged on" }),
        origin: words,
        hash: words.meta({
          description: "of times, probes and readings, so that the same log is known again",
        }),
        readings: z.int().min(1),
        from: words,
        to: words,
        heaters: z.array(words),
        settings: z.array(record({ place: z.enum(["ramp", "hangar"]), covers: z.array(words) })),
        probes: z.array(
          record({
            name: words,
            part: words.meta({ description: "outside-air and hangar-air for the air" }),
            noise_k: z.number().positive(),
            offset_k: z.number(),
            offset_sd_k: z.number().min(0),
            lag_s: z.number().positive(),
            lag_log_sd: z.number().min(0),
          }),
        ),
      }),
    )
    .min(1),
}).meta({ title: "Soakline learned aircraft" });

export type LearnedDocument = z.infer<typeof learnedSchema>;
