import { Readable } from "node:stream";
import type { FastifyReply } from "fastify";
import { z } from "zod";
import { eventsToCsv, LOGBOOK_VERSION, type StoredEvent } from "../../logbook/index.js";
import type { Store } from "../../store/index.js";
import { utc } from "../base-document.js";
import type { App, Context } from "../context.js";
import { errorSchema } from "../errors.js";

/** The whole logbook, to keep elsewhere or to look at in a spreadsheet. Sent piece by piece: it may be years long. */
export function exportRoutes(app: App, { store, clock }: Context): void {
  const fileName = (kind: string) => `attachment; filename="logbook-${utc(clock()).slice(0, 10)}.${kind}"`;

  app.get(
    "/api/v1/export.json",
    {
      schema: {
        summary: "The logbook as a document that can be read in again",
        response: { 200: { content: { "application/json": { schema: z.unknown() } } }, "4xx": errorSchema },
      },
    },
    async (_, reply: FastifyReply) =>
      reply
        .type("application/json; charset=utf-8")
        .header("content-disposition", fileName("json"))
        .send(Readable.from(jsonPieces(store))),
  );

  app.get(
    "/api/v1/export.csv",
    {
      schema: {
        summary: "The logbook as a table",
        response: { 200: { content: { "text/csv": { schema: z.string() } } }, "4xx": errorSchema },
      },
    },
    async (_, reply: FastifyReply) =>
      reply
        .type("text/csv; charset=utf-8; header=present")
        .header("content-disposition", fileName("csv"))
        .send(Readable.from(csvPieces(store))),
  );
}

const PAGE = 500;

async function* pages(store: Pick<Store, "eventsAfter">): AsyncGenerator<readonly StoredEvent[]> {
  for (let after = 0; ; ) {
    const page = await store.eventsAfter(after, PAGE);
    const last = page.at(-1);
    if (last === undefined) return;
    yield page;
    after = last.sequence;
  }
}

async function* jsonPieces(store: Store): AsyncGenerator<string> {
  yield `{"soakline_logbook":${LOGBOOK_VERSION},"events":[`;
  let between = "\n";
  for await (const page of pages(store)) {
    yield between + page.map(({ event }) => JSON.stringify(event)).join(",\n");
    between = ",\n";
  }
  yield "\n]}\n";
}

async function* csvPieces(store: Store): AsyncGenerator<string> {
  const header = eventsToCsv([]);
  yield header;
  for await (const page of pages(store))
    yield eventsToCsv(page.map(({ event }) => event)).slice(header.length);
}
