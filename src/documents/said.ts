import { z } from "zod";
import type { Finding, Said, SaidCaution } from "../findings/index.js";
import { record } from "./record.js";

const shape = {
  code: z.string().meta({ description: "what was found; words are made of it where it is read" }),
  values: z.record(z.string(), z.unknown()).meta({ description: "what its words need; keys carry units" }),
};

/** What the core found out, assumed or warns of. */
export const finding = record(shape) as unknown as z.ZodType<Finding>;

/** A citation in its own language, or a finding of where something comes from. */
export const citation: z.ZodType<string | Finding> = z.union([z.string(), finding]);

/** A finding, or an English sentence. */
export const said: z.ZodType<Said> = z.union([z.string(), finding]);

/** What to take care of, and where that comes from. */
export const caution = z.union([
  record({ text: z.string(), source: z.string() }),
  record({ ...shape, source: z.string() }),
]) as unknown as z.ZodType<SaidCaution>;
