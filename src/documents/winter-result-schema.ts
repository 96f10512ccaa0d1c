import { z } from "zod";
import { WET_TIME_LIMITS } from "../starting/index.js";
import { record } from "./record.js";
import { planSchema } from "./result-schema.js";

const { soakline, name, aircraft, start, zone, members, assumptions, warnings, cautions } = planSchema.shape;
const band = record({ p05: z.number(), p50: z.number(), p95: z.number() });
const share = z.number().min(0).max(1);
const shareBand = record({ p05: share, p50: share, p95: share });

const kit = record({
  name: z.string(),
  heaters: z.array(record({ id: z.string(), name: z.string() })),
  covers: z.array(record({ id: z.string(), name: z.string() })),
  switching: z.enum(["by_hand", "mains_timer", "local_network", "phone_network"]),
  price: z.number().nullable(),
});

const weakest = z.array(record({ id: z.string(), title: z.string(), share })).meta({
  description: "what was not fulfilled, as a share of departures and drawn aircraft, most often first",
});

const row = record({
  kit: z.int(),
  habit: z.int(),
  refused: z.string().meta({ description: "why this habit cannot be had with this kit; empty when it can" }),
  ready_rate: shareBand.meta({ description: "of departures, over winters and drawn aircraft" }),
  ready_mean: share,
  heater_h: band.meta({ description: "over winters" }),
  switch_ons: band,
  longest_on_h: z.number(),
  energy_kwh: band.meta({ description: "electric, over winters and drawn aircraft" }),
  fuel_kwh: band,
  energy_money: band.nullable().meta({ description: "null where a price is missing" }),
  winter_cost: band.nullable().meta({
    description: "energy, departures missed and yearly costs together; null where a price is missing",
  }),
  wet_h: band.meta({ description: `of the middle aircraft, over winters. ${WET_TIME_LIMITS}` }),
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

/** What `winter` answers. */
export const winterStudySchema = record({
  ...{ soakline, kind: z.literal("winter-study"), name, aircraft, start, zone, members },
  hours: z.number(),
  departures: z.int(),
  winters: z.array(
    record({ name: z.string(), origin: z.string(), mean_c: z.number(), coldest_c: z.number() }),
  ),
  currency: z.string(),
  against: record({ kit: z.int(), habit: z.int() }),
  kits: z.array(kit),
  habits: z.array(record({ do: z.enum(["always_on", "clock", "planned"]), label: z.string() })),
  rows: z.array(row),
  ...{ assumptions, warnings, cautions },
}).meta({ title: "Soakline winter study" });

/** One kit in one cold case. */
const kitCase = record({
  air_c: z.number(),
  wind_mps: z.number(),
  reached: z.boolean(),
  lead_h: z.number().nullable().meta({ description: "plug-in before departure; null: no heat needed" }),
  chance: share,
  weakest: z.string(),
  weakest_title: z.string(),
  energy_kwh: band,
  hottest_surface_c: band.nullable(),
  hottest_film_c: band,
  too_hot: z.array(z.string()),
  wet_h: z.number().meta({ description: `from plug-in to departure, middle aircraft. ${WET_TIME_LIMITS}` }),
});

/** What `kit` answers. */
export const kitComparisonSchema = record({
  ...{ soakline, kind: z.literal("kit-comparison"), name, aircraft, members },
  wanted_chance: share,
  currency: z.string(),
  kits: z.array(
    record({
      ...kit.shape,
      attended: z.boolean(),
      longest_on_h: z.number().nullable(),
      tonight: planSchema.nullable().meta({ description: "the plan with this kit; null without a night" }),
      cases: z.array(kitCase),
    }),
  ),
  ...{ assumptions, warnings, cautions },
}).meta({ title: "Soakline kit comparison" });

export type WinterStudyDocument = z.infer<typeof winterStudySchema>;
export type WinterRowDocument = WinterStudyDocument["rows"][number];
export type KitComparisonDocument = z.infer<typeof kitComparisonSchema>;
