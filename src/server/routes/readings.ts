import { z } from "zod";
import { type DocumentIssue, issueAt, record } from "../../documents/index.js";

import { type BaseState, idSchema, type ProbeReading } from "../../logbook/index.js";
import type { ReadingsRow } from "../../store/index.js";
import { utc } from "../base-document.js";
import type { App, Context } from "../context.js";
import { ApiError, errorSchema, issueSchema } from "../errors.js";
import { listOf, moment, wholeNumber } from "./query.js";

const MOST_ROWS = 20_000;

const querySchema = record({
  aircraft: idSchema.meta({ description: "id, or base for the base's own probes" }),
  probes: listOf(idSchema)
    .exactOptional()
    .meta({ description: "ids, with commas between them; all where left out" }),
  from: moment,
  to: moment.meta({ description: "not included" }),
  resolution: z.enum(["raw", "minute", "ten-minutes", "hour"]).default("ten-minutes"),
  limit: wholeNumber(1, MOST_ROWS).default(5000),
});

const rowSchema = record({
  probe: z.string(),
  at: z.iso.datetime().meta({ description: "start of the step" }),
  low_c: z.number(),
  mean_c: z.number(),
  high_c: z.number(),
  count: z.int().meta({ description: "readings in the step" }),
});

const COLUMNS = ["probe", "at", "low_c", "mean_c", "high_c", "count"] as const;

const postedSchema = record({
  aircraft: idSchema,
  probe: idSchema,
  at: z.iso.datetime({ offset: true }),
  temp_c: z.number().min(-90).max(400),
});

/** What probes measured: looked up, and brought in by devices. */
export function readingRoutes(app: App, context: Context): void {
  lookUpRoutes(app, context);
  bringRoute(app, context);
}

function lookUpRoutes(app: App, { store }: Context): void {
  async function found(
    query: z.output<typeof querySchema>,
  ): Promise<{ rows: readonly ReadingsRow[]; more: boolean }> {
    const { aircraft, probes, from, to, resolution, limit } = query;
    if (!(from < to))
      throw new ApiError("invalid", "The query is not as expected.", [
        issueAt(["to"], "a time after from", utc(to)),
      ]);
    const rows = await store.readings({
      aircraft,
      from,
      to,
      resolution,
      limit: limit + 1,
      ...(probes === undefined ? {} : { probes }),
    });
    return { rows: rows.slice(0, limit), more: rows.length > limit };
  }

  app.get(
    "/api/v1/readings",
    {
      schema: {
        summary: "Readings of probes, oldest first",
        querystring: querySchema,
        response: { 200: record({ rows: z.array(rowSchema), more: z.boolean() }), "4xx": errorSchema },
      },
    },
    async ({ query }) => {
      const { rows, more } = await found(query);
      return { rows: rows.map(documentOf), more };
    },
  );

  app.get(
    "/api/v1/readings.csv",
    {
      schema: {
        summary: "The same as CSV",
        querystring: querySchema,
        response: { 200: { content: { "text/csv": { schema: z.string() } } }, "4xx": errorSchema },
      },
    },
    async ({ query }, reply) => {
      const { rows, more } = await found(query);
      // A table cannot say that it is cut short; an answer that looks whole must be whole.
      if (more) {
        throw new ApiError(
          "too-large",
          "There are more rows than the limit: ask for a shorter time or a coarser resolution.",
        );
      }
      const lines = rows.map((row) => {
        const values = documentOf(row);
        return COLUMNS.map((column) => values[column]).join(",");
      });
      return reply
        .type("text/csv; charset=utf-8; header=present")
        .header("content-disposition", 'attachment; filename="readings.csv"')
        .serializer(String)
        .send(`${[COLUMNS.join(","), ...lines].join("\r\n")}\r\n`);
    },
  );
}

function bringRoute(app: App, { live, clock, limits, metrics }: Context): void {
  app.post(
    "/api/v1/readings",
    {
      bodyLimit: limits.batchBytes,
      config: { rateLimit: { max: limits.deviceRequestsPerMinute } },
      schema: {
        summary: "Bring readings; the same again is harmless",
        body: record({ readings: z.array(postedSchema).min(1).max(limits.readingsPerBatch) }),
        response: {
          200: record({
            kept: z.int(),
            known: z.int(),
            too_old: z.int().meta({ description: "of a time whose raw readings were dropped; not kept" }),
            refused: z.array(record({ index: z.int(), issues: z.array(issueSchema) })),
          }),
          "4xx": errorSchema,
        },
      },
    },
    async ({ body }) => {
      const state = live.state();
      const latest = clock() + limits.aheadS * 1000;
      const good: ProbeReading[] = [];
      const refused: { index: number; issues: DocumentIssue[] }[] = [];
      for (const [index, { aircraft, probe, at, temp_c }] of body.readings.entries()) {
        const reading = { aircraft, probe, time: Date.parse(at), tempC: temp_c };
        const issues = issuesOf(reading, state, latest);
        if (issues.length > 0) refused.push({ index, issues });
        else good.push(reading);
      }
      const { kept, known, tooOld = 0 } = good.length > 0 ? await live.ingest(good) : { kept: 0, known: 0 };
      metrics.readings.inc({ outcome: "kept" }, kept);
      metrics.readings.inc({ outcome: "known" }, known);
      metrics.readings.inc({ outcome: "too-old" }, tooOld);
      metrics.readings.inc({ outcome: "refused" }, refused.length);
      return { kept, known, too_old: tooOld, refused };
    },
  );
}

function documentOf({ probe, time, low, mean, high, count }: ReadingsRow) {
  return { probe, at: utc(time), low_c: low, mean_c: mean, high_c: high, count };
}

/** Only probes of the set-up; and none from ahead, which would stand as the newest and hide a probe gone silent. */
function issuesOf(reading: ProbeReading, state: BaseState | undefined, latest: number): DocumentIssue[] {
  const { aircraft, probe, time } = reading;
  const probes = aircraft === "base" ? state?.setUp.probes : state?.aircraft.get(aircraft)?.setUp.probes;
  if (probes === undefined) return [issueAt(["aircraft"], "an aircraft of the base, or base", aircraft)];
  const known = probes.map(({ id }) => id);
  if (!known.includes(probe)) return [issueAt(["probe"], `one of ${known.join(", ") || "none"}`, probe)];
  if (time > latest) return [issueAt(["at"], "a time that is not ahead of the base's clock", utc(time))];
  return [];
}
