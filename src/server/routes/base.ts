import { z } from "zod";
import { nowSchema, planSchema, record } from "../../documents/index.js";
import { eventIdSchema, idSchema } from "../../logbook/index.js";
import { english } from "../../words/index.js";
import { nameOf } from "../access/caller.js";
import { baseDocument, baseSchema } from "../base-document.js";
import type { App, Context } from "../context.js";
import { ApiError, errorSchema } from "../errors.js";
import type { HandOutcome } from "../live.js";

const planOf = planSchema.meta({ ...planSchema.meta(), id: "Plan" });
const nowOf = nowSchema.meta({ ...nowSchema.meta(), id: "Now" });

/** What stands, what is planned, what is now; and the two things a person does to the keeper at once. */
export function baseRoutes(app: App, { store, live, clock }: Context): void {
  app.get(
    "/api/v1/base",
    { schema: { summary: "The base as it stands", response: { 200: baseSchema, "4xx": errorSchema } } },
    async () => baseDocument(live.state(), await store.latestReadings(), live.health(), clock()),
  );

  app.get(
    "/api/v1/plans",
    {
      schema: {
        summary: "The newest plan of each aircraft with a departure wanted",
        response: {
          200: record({
            plans: z.array(
              record({
                aircraft: z.string(),
                departure: z.string().meta({ description: "id of the departure-wanted event it answers" }),
                plan: planOf,
              }),
            ),
          }),
          "4xx": errorSchema,
        },
      },
    },
    async () => ({
      plans: [...live.plans()].map(([aircraft, { departure, document }]) => ({
        aircraft,
        departure,
        plan: document,
      })),
    }),
  );

  app.get(
    "/api/v1/now",
    {
      schema: {
        summary: "The estimate of every part of each aircraft now",
        response: {
          200: record({ estimates: z.array(record({ aircraft: z.string(), now: nowOf })) }),
          "4xx": errorSchema,
        },
      },
    },
    async () => ({ estimates: [...live.now()].map(([aircraft, now]) => ({ aircraft, now })) }),
  );

  app.post(
    "/api/v1/switches/:aircraft/:id",
    {
      schema: {
        summary: "Switch a heater by hand",
        description:
          "Before switching on: somebody has looked at heater, leads and covers, nobody works at the aircraft, nothing that burns is near. The keeper's limits hold all the same: longest on-time, rest, over-temperature. Switching off is always taken.",
        params: record({ aircraft: idSchema, id: idSchema }),
        body: z.discriminatedUnion("to", [
          record({
            to: z.literal("on"),
            minutes: z.int().min(1).max(1440).meta({ description: "until it goes off again" }),
          }),
          record({ to: z.literal("off") }),
        ]),
        response: { 202: record({ status: z.literal("commanded") }), "4xx": errorSchema },
      },
    },
    async ({ params, body, caller, log }, reply) => {
      const order = { aircraft: params.aircraft, switch: params.id, by: nameOf(caller) };
      const outcome = await live.switchByHand({ ...order, ...body });
      log.info({ ...order, ...body, outcome: outcome.status }, "switched by hand");
      requireDone(outcome, "There is no such switch.");
      return reply.code(202).send({ status: "commanded" });
    },
  );

  app.post(
    "/api/v1/faults/:id/acknowledge",
    {
      schema: {
        summary: "Say that a fault was seen and dealt with",
        params: record({ id: eventIdSchema }),
        response: { 200: record({ status: z.literal("cleared") }), "4xx": errorSchema },
      },
    },
    async ({ params, caller }) => {
      requireDone(await live.acknowledge(params.id, nameOf(caller)), "There is no such fault open.");
      return { status: "cleared" as const };
    },
  );
}

function requireDone(outcome: HandOutcome, unknown: string): void {
  if (outcome.status === "unknown") throw new ApiError("unknown", unknown);
  if (outcome.status === "refused") throw new ApiError("conflict", sentence(english(outcome.reason)));
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1).replace(/\.$/, "")}.`;
}
