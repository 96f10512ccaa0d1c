import type { Finding } from "./index.js";

/** A moment of a base plan: local time with offset; clock time alone is clear where the plan spans a day at most. */
export interface BaseMoment {
  readonly time: string;
  readonly within_day: boolean;
}

interface Aircraft {
  readonly aircraft: string;
}

/** Who holds what another one wants, from when to when. */
interface Held {
  readonly holders: readonly string[];
  readonly from: BaseMoment;
  readonly to: BaseMoment;
}

/** Findings: why an aircraft of a base does what it does, and what would help. */
export interface BasePlanFindings {
  readonly "base-unsure": { readonly missed: readonly (Aircraft & { readonly at: BaseMoment })[] };
  readonly "base-too-hot": Aircraft & { readonly at: BaseMoment; readonly criterion: Finding };
  readonly "base-held-off": Aircraft & { readonly at: BaseMoment; readonly causes: readonly Finding[] };
  readonly "base-no-heater": Aircraft & { readonly at: BaseMoment };
  readonly "base-short": Aircraft & {
    readonly at: BaseMoment;
    readonly chance: number;
    readonly criterion: Finding;
  };
  readonly "base-even-less": { readonly chance: number; readonly causes: readonly Finding[] };
  readonly "base-not-required": Aircraft;
  readonly "base-hangar-warm": Aircraft;
  readonly "base-unhindered": Aircraft;
  readonly "base-no-dearer": Aircraft & { readonly from: BaseMoment };
  readonly "base-does": { readonly doing: Finding; readonly causes: readonly Finding[] };
  readonly "does-go-in": Aircraft & { readonly at: BaseMoment };
  readonly "does-come-out": Aircraft & { readonly at: BaseMoment };
  readonly "does-turns": Aircraft;
  readonly "does-nothing": Aircraft;
  readonly "does-heat-from": Aircraft & { readonly from: BaseMoment };
  readonly "does-wait": Aircraft & { readonly until: BaseMoment };
  readonly "does-heat-early": Aircraft & { readonly from: BaseMoment; readonly until: BaseMoment | null };
  readonly "does-heat": Aircraft & { readonly from: BaseMoment; readonly to: BaseMoment };
  readonly "because-outlet": Held & { readonly circuit: string; readonly outlets: number };
  readonly "because-current": Held & {
    readonly circuit: string;
    readonly wanted_a: number;
    readonly capacity_a: number;
  };
  readonly "because-bay": Held & { readonly bays: number };
  readonly "because-cart": Held & { readonly cart: string };
  readonly "because-people": Held & { readonly wanted: number; readonly capacity: number };
  // What was taken where nothing was said.
  readonly "circuits-planned-to": { readonly share: number };
  readonly "somebody-always": Readonly<Record<never, never>>;
  readonly "no-hangar-described": Readonly<Record<never, never>>;
  readonly "pulled-out-to-start": Aircraft;
  // What can hurt when a base shares its power, its hangar and its people.
  readonly "circuit-shared": Readonly<Record<never, never>>;
  readonly "generator-outside": Readonly<Record<never, never>>;
  readonly "moving-aircraft": Readonly<Record<never, never>>;
  readonly "cart-rejected": { readonly cart: string; readonly why: Finding };
  readonly "lift-outlet": { readonly circuit: string; readonly number: number };
  readonly "lift-breaker": { readonly circuit: string; readonly current_a: number };
  readonly "lift-generator": { readonly circuit: string };
  readonly "lift-bay": { readonly number: number };
  readonly "lift-cart": { readonly heater: string };
  readonly "lift-people": Readonly<Record<never, never>>;
  /** Several together. */
  readonly "lift-all": { readonly lifts: readonly Finding[] };
}
