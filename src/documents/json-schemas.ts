import { z } from "zod";
import { coverSchema, heaterSchema, installationSchema } from "./description-schema.js";
import { awaySchema, explanationSchema, planSchema, simulationSchema } from "./result-schema.js";
import { scenarioSchema } from "./scenario-schema.js";

const SCHEMAS = {
  scenario: scenarioSchema,
  installation: installationSchema,
  heater: heaterSchema,
  cover: coverSchema,
  plan: planSchema,
  simulation: simulationSchema,
  explanation: explanationSchema,
  away: awaySchema,
} as const satisfies Record<string, z.ZodType>;

/** JSON Schema (draft 2020-12) of every document, by name. */
export function jsonSchemas(): Record<keyof typeof SCHEMAS, object> {
  const schemas = Object.entries(SCHEMAS).map(([name, schema]) => [
    name,
    z.toJSONSchema(schema, { target: "draft-2020-12" }),
  ]);
  return Object.fromEntries(schemas);
}
