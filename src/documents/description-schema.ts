import { z } from "zod";
import {
  COVERS,
  type Cover,
  HEATERS,
  type Heater,
  type Installation,
  PART_NAMES,
} from "../aircraft/index.js";
import type { Said, SaidCaution } from "../findings/index.js";
import { METALS, type MetalId } from "../properties/index.js";
import { basisSchema } from "./basis-schema.js";
import { record } from "./record.js";

const positive = z.number().positive();
const notNegative = z.number().nonnegative();
const share = z.number().min(0).max(1);
const celsius = z.number().min(-90).max(600);
const words = z.string().min(1);
const id = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]*$/, { error: "small letters, figures and hyphens, such as sump-pad-220" });
const origins = z.record(z.string(), words).meta({
  description:
    'Where each number comes from, by its path ("cowl", "bodies.sump.area_m2"); "" covers all the rest.',
});

const fit = record({
  diameter_mm: positive,
  clearance_mm: positive,
  outer_metal: z.enum(Object.keys(METALS) as MetalId[]),
  inner_metal: z.enum(Object.keys(METALS) as MetalId[]),
});

const body = record({ heat_capacity_j_per_k: positive, area_m2: notNegative, height_m: positive });

/** A whole engine installation. */
export const installationSchema: z.ZodType<Installation> = record({
  id,
  name: words,
  cooling: z.enum(["air", "liquid"]),
  lubrication: z.enum(["wet-sump", "dry-tank"]),
  cylinders: z.int().min(1).max(18),
  displacement_l: positive,
  compression_ratio: z.number().min(4).max(16),
  bodies: record({
    sump: body,
    crankcase: body,
    crankshaft: body,
    barrels: body,
    heads: body,
    accessories: body,
    coolant: body.exactOptional(),
  }),
  oil: record({ quantity_l: positive, oil_id: words }),
  contacts: record({
    sump_oil_w_per_k: positive,
    sump_crankcase_w_per_k: positive,
    oil_crankcase_w_per_k: positive,
    oil_crankshaft_w_per_k: positive,
    crankcase_crankshaft_w_per_k: positive,
    crankcase_barrels_w_per_k: positive,
    barrels_heads_w_per_k: positive,
    crankcase_accessories_w_per_k: positive,
    crankshaft_hub_w_per_k: positive,
    coolant_heads_w_per_k: notNegative.exactOptional(),
    coolant_barrels_w_per_k: notNegative.exactOptional(),
  }),
  cowl: record({
    skin_area_m2: positive,
    skin_heat_capacity_j_per_k: positive,
    length_m: positive,
    inlet_area_m2: positive,
    outlet_area_m2: positive,
    stack_height_m: positive,
    emissivity: share,
  }),
  propeller: record({
    constant_speed: z.boolean(),
    hub_heat_capacity_j_per_k: positive,
    hub_area_m2: positive,
    blades: z.int().min(0).max(8),
    blade_perimeter_m: positive,
    blade_section_m2: positive,
    blade_conductivity_w_per_m_k: positive,
  }),
  battery: record({
    chemistry: z.enum(["lead-acid", "lithium-iron-phosphate"]),
    place: z.enum(["firewall", "aft"]),
    heat_capacity_j_per_k: positive,
    cowl_w_per_k: notNegative,
    outside_w_per_k: notNegative,
    sealed: z.boolean(),
    capacity_ah: positive,
    cold_cranking_a: positive,
    assumed_charge: share,
  }),
  cranking: record({
    system_v: z.union([z.literal(12), z.literal(24)]),
    stall_torque_nm: positive,
    no_load_rpm: positive,
    starter_resistance_ohm: positive.max(1),
    speed_min_rpm: positive,
  }),
  clearances: record({ bearing: fit.exactOptional(), piston: fit }),
  fuel: record({ grade: z.enum(["avgas", "mogas"]), reid_kpa: z.number().min(20.7).max(103.4) }),
  shut_down: record({
    oil_rise_k: positive,
    oil_most_c: celsius,
    heads_rise_k: positive,
    barrels_rise_k: positive,
    coolant_c: celsius.exactOptional(),
  }),
  limits: record({ no_preheat_c: celsius, oil_max_c: celsius, hub_c: celsius.exactOptional() }),
  origins,
}).meta({ title: "Soakline engine installation" });

const known = [...HEATERS, ...COVERS];
const codes = known.flatMap(({ cautions }) => cautions.flatMap((one) => ("code" in one ? one.code : [])));
const stepCodes = HEATERS.flatMap(({ procedure }) => procedure?.steps ?? []).flatMap((one) =>
  typeof one === "string" ? [] : one.code,
);
const noValues = record({});
/** In words of the document's own, or one of the catalogue's. */
const caution = z.union([
  record({ text: words, source: words }),
  record({ code: z.enum(codes), values: noValues, source: words }),
]) as unknown as z.ZodType<SaidCaution>;
const step = z.union([
  words,
  record({ code: z.enum(stepCodes), values: noValues }),
]) as unknown as z.ZodType<Said>;

/** Heating equipment. */
export const heaterSchema: z.ZodType<Heater> = record({
  id,
  name: words,
  basis: basisSchema.exactOptional(),
  elements: z.array(
    record({
      name: words,
      power_w: positive.max(50_000),
      target: z.enum(PART_NAMES),
      contact_w_per_k: positive,
      back_w_per_k: notNegative,
      heat_capacity_j_per_k: positive,
      area_cm2: positive,
      in_oil: z.boolean().exactOptional(),
      surface_max_c: celsius,
      limiter: record({
        senses: z.enum(["element", ...PART_NAMES]),
        set_c: celsius,
        width_k: positive,
      }).exactOptional(),
    }),
  ),
  duct: record({
    power_w: positive,
    flow_m3_per_s: positive,
    supply_max_c: celsius,
    energy: z.enum(["electric", "fuel"]),
    nozzle_m: positive
      .max(0.5)
      .exactOptional()
      .meta({ description: "diameter of the hose's end, pointed at the sump from below" }),
  }).exactOptional(),
  cylinders: z.int().min(1).max(18).exactOptional(),
  stirring: z.number().min(1).max(10).exactOptional(),
  least_on_h: notNegative.max(24).meta({ description: "shortest time on that is planned" }),
  longest_on_h: positive.max(24),
  attended: z.boolean(),
  runs: z.enum(["anywhere", "outdoors"]).meta({ description: "a burner runs outdoors only" }),
  displacement_least_l: positive
    .exactOptional()
    .meta({ description: "engines smaller than this are not heated with it" }),
  procedure: record({ steps: z.array(step).min(1), pause_min: notNegative.max(60), source: words })
    .exactOptional()
    .meta({ description: "what to do by hand while it runs and before cranking" }),
  rejected: caution
    .exactOptional()
    .meta({ description: "engine makers reject it, in these words: never proposed" }),
  cautions: z.array(caution),
  origins,
}).meta({ title: "Soakline heater" });

/** Equipment that keeps heat in. */
export const coverSchema: z.ZodType<Cover> = record({
  id,
  name: words,
  resistance_m2k_per_w: notNegative,
  skin_share: share,
  inlet_left: share.positive(),
  outlet_left: share.positive(),
  hub_left: share.positive(),
  cautions: z.array(caution),
  origins,
}).meta({ title: "Soakline cover" });
