import { z } from "zod";
import {
  airCelsius,
  airframeEnsemble,
  airframeSite,
  dewPointCelsius,
  fuel,
  opening,
  panel,
  share,
  skinCelsius,
  words,
} from "./airframe-schema.js";
import { record } from "./record.js";
import { scenarioSchema } from "./scenario-schema.js";

const metres = (least: number, most: number) => z.number().min(least).max(most);

const hangar = record({
  length_m: metres(3, 200),
  width_m: metres(3, 200),
  height_m: metres(2, 25),
  insulated: z.boolean(),
  set_c: z.number().min(-30).max(40).meta({
    description: "what the thermostat holds; without a heater, how warm the hangar is at the start",
  }),
  heater_kw: z.number().min(0).max(1000),
  unflued_burner: z.boolean().exactOptional().meta({
    description: "a flame whose gases stay in the hangar: its water comes with its heat",
  }),
  air_changes_per_h: z.number().min(0).max(60).exactOptional(),
  fan_mps: z.number().min(0).max(15).exactOptional().meta({ description: "air speed over the aircraft" }),
  floor_swept: z.boolean().exactOptional(),
  humidity_percent: z.number().min(0).max(100).exactOptional(),
});

const gap = record({
  depth_mm: z.number().min(0.5).max(100).exactOptional(),
  width_mm: z.number().min(0.01).max(5).exactOptional(),
  filled_fraction: share.exactOptional(),
  length_m: metres(0, 1000).exactOptional(),
});

/** [m] and [ft] of altitudes above sea level; one of the two stands in the document. */
const altitude = {
  altitude_m: z.number().min(-500).max(20_000).exactOptional(),
  altitude_ft: z.number().min(-1640).max(65_616).exactOptional(),
};

const rollOut = record({
  at_h: z.number().min(0).exactOptional(),
  time: words.exactOptional(),
  outside_min: z.number().min(0).max(1440).exactOptional().meta({
    description: "minutes from roll-out to take-off",
  }),
  falling: z.enum(["nothing", "snow", "rain"]),
  air_c: airCelsius.exactOptional(),
  dew_point_c: dewPointCelsius.exactOptional(),
  wind_mps: z.number().min(0).max(80).exactOptional(),
  cloud_fraction: share.exactOptional(),
  cruise_m: z.number().min(-500).max(9000).exactOptional(),
  cruise_ft: z.number().min(-1640).max(29_527).exactOptional(),
  climb_mps: z.number().min(0.2).max(20).exactOptional(),
  climb_fpm: z.number().min(40).max(3937).exactOptional(),
  airspeed_mps: z.number().min(10).max(150).exactOptional(),
  airspeed_kt: z.number().min(20).max(291).exactOptional(),
  sounding: z
    .array(record({ ...altitude, air_c: z.number().min(-80).max(50) }))
    .min(1)
    .exactOptional()
    .meta({ description: "air temperatures aloft, from below upwards, above sea level" }),
});

/** A snowy or wet aircraft in a hangar, and its roll-out: what `thaw` asks. */
export const thawSchema = record({
  ...opening,
  kind: z.literal("thaw"),
  hours: z.number().min(0.5).max(336).meta({ description: "to look ahead from roll-in, which is the start" }),
  panel: panel.exactOptional(),
  aircraft: record({
    area_m2: metres(0.5, 1000).meta({ description: "plan area of wing, tail and body" }),
    temp_c: skinCelsius.exactOptional(),
  }),
  fuel: fuel.exactOptional(),
  snow: record({
    kind: z.enum(["new", "settled", "wet", "ice"]),
    depth_mm: z.number().min(0).max(2000),
    brushed: z.boolean().exactOptional().meta({
      description: "loose snow brushed off first: a tenth of the depth stays",
    }),
  }).exactOptional(),
  film: z.enum(["dripping", "wiped"]).exactOptional().meta({
    description: "whether the melted skin is left to drip or wiped with cloths",
  }),
  gap: gap.exactOptional(),
  hangar,
  outside: record({ air_c: airCelsius, dew_point_c: dewPointCelsius.exactOptional() }),
  weather: scenarioSchema.shape.weather.exactOptional().meta({
    description: "forecast outside: looked through for a mild window to leave in",
  }),
  site: airframeSite.exactOptional(),
  roll_out: rollOut.exactOptional(),
  ensemble: airframeEnsemble.exactOptional(),
}).meta({
  title: "Soakline thaw",
  description: "An aircraft that thaws and dries in a hangar, and its roll-out. Keys carry units.",
});

export type ThawDocument = z.infer<typeof thawSchema>;
export type ThawSections = Partial<ThawDocument>;
