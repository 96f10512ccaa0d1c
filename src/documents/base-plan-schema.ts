import { z } from "zod";
import { heaterSchema } from "./description-schema.js";
import { SCENARIO_VERSION } from "./migrations.js";
import { record } from "./record.js";
import { stampSchema } from "./result-schema.js";
import { caution, finding } from "./said.js";
import { scenarioSchema } from "./scenario-schema.js";

// One plan for a whole base: what is asked, and what is answered.

const words = z.string().min(1);
const moment = words.meta({
  description: "ISO 8601 with offset, such as 2026-01-14T18:00+01:00, or local time in the document's zone",
});
const { shape } = scenarioSchema;

const circuit = record({
  id: words,
  name: words.exactOptional(),
  limit_a: z.number().positive().max(1000).meta({ description: "its breaker, or what its generator gives" }),
  voltage_v: z.number().min(10).max(480),
  outlets: z.int().min(1).max(200),
  continuous_share: z.number().min(0.1).max(1).exactOptional().meta({
    description:
      "share of limit_a that may be planned; 0.8 where left out, as for loads of three hours and more",
  }),
  generator: z
    .boolean()
    .exactOptional()
    .meta({ description: "somebody must be there to plug in, even through a switch" }),
  available: z
    .array(record({ from: moment, to: moment }))
    .exactOptional()
    .meta({ description: "when it may run; always, where left out" }),
});

/** A scenario whose start, hours, weather and the like may be the base's. */
const scenario = scenarioSchema.partial({
  soakline: true,
  start: true,
  hours: true,
  weather: true,
});

/** What people were told: the answer's `told` of the plan before. */
const told = record({
  id: words,
  circuit: words.nullable(),
  cart: words.nullable(),
  heat: z.array(record({ from: moment, to: moment })),
  hangar: record({ in: moment.nullable(), out: moment }).nullable(),
});

const aircraft = record({
  id: words,
  scenario: z.union([words, scenario]).meta({
    description:
      "a scenario document or the name of its file; what it shares with the base may be left out and must not differ",
  }),
  circuits: z
    .array(words)
    .min(1)
    .exactOptional()
    .meta({ description: "ids of the circuits its lead reaches; all, where left out" }),
  switching: z.enum(["hand", "timer", "network", "phone"]).meta({
    description: "hand: somebody plugs in and out; else heat comes and goes with nobody there",
  }),
  connected: words.exactOptional().meta({ description: "circuit its plug is in at the start" }),
});

/** What `base` is asked. */
export const baseSchema = record({
  soakline: z.literal(SCENARIO_VERSION),
  kind: z.literal("base"),
  name: words,
  note: words.exactOptional(),
  start: shape.start,
  zone: shape.zone,
  hours: shape.hours,
  weather: shape.weather,
  site: shape.site,
  ensemble: shape.ensemble,
  hangar: record({
    air_c: z.number().min(-60).max(40),
    bays: z.int().min(1).max(100).meta({ description: "one aircraft in each at a time" }),
    move_min: z.number().min(0).max(240).meta({ description: "to move one aircraft in or out" }),
    move_people: z.int().min(1).max(20).exactOptional().meta({ description: "1 where left out" }),
  }).exactOptional(),
  circuits: z.array(circuit).max(100),
  carts: z
    .array(
      record({
        id: words,
        heater: z.union([words, heaterSchema]),
        move_min: z
          .number()
          .min(0)
          .max(240)
          .exactOptional()
          .meta({ description: "from one aircraft to the next; 10 where left out" }),
        aircraft: z
          .array(words)
          .exactOptional()
          .meta({ description: "ids of those it may heat; all it fits, where left out" }),
      }),
    )
    .exactOptional()
    .meta({ description: "heaters that go from aircraft to aircraft" }),
  people: z
    .array(record({ from: moment, to: moment, count: z.int().min(1).max(100) }))
    .exactOptional()
    .meta({ description: "when somebody is there to plug in by hand; always, where left out" }),
  aircraft: z.array(aircraft).min(1).max(200),
  told: z
    .array(told)
    .exactOptional()
    .meta({ description: "what people were told by the plan before: changed only for good reason" }),
}).meta({
  title: "Soakline base plan request",
  description: "All aircraft of a base and what they share. Keys carry units.",
});

const chance = z.number().min(0).max(1);
const band = record({ p05: z.number(), p50: z.number(), p95: z.number() });
const block = record({ from: stampSchema, to: stampSchema });

const task = record({
  ...stampSchema.shape,
  do: z.enum(["plug_in", "unplug", "move_in", "move_out"]),
  aircraft: words,
  where: z.string().meta({ description: "name of the circuit, the cart or the hangar" }),
  by: z.enum(["base", "crew"]).meta({ description: "crew: whoever flies it, before departure" }),
});

const planned = record({
  id: words,
  name: words,
  status: z.enum(["ready", "missed"]),
  departure: stampSchema,
  wanted_chance: chance,
  chance,
  chance_error: z.number(),
  aim: z
    .enum(["least", "warm-through"])
    .meta({ description: "the line that it reaches; ready and missed are judged on the least" }),
  warm_chance: chance.meta({ description: "of being warm through" }),
  weakest: finding.meta({ description: "title of the weakest point, on the line of the least" }),
  weakest_chance: chance,
  warm_weakest: finding.meta({ description: "the same, warm through" }),
  cover_off: stampSchema,
  start_within_min: z.number().nullable().meta({
    description:
      "from covers off, with the wanted chance; up to half an hour after departure is looked at; null where missed",
  }),
  somebody_stays: z.boolean().meta({ description: "beside its heater, all the time it is on" }),
  too_hot: z.array(finding),
  plug_in: stampSchema.nullable().meta({ description: "when heat begins; null without heat" }),
  unplug: stampSchema.nullable(),
  heat: z.array(block).meta({ description: "when heat is on" }),
  heaters: z.array(z.string()),
  circuit: z.string().nullable(),
  cart: z.string().nullable(),
  connected: z.array(block).meta({ description: "when its plug is in an outlet" }),
  current_a: z.number(),
  hangar: record({ in: stampSchema.nullable(), out: stampSchema }).nullable(),
  energy_kwh: band,
  heater_h: z.number(),
  wet_h: z.number().meta({ description: "ranks courses, no more" }),
  explanation: z.array(finding).meta({ description: "why it is so, in words" }),
  cause: z.array(
    record({
      limit: z.enum(["current", "outlet", "bay", "cart", "people"]),
      where: z.string(),
      from: stampSchema,
      to: stampSchema,
      capacity: z.number(),
      wanted: z.number(),
      held_by: z.array(z.string()),
    }),
  ),
  alone: record({
    plug_in: stampSchema.nullable(),
    unplug: stampSchema.nullable(),
    hangar: record({ in: stampSchema.nullable(), out: stampSchema }).nullable(),
    chance: chance.meta({ description: "read between courses played, over fewer cases" }),
  }).meta({ description: "what it would do with the base to itself" }),
  told,
});

const load = record({
  id: words,
  name: words,
  breaker_a: z.number(),
  limit_a: z.number().meta({ description: "what may be planned" }),
  outlets: z.int(),
  generator: z.boolean(),
  time_h: z.array(z.number()).meta({ description: "from when on each value holds" }),
  load_a: z.array(z.number()),
  outlets_used: z.array(z.number()),
  most_a: z.number(),
});

/** What `base` answers. */
export const basePlanSchema = record({
  soakline: z.literal(SCENARIO_VERSION),
  kind: z.literal("base-plan"),
  name: z.string(),
  start: stampSchema,
  zone: z.string(),
  hours: z.number(),
  members: z.int(),
  status: z.enum(["all-ready", "missed"]),
  message: finding.nullable(),
  joint_chance: chance.meta({ description: "that all are ready together: they share one weather" }),
  aircraft: z.array(planned),
  circuits: z.array(load),
  tasks: z.array(task).meta({ description: "what people do, in order" }),
  lifts: z
    .array(
      record({
        text: finding,
        rescues: z.array(record({ id: words, name: words, chance, plug_in: stampSchema.nullable() })),
      }),
    )
    .meta({ description: "limits that were lifted, each tried: what makes missed departures possible" }),
  not_planned: z.array(z.string()),
  totals: record({
    missed: z.int(),
    heater_h: z.number(),
    wet_h: z.number(),
    energy_kwh: z.number(),
    tasks: z.int().meta({ description: "of the base's people" }),
  }),
  alone_totals: record({ missed: z.int(), heater_h: z.number(), energy_kwh: z.number() }).meta({
    description: "if everyone had the base to itself",
  }),
  assumptions: z.array(finding),
  warnings: z.array(record({ path: z.string(), expected: z.string(), received: z.string() })),
  cautions: z.array(caution),
}).meta({ title: "Soakline base plan" });

export type BaseDocument = z.infer<typeof baseSchema>;
export type BaseSections = Partial<BaseDocument>;
export type BasePlanDocument = z.infer<typeof basePlanSchema>;
export type ToldDocument = z.infer<typeof told>;
