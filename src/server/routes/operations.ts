import type { Registry } from "prom-client";
import { z } from "zod";
import { record } from "../../documents/index.js";
import type { App, Context } from "../context.js";

/** [ms] an answer of readiness holds: asking does not wear the disk. */
const HOLDS = 1000;

/** For whoever watches over the process. */
export function operationRoutes(app: App, { store, live, clock }: Context, registry: Registry): void {
  app.get(
    "/healthz",
    {
      schema: {
        summary: "Whether the process answers",
        response: { 200: record({ status: z.literal("up") }) },
      },
    },
    async () => ({ status: "up" as const }),
  );

  const readiness = record({ ready: z.boolean(), store: z.boolean(), keeper: z.boolean() });
  let last: { at: number; store: Promise<boolean> } | undefined;
  app.get(
    "/readyz",
    {
      schema: {
        summary: "Whether the store can be written and the keeper runs",
        response: { 200: readiness, 503: readiness },
      },
    },
    async (request, reply) => {
      const now = clock();
      if (last === undefined || Math.abs(now - last.at) >= HOLDS) {
        const checked = store.check().then(
          () => true,
          (error: unknown) => {
            request.log.error({ err: error }, "the store cannot be written");
            return false;
          },
        );
        last = { at: now, store: checked };
      }
      const writable = await last.store;
      const keeper = live.health().ready;
      const ready = writable && keeper;
      return reply.code(ready ? 200 : 503).send({ ready, store: writable, keeper });
    },
  );

  app.get(
    "/metrics",
    {
      schema: {
        summary: "Prometheus text",
        response: { 200: { content: { "text/plain": { schema: z.string() } } } },
      },
    },
    async (_, reply) =>
      reply
        .type(registry.contentType)
        .serializer(String)
        .send(await registry.metrics()),
  );

  app.get("/api/openapi.json", { schema: { hide: true } }, async (_, reply) =>
    reply.type("application/json; charset=utf-8").send(app.swagger()),
  );
}
