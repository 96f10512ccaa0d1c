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

const lookedAt = z.number().nullable();
const dryTimes = {
  skin_dry_h: lookedAt,
  gaps_dry_h: lookedAt,
  all_dry_h: lookedAt,
};

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
  gaps_thawed: timeBand,
  gaps_dry: timeBand,
  all_dry: timeBand,
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
  trials: record({
    as_is: record(dryTimes),
    changes: z.array(record({ id: z.string(), text: z.string(), ...dryTimes })),
  }).meta({ description: "hours from the start for the middle case; null: not within the hours" }),
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
