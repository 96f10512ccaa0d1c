import { z } from "zod";
import {
  band,
  bandSeries,
  chance,
  header,
  minutesBand,
  stamp,
  timeBand,
  timeHours,
  verdict,
} from "./airframe-result-schema.js";
import { record } from "./record.js";
import { finding } from "./said.js";

const lookedAt = z.number().nullable();
const trialTimes = {
  chance: chance.meta({ description: "of being dry by `by`" }),
  skin_dry_h: lookedAt.meta({ description: "half of the cases" }),
  gaps_dry_h: lookedAt.meta({ description: "half of the cases, the skin with them" }),
  gaps_dry_surely_h: lookedAt.meta({ description: "95 % of the cases" }),
};

const trials = record({
  by: stamp.meta({ description: "the roll-out, else the end of the hours" }),
  longest_h: z.number(),
  members: header.members,
  as_is: record(trialTimes),
  changes: z.array(
    record({
      id: z.string(),
      text: finding,
      set_c: z.number().exactOptional().meta({ description: "what the hangar is held at" }),
      heater_kw: z.number().exactOptional(),
      ...trialTimes,
    }),
  ),
  mild_window: record({
    looked_until: stamp,
    window: record({
      leave: stamp,
      mild_until: stamp,
      air_c: z.number(),
      chance: chance.meta({ description: "dry, or clear and nothing freezes again" }),
    }).nullable(),
  })
    .nullable()
    .meta({ description: "null without a forecast" }),
}).meta({ description: "hours from the start; null: not within longest_h" });

const refrozen = record({
  verdict,
  at_take_off: chance,
  in_climb: chance.meta({ description: "after the climb and half an hour level" }),
});
const refreeze = record({ film: refrozen, gaps: refrozen });
const halfAndWettest = record({ p50: z.number(), p95: z.number() });

const rollOut = record({
  members: header.members,
  at: stamp,
  take_off: stamp,
  clear_chance: chance.meta({ description: "of no snow or ice on it and thawed gaps at roll-out" }),
  dry_chance: chance.meta({ description: "of a dry skin and dry gaps at roll-out" }),
  state: record({
    skin_c: z.number(),
    inside_c: z.number(),
    fittings_c: z.number(),
    snow_kg_per_m2: halfAndWettest,
    film_kg_per_m2: halfAndWettest.meta({ description: "on the wetter skin" }),
    gap_water_kg_per_m2: halfAndWettest.meta({ description: "water and ice, per area of mouth" }),
  }),
  skin_freezing_min: minutesBand,
  fittings_freezing_min: minutesBand,
  middle: refreeze.meta({ description: "as wet as the middle of the cases" }),
  wettest: refreeze.meta({ description: "as wet as the wettest 5 % of the cases" }),
  melts_what_falls: z.boolean(),
  cool_indoors_min: minutesBand.nullable().meta({
    description: "with the doors open until the skin is at 0 °C; null when nothing falls",
  }),
  wet_bulb_c: z.number(),
  climb: record({
    elevation_m: z.number(),
    freezing_level_m: z.number().nullable().meta({
      description: "above sea level; null when it stays above 0 °C up to the cruise",
    }),
    cruise_m: z.number(),
    cruise_c: z.number(),
    coldest_c: z.number(),
    fittings_freezing_min: minutesBand.meta({ description: "after take-off" }),
  }).nullable(),
});

/** What `thaw` answers. */
export const thawOutlookSchema = record({
  ...header,
  kind: z.literal("thaw-outlook"),
  horizon_h: z.number(),
  snow_kg_per_m2: z.number().meta({ description: "on it when it comes in" }),
  skin_clear: timeBand,
  skin_dry: timeBand,
  gaps_thawed: timeBand.meta({ description: "controls can move; never before the skin is clear" }),
  gaps_dry: timeBand.meta({
    description: "never before the skin is dry: the earliest it may leave",
  }),
  weakest: z.enum(["snow", "skin", "gaps"]).meta({ description: "what is dry last" }),
  melt_kg_per_m2h: record({
    air: z.number(),
    radiation: z.number(),
    vapour: z.number(),
    total: z.number(),
  }).meta({ description: "snow at 0 °C in the hangar's air at the start" }),
  heater_kwh: band,
  highest_humidity_percent: band,
  floor_water_kg: band.meta({ description: "ran off the aircraft" }),
  condensed_kg: band.meta({ description: "on the building" }),
  brushable_kg_per_m2: z.number().meta({ description: "of that, what a broom would still take off" }),
  trials,
  course: record({
    time_h: timeHours,
    hangar_c: bandSeries,
    humidity_percent: bandSeries,
    skin_c: bandSeries,
    inside_c: bandSeries,
    fittings_c: bandSeries,
    snow_kg_per_m2: bandSeries,
    upper_water_kg_per_m2: bandSeries,
    lower_water_kg_per_m2: bandSeries,
    gap_ice_kg_per_m2: bandSeries,
    gap_water_kg_per_m2: bandSeries,
    puddle_kg: bandSeries,
  }),
  roll_out: rollOut.nullable(),
}).meta({ title: "Soakline thaw outlook" });

export type ThawOutlookDocument = z.infer<typeof thawOutlookSchema>;
export type RollOutDocument = NonNullable<ThawOutlookDocument["roll_out"]>;
