type Nothing = Readonly<Record<never, never>>;

/** Every criterion: what its name and its reason are made of; keys carry their unit. */
export interface CriterionValues {
  readonly oil: { readonly in: "sump" | "tank" };
  readonly bearings: Nothing;
  readonly crankcase: Nothing;
  readonly barrels: Nothing;
  readonly heads: Nothing;
  readonly "oil-cooler": Nothing;
  readonly warm: { readonly part: "oil" | "bearings" | "crankcase" | "barrels" | "heads" };
  readonly evenness: Nothing;
  readonly "oil-maximum": Nothing;
  readonly "oil-film": Nothing;
  readonly hub: Nothing;
  readonly surface: { readonly heater: string; readonly element: string };
  readonly "oil-pump": Nothing;
  readonly "oil-crank": Nothing;
  readonly "cranking-speed": Nothing;
  readonly tries: Nothing;
  readonly battery: { readonly kind: "lead" | "lithium"; readonly charge: number };
  readonly "battery-charge": { readonly kind: "lead" | "lithium" };
  readonly "fuel-vapour": Nothing;
  readonly "fuel-offered": Nothing;
  readonly plugs: Nothing;
  readonly "bearing-clearance": Nothing;
  readonly "piston-clearance": Nothing;
}

type Named = { readonly [K in keyof CriterionValues as `criterion-${K}`]: CriterionValues[K] };
type Reasons = { readonly [K in keyof CriterionValues as `criterion-${K}-why`]: CriterionValues[K] };

/** Findings: what must hold for a start, and why. */
export type CriteriaFindings = Named &
  Reasons & {
    /** Where a limit comes from that the owner set beyond the maker's. */
    readonly "owners-limit": { readonly maker: string | null };
  };
