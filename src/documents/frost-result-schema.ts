import { z } from "zod";
import {
  band,
  bandSeries,
  chance,
  header,
  stamp,
  timeBand,
  timeHours,
  verdict,
} from "./airframe-result-schema.js";
import { record } from "./record.js";

const face = record({
  verdict,
  chance: chance.meta({ description: "of frost at any time" }),
  chance_at_departure: chance,
  first: timeBand,
  hours: band,
  frost_at_departure_kg_per_m2: band,
  dew_at_departure_kg_per_m2: band,
  most_frost_kg_per_m2: band,
  most_below_air_k: band,
});

/** What `frost` answers. */
export const frostOutlookSchema = record({
  ...header,
  kind: z.literal("frost-outlook"),
  departure: stamp,
  cover: z.string().nullable().meta({ description: "origin of the wing cover's numbers; null without one" }),
  upper: face,
  lower: face,
  other: record({
    cover: z.string().nullable().meta({ description: "id of the cover tried instead; null for none" }),
    upper: face,
  }).meta({ description: "the same night without the cover, or with one" }),
  course: record({
    time_h: timeHours,
    air_c: bandSeries,
    frost_point_c: bandSeries.meta({ description: "dew point above 0 °C" }),
    sky_c: bandSeries,
    wind_mps: bandSeries.meta({ description: "at the wing" }),
    upper_c: bandSeries,
    lower_c: bandSeries,
    inside_c: bandSeries,
    upper_frost_kg_per_m2: bandSeries,
    upper_dew_kg_per_m2: bandSeries,
    lower_frost_kg_per_m2: bandSeries,
    lower_dew_kg_per_m2: bandSeries,
    cover_frost_kg_per_m2: bandSeries.nullable().meta({ description: "on the outside of the cover" }),
  }),
}).meta({ title: "Soakline frost outlook" });

export type FrostOutlookDocument = z.infer<typeof frostOutlookSchema>;
export type FaceDocument = FrostOutlookDocument["upper"];
