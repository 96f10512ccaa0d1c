import type { Said, SaidCaution } from "../findings/index.js";
import type { Origins } from "./description.js";
import type { PartName } from "./parts.js";

/** Heating equipment as data. A new heater is one record in one file of catalogue/heaters. */
export interface Heater {
  readonly id: string;
  /** In trade terms: "silicone sump pad". */
  readonly name: string;
  /** What its numbers rest on; judgement where it is left out. */
  readonly basis?: HeaterBasis;
  readonly elements: readonly HeaterElement[];
  /** Ducted hot air into the cowl, instead of or beside elements. */
  readonly duct?: Duct;
  /** Fits only engines with this many cylinders. */
  readonly cylinders?: number;
  /** How many times the parts' exchange with the air under the cowl grows while its fan blows. */
  readonly stirring?: number;
  /** The shortest time on that is planned: a maker's figure for hot air, elsewhere what the model can tell. */
  readonly least_on_h: number;
  /** The longest it may be on in one go; whoever switches it must keep to this. */
  readonly longest_on_h: number;
  /** Somebody must stand by all the time it runs. */
  readonly attended: boolean;
  /** Where it may run: a burner only outdoors. */
  readonly runs: "anywhere" | "outdoors";
  /** Engines smaller than this are not heated with it. */
  readonly displacement_least_l?: number;
  /** What to do while it runs and before cranking, where makers ask for more than plugging in. */
  readonly procedure?: Procedure;
  /** Engine makers reject it, in these words: never proposed, and said wherever it is used. */
  readonly rejected?: Caution;
  readonly cautions: readonly Caution[];
  readonly origins: Origins;
}

/**
 * What a heater's numbers rest on: readings of real engines heated with it (`runs` of data/measured-runs), another heater
 * of the catalogue whose numbers are scaled, or judgement alone.
 */
export type HeaterBasis =
  | { readonly kind: "measured"; readonly runs: number }
  | { readonly kind: "scaled"; readonly from: string }
  | { readonly kind: "estimated" };

/** A description that does not say is judgement. */
export function heaterBasis({ basis }: Pick<Heater, "basis">): HeaterBasis {
  return basis ?? { kind: "estimated" };
}

/** The least certain of what some heaters rest on: what an answer that uses them all can claim. */
export function weakestBasis(bases: readonly HeaterBasis[]): HeaterBasis | undefined {
  const runs = bases.flatMap((basis) => (basis.kind === "measured" ? [basis.runs] : []));
  return (
    bases.find(({ kind }) => kind === "estimated") ??
    bases.find(({ kind }) => kind === "scaled") ??
    (runs.length > 0 ? { kind: "measured", runs: Math.min(...runs) } : undefined)
  );
}

/** How heating is done by hand, step by step. */
export interface Procedure {
  readonly steps: readonly Said[];
  /** Between the end of heating and cranking, for the heat to spread and for the checks. */
  readonly pause_min: number;
  readonly source: string;
}

export interface HeaterElement {
  readonly name: string;
  readonly power_w: number;
  /** What it heats. */
  readonly target: PartName;
  /** Conductance from the element to its target: glue line, clamp, film. */
  readonly contact_w_per_k: number;
  /** Conductance from the element's back to the air under the cowl. */
  readonly back_w_per_k: number;
  readonly heat_capacity_j_per_k: number;
  /** Heated area, for the watt density. */
  readonly area_cm2: number;
  /** In the oil itself: contact falls as the oil thickens, and the element is the hottest oil film. */
  readonly in_oil?: boolean;
  /** Highest surface temperature allowed for the element and what it touches. */
  readonly surface_max_c: number;
  /** Thermostat or self-limiting material: power falls away around set_c. */
  readonly limiter?: {
    readonly senses: "element" | PartName;
    readonly set_c: number;
    readonly width_k: number;
  };
}

export interface Duct {
  readonly power_w: number;
  readonly flow_m3_per_s: number;
  /** Highest supply temperature at the nozzle. */
  readonly supply_max_c: number;
  readonly energy: "electric" | "fuel";
  /** Diameter of the hose's end, where it is pointed at the sump from below; without it the air only fills the cowl. */
  readonly nozzle_m?: number;
}

/** Equipment that keeps heat in, as data: covers, plugs, propeller covers. */
export interface Cover {
  readonly id: string;
  readonly name: string;
  /** Thermal resistance of the cloth over the part it covers [m2K/W], as fitted. */
  readonly resistance_m2k_per_w: number;
  /** Share of the cowl skin it covers [0..1]. */
  readonly skin_share: number;
  /** Share of the inlets' opening left for air [0..1]. */
  readonly inlet_left: number;
  /** Share of the outlet's opening and gaps left for air [0..1]. */
  readonly outlet_left: number;
  /** Share of the propeller's and spinner's heat loss left [0..1]. */
  readonly hub_left: number;
  readonly cautions: readonly Caution[];
  readonly origins: Origins;
}

/** What can hurt, said beside the number it belongs to. */
export type Caution = SaidCaution;

/** What an aircraft has: heaters fitted, covers carried. */
export interface Kit {
  readonly heaters: readonly Heater[];
  readonly covers: readonly Cover[];
}
