type Nothing = Readonly<Record<never, never>>;

/** Every criterion: what its name and its reason are made of; keys carry their unit. */
export interface CriterionValues {
  oil: { in: "sump" | "tank" };
  bearings: Nothing;
  crankcase: Nothing;
  barrels: Nothing;
  heads: Nothing;
  "oil-cooler": Nothing;
  warm: { part: "oil" | "bearings" | "crankcase" | "barrels" | "heads" };
  evenness: Nothing;
  "oil-maximum": Nothing;
  "oil-film": Nothing;
  hub: Nothing;
  surface: { heater: string; element: string };
  "oil-pump": Nothing;
  "oil-crank": Nothing;
  "cranking-speed": Nothing;
  tries: Nothing;
  battery: { kind: "lead" | "lithium"; charge: number };
  "battery-charge": { kind: "lead" | "lithium" };
  "fuel-vapour": Nothing;
  "fuel-offered": Nothing;
  plugs: Nothing;
  "bearing-clearance": Nothing;
  "piston-clearance": Nothing;
}

type Named = { readonly [K in keyof CriterionValues as `criterion-${K}`]: CriterionValues[K] };
type Reasons = { readonly [K in keyof CriterionValues as `criterion-${K}-why`]: CriterionValues[K] };

/** Findings: what must hold for a start, and why. */
export type CriteriaFindings = Named &
  Reasons & {
    /** Where a limit comes from that the owner set beyond the maker's. */
    "owners-limit": { maker: string | null };
  };
