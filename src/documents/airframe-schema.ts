import { z } from "zod";
import { record } from "./record.js";
import { scenarioSchema } from "./scenario-schema.js";

// Sections that the documents about the airframe share. Bounds are those the airframe's models are made for.

const { soakline, name, note, start, zone } = scenarioSchema.shape;
/** How every document about the airframe begins. */
export const opening = { soakline, name, note, start, zone };

export const words = z.string().min(1);
export const share = z.number().min(0).max(1);
/** [°C] of weather and hangars, and of skin and fuel in them. */
export const airCelsius = z.number().min(-60).max(50);
export const skinCelsius = z.number().min(-60).max(40);
export const dewPointCelsius = z.number().min(-60).max(45);

const skinCapacity = z.number().min(100).max(1e5);
const coefficient = z.number().min(0).max(1000);

export const panel = z.union([
  words,
  record({
    name: words,
    chord_m: z.number().min(0.05).max(10),
    span_m: z.number().min(0.05).max(50),
    upper_skin_j_per_m2k: skinCapacity,
    lower_skin_j_per_m2k: skinCapacity,
    emissivity: share,
    inside_j_per_m2k: z.number().min(10).max(1e6),
    inside_upper_w_per_m2k: coefficient,
    inside_lower_w_per_m2k: coefficient,
    origin: words.meta({ description: "where the numbers come from" }),
  }),
]);

export const fuel = record({
  depth_mm: z.number().min(5).max(1000),
  temp_c: z.number().min(-55).max(40).exactOptional(),
  full: z.boolean().meta({ description: "whether the fuel wets the upper skin" }),
});

export const wingCover = z.union([
  words,
  record({
    resistance_m2k_per_w: z.number().min(0.001).max(10),
    heat_capacity_j_per_m2k: z.number().min(50).max(1e5),
    emissivity: share,
    vapour_leak: share.meta({
      description: "where the vapour under it stands: 0 caught by the cold cover, 1 as the air outside",
    }),
    origin: words,
  }),
]);

export const airframeSite = record({
  roughness_m: z.number().min(0.0001).max(1).exactOptional().meta({
    description: "aerodynamic roughness length of the ground upwind",
  }),
  wing_height_m: z.number().min(0.2).max(10).exactOptional(),
  open_sky_fraction: share.exactOptional().meta({
    description: "of the half-space above the wing; trees and walls are the rest",
  }),
  elevation_m: z.number().min(-500).max(5000).exactOptional(),
});

/** At most a thousand: a member costs some 10 ms. */
export const airframeEnsemble = record({
  members: z.int().min(20).max(1000).exactOptional(),
  seed: scenarioSchema.shape.ensemble.unwrap().shape.seed,
});
