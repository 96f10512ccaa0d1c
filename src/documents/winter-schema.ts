import { z } from "zod";
import { coverSchema, heaterSchema } from "./description-schema.js";
import { record } from "./record.js";
import { scenarioSchema } from "./scenario-schema.js";

const { soakline, name, note, aircraft, learned, zone, place, hangar, site, limits, weather, initial } =
  scenarioSchema.shape;
const words = z.string().min(1);
const fileNames = z.array(words).min(1).max(100);
const money = z.number().min(0).max(1e6);
const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: "HH:MM" });
const minutes = z.number().min(0).max(240);
const wantedChance = z.number().min(0.5).max(0.99);

/** The most kits of one comparison. */
const MOST_KITS = 12;

const kitChoice = record({
  name: words.max(40),
  heaters: z.array(z.union([words, heaterSchema])).max(6),
  covers: z.array(z.union([words, coverSchema])).max(6),
  switching: z.enum(["by_hand", "mains_timer", "local_network", "phone_network"]),
  price: money.exactOptional().meta({ description: "to buy and fit, in the document's currency" }),
  yearly_cost: money
    .exactOptional()
    .meta({ description: "every winter beside energy: subscription, inspection" }),
  heater_life_h: z
    .number()
    .min(10)
    .max(1e6)
    .exactOptional()
    .meta({ description: "hours its maker rates it for; nothing is assumed without it" }),
});

const habit = z.discriminatedUnion("do", [
  record({ do: z.literal("always_on") }),
  record({
    do: z.literal("clock"),
    lead_h: z
      .number()
      .min(0.25)
      .max(24)
      .exactOptional()
      .meta({ description: "switched on this long before each departure" }),
    from: clockTime
      .exactOptional()
      .meta({ description: "with until: on every day from and until these times" }),
    until: clockTime.exactOptional(),
  }),
  record({ do: z.literal("planned"), chance: wantedChance.exactOptional() }),
]);

const monthNormals = record({
  air_c: z.number().min(-60).max(40),
  daily_range_k: z.number().min(0).max(30),
  day_sd_k: z.number().min(0.1).max(15),
  persistence: z.number().min(0).max(0.95),
  wind_mps: z.number().min(0.1).max(20),
  cloud_fraction: z.number().min(0).max(1),
  dew_point_depression_k: z.number().min(0.1).max(30),
});

const days = z.array(z.enum(["mon", "tue", "wed", "thu", "fri", "sat", "sun"])).min(1);

const hours = {
  unplug_before_min: minutes.exactOptional(),
  cover_off_before_min: minutes.exactOptional(),
};

const kitSections = {
  kits: z.array(kitChoice).min(1).max(MOST_KITS),
  by_hand: record({ from: clockTime, until: clockTime })
    .exactOptional()
    .meta({ description: "when somebody can be there to plug in" }),
  prices: record({
    currency: words.max(8).exactOptional(),
    electricity_per_kwh: money.exactOptional(),
    fuel_per_kwh: money
      .exactOptional()
      .meta({ description: "for heaters that burn; per kWh of heat in the fuel's air" }),
    attended_per_h: z
      .number()
      .gt(0)
      .max(1e6)
      .exactOptional()
      .meta({ description: "an hour of somebody who stands by a heater or plugs in: nobody's time is free" }),
    missed_departure: money.exactOptional().meta({ description: "what a departure given up costs" }),
  }).exactOptional(),
};

/** Weather of winters and flying against kits and habits: what `winter` asks. */
export const winterSchema = record({
  ...{ soakline, kind: z.literal("winter"), name, note, aircraft, learned },
  start: z.string().meta({ description: "ISO 8601 with offset: the first hour of the winter" }),
  zone,
  months: z.int().min(1).max(12).exactOptional(),
  place,
  hangar,
  site,
  weather: record({
    place: words.exactOptional().meta({ description: "id of an invented place" }),
    normals: record({
      name: words,
      longitude_deg: z.number().min(-180).max(180),
      months: z.array(monthNormals).length(12),
    })
      .exactOptional()
      .meta({ description: "monthly normals of your own station, January first" }),
    years: z.int().min(1).max(200).exactOptional().meta({ description: "winters to make from normals" }),
    csv_files: fileNames.exactOptional().meta({ description: "one measured winter a file" }),
    epw_files: fileNames.exactOptional(),
  }),
  flying: record({
    schedule: z
      .array(record({ days, at: clockTime }))
      .min(1)
      .max(40)
      .exactOptional(),
    departures_csv: words.exactOptional().meta({
      description: "a file with a column time: departures of the winter, instead of a schedule",
    }),
    flight_h: z.number().min(0.2).max(12).exactOptional(),
  }),
  ...kitSections,
  habits: z.array(habit).min(1).max(6).exactOptional(),
  against: words.exactOptional().meta({ description: "name of the kit that payback is counted against" }),
  against_habit: z.enum(["always_on", "clock", "planned"]).exactOptional(),
  ...hours,
  limits,
  ensemble: record({
    members: z
      .int()
      .min(2)
      .max(200)
      .exactOptional()
      .meta({ description: "drawn aircraft beside the middle one" }),
    seed: z
      .int()
      .min(0)
      .max(2 ** 31 - 1)
      .exactOptional(),
  }).exactOptional(),
}).meta({
  title: "Soakline winter",
  description: "Kits and habits through whole winters. Keys carry units.",
});

/** Kits side by side, tonight and in the cold: what `kit` asks. */
export const kitSchema = record({
  ...{ soakline, kind: z.literal("kit"), name, note, aircraft, learned, zone, place, hangar, site },
  tonight: record({
    start: scenarioSchema.shape.start,
    hours: scenarioSchema.shape.hours,
    initial,
    weather,
    departure: words,
    pulled_out: z.boolean().exactOptional(),
  }).exactOptional(),
  cases: z
    .array(record({ air_c: z.number().min(-60).max(15), wind_mps: z.number().min(0).max(30) }))
    .min(1)
    .max(24)
    .exactOptional()
    .meta({ description: "cold-soaked in this weather; usually -10 to -40 °C, calm and 5 m/s" }),
  chance: wantedChance.exactOptional(),
  ...kitSections,
  ...hours,
  limits,
  ensemble: record({
    members: z.int().min(20).max(1000).exactOptional(),
    seed: z
      .int()
      .min(0)
      .max(2 ** 31 - 1)
      .exactOptional(),
  }).exactOptional(),
}).meta({
  title: "Soakline kit",
  description: "Heaters, covers and switches side by side. Keys carry units.",
});

export type WinterDocument = z.infer<typeof winterSchema>;
export type WinterSections = Partial<WinterDocument>;
export type KitDocument = z.infer<typeof kitSchema>;
export type KitSections = Partial<KitDocument>;
