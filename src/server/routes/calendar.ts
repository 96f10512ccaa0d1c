import { z } from "zod";
import { record } from "../../documents/index.js";
import { tokenRow } from "../access/caller.js";
import { calendarText, type Written } from "../calendar.js";
import type { App, Context } from "../context.js";
import { ApiError, errorSchema } from "../errors.js";

/** The calendar to subscribe to. */
export function calendarRoutes(app: App, { store, live, clock }: Context): void {
  app.get(
    "/api/v1/calendar.ics",
    {
      schema: {
        summary: "Plug-in, unplug and departure times as a calendar (RFC 5545)",
        querystring: record({ token: z.string().min(1).max(100).meta({ description: "a calendar token" }) }),
        response: { 200: { content: { "text/calendar": { schema: z.string() } } }, "4xx": errorSchema },
      },
    },
    async ({ query }, reply) => {
      if ((await tokenRow(store, query.token, "viewer")) === undefined) {
        throw new ApiError("not-signed-in", "This is no calendar token, or it was taken back.");
      }
      const state = live.state();
      const written = new Map<string, Written>();
      for (const { departures, plan } of state?.aircraft.values() ?? []) {
        for (const id of [...departures.map((each) => each.id), ...(plan === undefined ? [] : [plan.id])]) {
          const stored = await store.event(id);
          if (stored !== undefined) {
            written.set(id, { sequence: stored.sequence, received: Date.parse(stored.received) });
          }
        }
      }
      return reply
        .type("text/calendar; charset=utf-8")
        .header("content-disposition", 'inline; filename="soakline.ics"')
        .serializer(String)
        .send(calendarText(state, (id) => written.get(id), clock()));
    },
  );
}
