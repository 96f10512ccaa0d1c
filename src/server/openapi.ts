import swagger from "@fastify/swagger";
import { jsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import { REQUEST_HEADER } from "./access/guard.js";
import type { App } from "./context.js";

const DESCRIPTION = `The API of a Soakline base. Times are ISO 8601; keys carry their units.
The aircraft's handbook, the engine maker's instructions, local fire and electrical code and licensed people decide:
numbers here are calculated, nobody has looked at the aircraft.`;

/** Describes every route from the schemas it checks by. */
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
            description: `Signed in. Everything but GET also needs the header ${REQUEST_HEADER} and comes from the base's own page. Over TLS the name begins with __Host-.`,
          },
          device: { type: "http", scheme: "bearer", description: "A device token." },
        },
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  });
}
