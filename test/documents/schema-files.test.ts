import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { z } from "zod";
import { jsonSchemas } from "../../src/documents/index.js";
import { baseSetUpSchema, eventSchema } from "../../src/logbook/index.js";

const FOLDER = "docs/schema";
const OPTIONS = { target: "draft-2020-12", reused: "ref" } as const;
const SCHEMAS = {
  ...jsonSchemas(),
  "base-set-up": z.toJSONSchema(baseSetUpSchema, OPTIONS),
  event: z.toJSONSchema(eventSchema, OPTIONS),
};

test("the schemas in docs are those of the program (npm run build && node scripts/write-schemas.mjs)", () => {
  const files = readdirSync(FOLDER).filter((file) => file.endsWith(".schema.json"));
  const written = Object.fromEntries(
    files.map((file) => [
      file.replace(".schema.json", ""),
      JSON.parse(readFileSync(`${FOLDER}/${file}`, "utf8")),
    ]),
  );
  expect(written).toEqual(SCHEMAS);
});

test("every object of every schema refuses unknown keys, so that a misspelt one is noticed", () => {
  const open: string[] = [];
  const walk = (value: unknown, path: string) => {
    if (typeof value !== "object" || value === null) return;
    if ("properties" in value && "additionalProperties" in value === false) open.push(path);
    for (const [key, entry] of Object.entries(value)) walk(entry, `${path}/${key}`);
  };
  walk(SCHEMAS, "");
  expect(open).toEqual([]);
});
