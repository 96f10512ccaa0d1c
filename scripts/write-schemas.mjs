// Writes the JSON Schema of every document to docs/schema. Run it after a change of a document: npm run build && node scripts/write-schemas.mjs
import { z } from "zod";
import { jsonSchemas } from "../dist/index.js";
import { baseSetUpSchema, eventSchema } from "../dist/logbook/index.js";
import { writeTextFile } from "../dist/node/index.js";

const options = { target: "draft-2020-12", reused: "ref" };
const schemas = {
  ...jsonSchemas(),
  "base-set-up": z.toJSONSchema(baseSetUpSchema, options),
  event: z.toJSONSchema(eventSchema, options),
};
for (const [name, schema] of Object.entries(schemas)) {
  writeTextFile(`docs/schema/${name}.schema.json`, `${JSON.stringify(schema, undefined, 2)}\n`);
}
