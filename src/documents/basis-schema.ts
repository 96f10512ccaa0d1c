import { z } from "zod";
import { record } from "./record.js";

/** What a heater's numbers rest on. */
export const basisSchema = z
  .union([
    record({ kind: z.literal("measured"), runs: z.int().positive() }),
    record({ kind: z.literal("scaled"), from: z.string().min(1) }),
    record({ kind: z.literal("estimated") }),
  ])
  .meta({ description: "what its numbers rest on: measured runs, another heater scaled, or judgement" });
