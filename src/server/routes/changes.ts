import type { FastifyReply } from "fastify";
import { z } from "zod";
import { callerOf } from "../access/caller.js";
import type { App, Context } from "../context.js";
import { errorSchema } from "../errors.js";

const DESCRIPTION = `Server-sent events. \`logbook\` carries the highest sequence kept ({"sequence": 12}, also as its id):
fetch what you lack with GET /api/v1/events?after=. \`plan\` and \`now\` name the aircraft whose plan or estimate is new
({"aircraft": "lynx"}). A comment comes as a sign of life. With Last-Event-ID, \`logbook\` comes at once when something was missed.`;

/** Tells clients what changed; what it is, they fetch. */
export function changeRoutes(app: App, context: Context): void {
  const { store, streams, sessions, cookieName } = context;
  app.get(
    "/api/v1/changes",
    {
      schema: {
        summary: "A stream of what changes",
        description: DESCRIPTION,
        headers: z.looseObject({
          "last-event-id": z
            .string()
            .regex(/^\d{1,16}$/, "a sequence")
            .exactOptional(),
        }),
        response: { 200: { content: { "text/event-stream": { schema: z.string() } } }, "4xx": errorSchema },
      },
    },
    async (request, reply) => {
      const { caller, headers } = request;
      const [newest] = await store.eventsBefore({ limit: 1 });
      const seen = headers["last-event-id"];
      const stream = streams.open({
        address: request.ip,
        sequence: newest?.sequence ?? 0,
        seen: seen === undefined ? undefined : Number(seen),
        async stillAllowed() {
          if (caller.by === "session")
            return (await sessions.find(caller.token, false))?.role === caller.role;
          return (await callerOf(request, { store, sessions, cookieName })).by === caller.by;
        },
      });
      return (reply as FastifyReply)
        .type("text/event-stream; charset=utf-8")
        .header("cache-control", "no-store")
        .header("x-accel-buffering", "no")
        .send(stream);
    },
  );
}
