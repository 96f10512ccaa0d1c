// Writes the JSON Schema of every document to docs/schema. Run it after a change of a document: npm run build && node scripts/write-schemas.mjs
import { jsonSchemas } from "../dist/index.js";
import { logbookSchemas } from "../dist/logbook/index.js";
import { writeTextFile } from "../dist/node/index.js";

for (const [name, schema] of Object.entries({ ...jsonSchemas(), ...logbookSchemas() })) {
  writeTextFile(`docs/schema/${name}.schema.json`, `${JSON.stringify(schema, undefined, 2)}\n`);
}
