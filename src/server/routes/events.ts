import { z } from "zod";
import { findingSchema, record } from "../../documents/index.js";
import type { Finding } from "../../findings/index.js";
import { eventSchema, idSchema, type LogbookEvent, switchCautions } from "../../logbook/index.js";
import { nameOf } from "../access/caller.js";
import { logbookEventSchema } from "../base-document.js";
import type { App, Context } from "../context.js";
import { ApiError, errorSchema, issueSchema } from "../errors.js";
import { sortPosted } from "../posting.js";
import { listOf, wholeNumber } from "./query.js";

const storedSchema = record({
  sequence: z.int().meta({ description: "grows with every event kept" }),
  received: z.string().meta({ description: "ISO 8601, UTC: when the base took it" }),
  event: logbookEventSchema,
});

const pageSchema = record({
  events: z.array(storedSchema),
  more: z.boolean().meta({ description: "whether there are more in this direction" }),
});

const querySchema = record({
  after: wholeNumber(0, Number.MAX_SAFE_INTEGER)
    .exactOptional()
    .meta({ description: "sequence: the events kept after it, oldest first" }),
  before: wholeNumber(0, Number.MAX_SAFE_INTEGER)
    .exactOptional()
    .meta({ description: "sequence: the events kept before it, newest first; left out, from the newest on" }),
  aircraft: idSchema.exactOptional().meta({ description: "only with newest first" }),
  kinds: listOf(z.enum(eventSchema.options.map((option) => option.shape.kind.value)))
    .exactOptional()
    .meta({ description: "kinds, with commas between them; only with newest first" }),
  limit: wholeNumber(1, 1000).default(200),
});

/** The logbook: pages of it, and events from clients. */
export function eventRoutes(app: App, { store, live, limits, metrics }: Context): void {
  app.get(
    "/api/v1/events",
    {
      schema: {
        summary: "Events: after a sequence (to stay in step), or pages from the newest back",
        querystring: querySchema,
        response: { 200: pageSchema, "4xx": errorSchema },
      },
    },
    async ({ query }) => {
      const { after, before, aircraft, kinds, limit } = query;
      if (after !== undefined && (before !== undefined || aircraft !== undefined || kinds !== undefined)) {
        throw new ApiError("invalid", "after goes with limit alone.", [
          { path: "after", expected: "no before, aircraft or kinds beside it", received: String(after) },
        ]);
      }
      const found =
        after !== undefined
          ? await store.eventsAfter(after, limit + 1)
          : await store.eventsBefore({
              limit: limit + 1,
              ...(before === undefined ? {} : { before }),
              ...(aircraft === undefined ? {} : { aircraft }),
              ...(kinds === undefined ? {} : { kinds }),
            });
      return { events: found.slice(0, limit), more: found.length > limit };
    },
  );

  app.post(
    "/api/v1/events",
    {
      bodyLimit: limits.batchBytes,
      schema: {
        summary: "Write events into the logbook; sending the same again is harmless",
        description:
          "Each event is judged by itself. `by` is set here to the name you signed in with. Kinds that the keeper writes (plans, switchings, faults) are refused; `set-up` is the owner's.",
        body: record({
          events: z
            .array(z.unknown().meta({ $ref: "#/components/schemas/LogbookEventInput" }))
            .min(1)
            .max(limits.eventsPerBatch),
        }),
        response: {
          200: record({
            kept: z.array(record({ id: z.string(), sequence: z.int() })),
            known: z.array(z.string()).meta({ description: "ids that were there already, the same" }),
            conflicting: z.array(z.string()).meta({
              description: "ids that were there already with other content; nothing was changed",
            }),
            refused: z.array(
              record({
                index: z.int().meta({ description: "place in the batch, from 0" }),
                id: z.string().nullable(),
                issues: z.array(issueSchema),
              }),
            ),
            cautions: z
              .array(record({ id: z.string(), path: z.string(), caution: findingSchema }))
              .meta({ description: "what to know of the switches of a set-up that was taken" }),
          }),
          "4xx": errorSchema,
        },
      },
    },
    async ({ body, caller }) => {
      if (caller.by === "nobody") throw new ApiError("not-signed-in", "Sign in first.");
      const { events, refused } = await sortPosted(
        body.events,
        { name: nameOf(caller), role: caller.role },
        store,
      );
      const result = events.length > 0 ? await live.record(events) : { kept: [], known: [], conflicting: [] };
      metrics.events.inc({ outcome: "kept" }, result.kept.length);
      metrics.events.inc({ outcome: "known" }, result.known.length);
      metrics.events.inc({ outcome: "conflicting" }, result.conflicting.length);
      metrics.events.inc({ outcome: "refused" }, refused.length);
      return {
        kept: result.kept.map(({ event, sequence }) => ({ id: event.id, sequence })),
        known: [...result.known],
        conflicting: [...result.conflicting],
        refused: refused.map((each) => ({ ...each, issues: [...each.issues] })),
        cautions: result.kept.flatMap(({ event }) => cautionsFor(event)),
      };
    },
  );
}

function cautionsFor(event: LogbookEvent): { id: string; path: string; caution: Finding }[] {
  const said = event.kind === "correction" ? event.instead : event;
  if (said?.kind !== "set-up") return [];
  const at = event.kind === "correction" ? "instead.base" : "base";
  return switchCautions(said.base).map(({ path, caution }) => ({
    id: event.id,
    path: `${at}.${path}`,
    caution,
  }));
}
