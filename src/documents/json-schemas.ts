import { z } from "zod";
import { basePlanSchema, baseSchema } from "./base-plan-schema.js";
import { coverSchema, heaterSchema, installationSchema } from "./description-schema.js";
import { frostOutlookSchema } from "./frost-result-schema.js";
import { frostSchema } from "./frost-schema.js";
import { learnedSchema } from "./learned-schema.js";
import { learningSchema } from "./learning-schema.js";
import { nowSchema } from "./now-schema.js";
import { awaySchema, explanationSchema, planSchema, simulationSchema } from "./result-schema.js";
import { scenarioSchema } from "./scenario-schema.js";
import { thawOutlookSchema } from "./thaw-result-schema.js";
import { thawSchema } from "./thaw-schema.js";
import { kitComparisonSchema, winterStudySchema } from "./winter-result-schema.js";
import { kitSchema, winterSchema } from "./winter-schema.js";

const SCHEMAS = {
  scenario: scenarioSchema,
  installation: installationSchema,
  heater: heaterSchema,
  cover: coverSchema,
  plan: planSchema,
  simulation: simulationSchema,
  explanation: explanationSchema,
  away: awaySchema,
  learned: learnedSchema,
  learning: learningSchema,
  now: nowSchema,
  frost: frostSchema,
  "frost-outlook": frostOutlookSchema,
  thaw: thawSchema,
  "thaw-outlook": thawOutlookSchema,
  winter: winterSchema,
  "winter-study": winterStudySchema,
  kit: kitSchema,
  "kit-comparison": kitComparisonSchema,
  base: baseSchema,
  "base-plan": basePlanSchema,
} as const satisfies Record<string, z.ZodType>;

/** JSON Schema (draft 2020-12) of every document, by name. */
export function jsonSchemas(): Record<keyof typeof SCHEMAS, object> {
  const schemas = Object.entries(SCHEMAS).map(([name, schema]) => [
    name,
    z.toJSONSchema(schema, { target: "draft-2020-12" }),
  ]);
  return Object.fromEntries(schemas);
}
