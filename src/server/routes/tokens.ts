import { randomUUID } from "node:crypto";
import { z } from "zod";
import { record } from "../../documents/index.js";
import { nameOf } from "../access/caller.js";
import { newToken, tokenHash } from "../access/secrets.js";
import { utc } from "../base-document.js";
import type { App, Context } from "../context.js";
import { ApiError, errorSchema } from "../errors.js";

const kinds = z.enum(["device", "calendar"]).meta({
  description: "device: brings readings and reads metrics; calendar: opens the calendar and nothing else",
});
const tokenSchema = record({ id: z.string(), name: z.string(), kind: kinds, created: z.iso.datetime() });

/** A calendar token is kept with the role of a viewer; see `tokenRow`. */
const ROLE = { device: "device", calendar: "viewer" } as const;

/** Keys for devices and calendars: shown once, kept as a hash, taken back at any time. */
export function tokenRoutes(app: App, { store, clock }: Context): void {
  app.get(
    "/api/v1/tokens",
    {
      schema: {
        summary: "Tokens of devices and calendars",
        response: { 200: record({ tokens: z.array(tokenSchema) }), "4xx": errorSchema },
      },
    },
    async () => ({
      tokens: (await store.deviceTokens()).map(({ id, name, role, created }) => ({
        id,
        name,
        kind: role === "device" ? ("device" as const) : ("calendar" as const),
        created: utc(created),
      })),
    }),
  );

  app.post(
    "/api/v1/tokens",
    {
      schema: {
        summary: "Make a token; the answer is the only time it is shown",
        body: record({ name: z.string().regex(/^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,63}$/u), kind: kinds }),
        response: { 201: record({ ...tokenSchema.shape, token: z.string() }), "4xx": errorSchema },
      },
    },
    async (request, reply) => {
      const { name, kind } = request.body;
      const token = newToken();
      const row = { id: randomUUID(), name, role: ROLE[kind], created: clock() };
      await store.saveDeviceToken({ ...row, tokenHash: tokenHash(token) });
      request.log.info({ tokenId: row.id, kind, by: nameOf(request.caller) }, "token made");
      return reply.code(201).send({ id: row.id, name, kind, created: utc(row.created), token });
    },
  );

  app.delete(
    "/api/v1/tokens/:id",
    {
      schema: {
        summary: "Take a token back",
        params: record({ id: z.string().min(1).max(100) }),
        response: { 204: z.null().meta({ description: "done" }), "4xx": errorSchema },
      },
    },
    async (request, reply) => {
      const { id } = request.params;
      if (!(await store.deviceTokens()).some((row) => row.id === id))
        throw new ApiError("unknown", "There is no such token.");
      await store.removeDeviceToken(id);
      request.log.info({ tokenId: id, by: nameOf(request.caller) }, "token taken back");
      return reply.code(204).send(null);
    },
  );
}
