import { isDeepStrictEqual } from "node:util";
import swagger from "@fastify/swagger";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import { REQUEST_HEADER } from "./access/guard.js";
import { ruleOf } from "./access/rules.js";
import type { App } from "./context.js";

const DESCRIPTION = `The API of a Soakline base. Times are ISO 8601; keys carry their units.
The aircraft's handbook, the engine maker's instructions, local fire and electrical code and licensed people decide:
numbers here are calculated, nobody has looked at the aircraft.`;

/** Describes every route from the schemas it checks by, and from the table of who may. */
export async function describe(app: App): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: { title: "Soakline base", version: "1", description: DESCRIPTION },
      components: {
        securitySchemes: {
          session: {
            type: "apiKey",
            in: "cookie",
            name: "soakline_session",
            description: `Signed in. Everything but GET also needs the header ${REQUEST_HEADER} (any value) and, from a browser, comes from the base's own page. Over TLS the cookie's name begins with __Host-.`,
          },
          device: { type: "http", scheme: "bearer", description: "A device token." },
        },
      },
    },
    transform: (route) => {
      const { schema, url } = jsonSchemaTransform(route);
      return { schema: { ...schema, security: securityOf([route.route.method].flat()[0] ?? "", url) }, url };
    },
    transformObject: (document) => withoutTwins(jsonSchemaTransformObject(document) as Described),
  });
}

interface Described {
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> };
}

/**
 * The library describes every component twice, as it comes in and as it goes out. Here nothing changes on its way: one
 * does, and the document is half as long.
 */
function withoutTwins(document: Described): object {
  const { schemas } = document.components;
  const isTwin = (name: string) =>
    isDeepStrictEqual(named(schemas[name]), schemas[name.slice(0, -TWIN.length)]);
  const twins = Object.keys(schemas).filter((name) => name.endsWith(TWIN));
  if (!twins.every(isTwin)) return document;
  const kept = Object.fromEntries(Object.entries(schemas).filter(([name]) => !twins.includes(name)));
  return named({ ...document, components: { ...document.components, schemas: kept } }) as object;
}

const TWIN = "Input";

/** With every reference to a component as it comes in turned to the one as it goes out. */
function named(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value).replace(/("#\/components\/schemas\/\w+?)Input"/g, '$1"'));
}

function securityOf(method: string, url: string): Record<string, string[]>[] {
  const rule = ruleOf(method, url);
  if (rule === undefined || rule.who === "anyone") return [];
  const people = rule.who.filter((role) => role !== "device");
  // OpenAPI 3.1 lets roles stand here for schemes without scopes of their own.
  return [{ session: [...people] }, ...(rule.who.includes("device") ? [{ device: [] }] : [])];
}
