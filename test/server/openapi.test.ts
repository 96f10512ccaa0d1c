import { readFileSync, writeFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { RULES } from "../../src/server/access/rules.js";
import { openBase } from "./base.js";

const FILE = "docs/schema/openapi.json";

interface Operation {
  readonly summary?: string;
  readonly security?: Record<string, string[]>[];
  readonly responses: Record<string, { content?: Record<string, { schema: unknown }> }>;
}

let document: {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, Operation>>;
  readonly components: { readonly schemas: Record<string, object> };
};

beforeAll(async () => {
  const base = await openBase();
  const answer = await base.ask({ url: "/api/openapi.json" });
  document = answer.body;
  if (process.env.WRITE_OPENAPI === "1") writeFileSync(FILE, `${JSON.stringify(document, undefined, 1)}\n`);
});

describe("the OpenAPI document", () => {
  test("in docs is the one served (WRITE_OPENAPI=1 npx vitest run test/server/openapi.test.ts)", () => {
    expect(JSON.parse(readFileSync(FILE, "utf8"))).toEqual(document);
  });

  test("names every route of the table, with a summary and its failures", () => {
    const described = Object.entries(document.paths).flatMap(([path, operations]) =>
      Object.keys(operations).map((method) => `${method.toUpperCase()} ${path.replace(/\{(\w+)\}/g, ":$1")}`),
    );
    const rules = Object.keys(RULES).filter((route) => !/ \/\*$|server\.json|openapi/.test(route));
    expect(described.sort()).toEqual(rules.sort());
    for (const operation of Object.values(document.paths).flatMap((each) => Object.values(each))) {
      expect(operation.summary).toMatch(/^[A-Z]/);
      expect(Object.keys(operation.responses).some((status) => status.startsWith("2"))).toBe(true);
    }
  });

  test("says who may", () => {
    expect(document.paths["/api/v1/readings"]!.post!.security).toEqual([
      { session: ["owner", "pilot"] },
      { device: [] },
    ]);
    expect(document.paths["/healthz"]!.get!.security).toEqual([]);
  });

  test("is OpenAPI 3.1 whose every reference leads somewhere", () => {
    expect(document.openapi).toBe("3.1.0");
    const references = [...JSON.stringify(document).matchAll(/"\$ref":"([^"]+)"/g)].map(([, to]) => to!);
    expect(references.length).toBeGreaterThan(5);
    for (const reference of references) {
      expect(reference).toMatch(/^#\/components\/schemas\/\w+$/);
      expect(Object.keys(document.components.schemas)).toContain(reference.split("/").at(-1));
    }
  });
});
