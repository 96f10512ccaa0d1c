import { z } from "zod";
import { WET_TIME_LIMITS } from "../starting/index.js";
import { basisSchema } from "./basis-schema.js";
import { record } from "./record.js";
import { planSchema } from "./result-schema.js";
import { finding } from "./said.js";

const { soakline, name, aircraft, start, zone, members, assumptions, warnings, cautions } = planSchema.shape;
const band = record({ p05: z.number(), p50: z.number(), p95: z.number() });
const share = z.number().min(0).max(1);
const shareBand = record({ p05: share, p50: share, p95: share });

const rule = record({
  rule: z.enum(["outdoors-only", "engine-too-small", "rejected", "longest-on", "always-on"]),
  heater: z.string().meta({ description: "its name; empty where the rule is of the habit" }),
  text: finding,
  source: z.string(),
});
const attendedRate = z.number().meta({ description: "per hour of somebody who stands by or plugs in" });
const money = z.number().nullable();

const kit = record({
  name: z.string(),
  heaters: z.array(record({ id: z.string(), name: z.string(), basis: basisSchema })),
  covers: z.array(record({ id: z.string(), name: z.string() })),
  switching: z.enum(["by_hand", "mains_timer", "local_network", "phone_network"]),
  price: z.number().nullable(),
  attended: z.boolean().meta({ description: "somebody must stand by all the time it runs" }),
  least_on_h: z.number().nullable().meta({ description: "shortest time on; null without a heater" }),
  longest_on_h: z.number().nullable(),
  unplug_before_min: z
    .number()
    .meta({ description: "heating ends this long before the start, the makers' pause included" }),
  barred: z.array(rule).meta({ description: "may not be used here at all: not worked out, never ranked" }),
});

const weakest = z.array(record({ id: z.string(), title: finding, share })).meta({
  description: "what was not fulfilled, as a share of departures and drawn aircraft, most often first",
});

const row = record({
  kit: z.int(),
  habit: z.int(),
  refused: z
    .union([z.literal(""), finding])
    .meta({ description: "why this habit cannot be had with this kit; empty when it can" }),
  not_advised: z
    .array(rule)
    .meta({ description: "why it is compared and never ranked; empty where it may be recommended" }),
  ready_rate: shareBand.meta({
    description: "departures at which it may be started, over winters and drawn aircraft",
  }),
  ready_mean: share,
  warm_rate: shareBand.meta({ description: "of departures, warm through as well" }),
  warm_mean: share,
  heater_h: band.meta({ description: "over winters" }),
  switch_ons: band,
  shortest_on_h: z.number(),
  longest_on_h: z.number(),
  attended_h: band.meta({ description: "that somebody stands by or plugs in, over winters" }),
  attended_money: band,
  energy_kwh: band.meta({ description: "electric, over winters and drawn aircraft" }),
  fuel_kwh: band,
  energy_money: band.nullable().meta({ description: "null where a price is missing" }),
  winter_cost: band.nullable().meta({
    description:
      "energy, somebody's time, departures missed and yearly costs together; null where a price is missing",
  }),
  wet_h: band.meta({
    description: `inside wet or frosted, of the middle aircraft, over winters. ${WET_TIME_LIMITS}`,
  }),
  frost_h: band.meta({ description: "of those at or below 0 °C" }),
  hottest_surface_c: band.nullable(),
  hottest_film_c: band.nullable(),
  too_hot: share.meta({ description: "of departures at which a ceiling was broken, middle aircraft" }),
  given_up: share.meta({ description: "of departures that the plan did not heat for" }),
  weakest,
  heater_life_winters: z.number().nullable().meta({ description: "null where no rated hours are told" }),
  payback_winters: record({
    p05: z.number().nullable(),
    p50: z.number().nullable(),
    p95: z.number().nullable(),
  })
    .nullable()
    .meta({
      description:
        "against the reference, over drawn aircraft; null within: never; null: prices missing, or the reference",
    }),
  months: z.array(
    record({
      month: z.string(),
      departures: z.number(),
      ready_rate: share.nullable(),
      energy_kwh: z.number(),
      heater_h: z.number(),
      wet_h: z.number(),
    }),
  ),
});

const rowIndex = z.int().nullable();

/** What `winter` answers. */
export const winterStudySchema = record({
  ...{ soakline, kind: z.literal("winter-study"), name, aircraft, start, zone, members },
  hours: z.number(),
  departures: z.int(),
  winters: z.array(
    record({ name: z.string(), origin: z.string(), mean_c: z.number(), coldest_c: z.number() }),
  ),
  currency: z.string(),
  attended_per_h: attendedRate,
  wanted_chance: share,
  against: record({ kit: z.int(), habit: z.int() }),
  kits: z.array(kit),
  habits: z.array(record({ do: z.enum(["always_on", "clock", "planned"]), label: finding })),
  rows: z.array(row),
  first_cautions: cautions,
  ranking: z.array(z.int()).meta({ description: "rows that may be recommended, best first" }),
  answer: record({
    best: rowIndex,
    readier: rowIndex.meta({ description: "ready more often than the best, at a price; null: none" }),
    dearer: rowIndex.meta({ description: "dearer to buy, and cheaper a winter or ready more often" }),
    unadvised: rowIndex.meta({ description: "the best kit's habit, or else another, that is not advised" }),
  }).meta({ description: "the rows that the answer speaks of" }),
  ...{ assumptions, warnings, cautions },
}).meta({ title: "Soakline winter study" });

/** One kit in one cold case. */
const kitCase = record({
  air_c: z.number(),
  wind_mps: z.number(),
  status: z.enum(["ready", "not-required", "not-reached"]).meta({
    description: "not-required: every part is past the maker's limit without heat",
  }),
  aim: z.enum(["least", "warm-through"]).meta({ description: "the line that the lead aims at" }),
  lead_h: z.number().nullable().meta({ description: "plug-in before departure; null: without heat" }),
  chance: share.meta({ description: "that it may be started" }),
  warm_chance: share.meta({ description: "that it is warm through" }),
  weakest: z.string(),
  weakest_title: finding,
  energy_kwh: band,
  attended_h: z.number().meta({ description: "that somebody stands by or plugs in for this start" }),
  cost: record({ energy: money, attended: z.number(), all: money }).meta({
    description: "of this start, middle estimate; null where a price is missing",
  }),
  hottest_surface_c: band.nullable(),
  hottest_film_c: band,
  too_hot: z.array(z.string()),
  wet_h: z
    .number()
    .nullable()
    .meta({
      description: `null without heat; inside wet or frosted from plug-in to unplugging, middle aircraft. ${WET_TIME_LIMITS}`,
    }),
  frost_h: z.number().nullable().meta({ description: "of those at or below 0 °C" }),
});

const kitIndex = z.int().nullable();

/** What `kit` answers. */
export const kitComparisonSchema = record({
  ...{ soakline, kind: z.literal("kit-comparison"), name, aircraft, members },
  wanted_chance: share,
  currency: z.string(),
  attended_per_h: attendedRate,
  kits: z.array(
    record({
      ...kit.shape,
      not_advised: z.array(rule).meta({ description: "why it is compared and never ranked" }),
      tonight: planSchema
        .nullable()
        .meta({ description: "the plan with this kit; null without a night, or where it is barred" }),
      cases: z.array(kitCase).meta({ description: "empty where it is barred" }),
    }),
  ),
  first_cautions: cautions,
  ranking: z
    .array(z.int())
    .meta({ description: "kits that make some case ready and may be recommended, best first" }),
  answer: record({
    best: kitIndex,
    cold: z
      .int()
      .nullable()
      .meta({ description: "coldest case up to which the best kit makes every case ready" }),
    next: z.int().nullable().meta({ description: "the mildest case that the best kit does not make ready" }),
    colder: kitIndex.meta({ description: "another kit that may be recommended and reaches colder" }),
    dearer: kitIndex.meta({ description: "a kit dearer to buy that makes more cases ready" }),
  }).meta({ description: "what the answer speaks of" }),
  ...{ assumptions, warnings, cautions },
}).meta({ title: "Soakline kit comparison" });

export type WinterStudyDocument = z.infer<typeof winterStudySchema>;
export type WinterRowDocument = WinterStudyDocument["rows"][number];
export type KitCaseDocument = z.infer<typeof kitCase>;
/** A limit or a maker's word that keeps a kit or a habit from being recommended. */
export type KitRuleDocument = z.infer<typeof rule>;
export type KitComparisonDocument = z.infer<typeof kitComparisonSchema>;
