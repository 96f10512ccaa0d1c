import { z } from "zod";
import {
  airframeEnsemble,
  airframeSite,
  fuel,
  opening,
  panel,
  skinCelsius,
  wingCover,
  words,
} from "./airframe-schema.js";
import { record } from "./record.js";
import { scenarioSchema } from "./scenario-schema.js";

/** A wing through a night, up to a departure: what `frost` asks. */
export const frostSchema = record({
  ...opening,
  kind: z.literal("frost"),
  hours: z.number().min(0.5).max(120).exactOptional(),
  departure: words.exactOptional().meta({
    description: "instead of hours: ISO 8601 with offset, or HH:MM, the next such local time",
  }),
  weather: scenarioSchema.shape.weather,
  panel: panel.exactOptional(),
  fuel: fuel.exactOptional(),
  cover: wingCover.exactOptional(),
  skin_c: skinCelsius.exactOptional().meta({ description: "of the wing at the start" }),
  site: airframeSite.exactOptional(),
  ensemble: airframeEnsemble.exactOptional(),
}).meta({
  title: "Soakline frost",
  description: "A wing outside through a night. Keys carry units.",
});

export type FrostDocument = z.infer<typeof frostSchema>;
export type FrostSections = Partial<FrostDocument>;
