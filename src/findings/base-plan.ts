import type { Finding } from "./index.js";

/** A moment of a base plan: local time with offset; clock time alone is clear where the plan spans a day at most. */
export interface BaseMoment {
  time: string;
  within_day: boolean;
}

interface Aircraft {
  aircraft: string;
}

/** Who holds what another one wants, from when to when. */
interface Held {
  holders: readonly string[];
  from: BaseMoment;
  to: BaseMoment;
}

/** Findings: why an aircraft of a base does what it does, and what would help. */
export interface BasePlanFindings {
  "base-unsure": { missed: readonly (Aircraft & { at: BaseMoment })[] };
  "base-too-hot": Aircraft & { at: BaseMoment; criterion: Finding };
  "base-held-off": Aircraft & { at: BaseMoment; causes: readonly Finding[] };
  "base-no-heater": Aircraft & { at: BaseMoment };
  "base-short": Aircraft & { at: BaseMoment; chance: number; criterion: Finding };
  "base-even-less": { chance: number; causes: readonly Finding[] };
  "base-not-required": Aircraft;
  "base-hangar-warm": Aircraft;
  "base-unhindered": Aircraft;
  "base-no-dearer": Aircraft & { from: BaseMoment };
  "base-does": { doing: Finding; causes: readonly Finding[] };
  "does-go-in": Aircraft & { at: BaseMoment };
  "does-come-out": Aircraft & { at: BaseMoment };
  "does-turns": Aircraft;
  "does-nothing": Aircraft;
  "does-heat-from": Aircraft & { from: BaseMoment };
  "does-wait": Aircraft & { until: BaseMoment };
  "does-heat-early": Aircraft & { from: BaseMoment; until: BaseMoment | null };
  "does-heat": Aircraft & { from: BaseMoment; to: BaseMoment };
  "because-outlet": Held & { circuit: string; outlets: number };
  "because-current": Held & { circuit: string; wanted_a: number; capacity_a: number };
  "because-bay": Held & { bays: number };
  "because-cart": Held & { cart: string };
  "because-people": Held & { wanted: number; capacity: number };
  // What was taken where nothing was said.
  "circuits-planned-to": { share: number };
  "somebody-always": Readonly<Record<never, never>>;
  "no-hangar-described": Readonly<Record<never, never>>;
  "pulled-out-to-start": Aircraft;
  // What can hurt when a base shares its power, its hangar and its people.
  "circuit-shared": Readonly<Record<never, never>>;
  "generator-outside": Readonly<Record<never, never>>;
  "moving-aircraft": Readonly<Record<never, never>>;
  "cart-rejected": { cart: string; why: Finding };
  "lift-outlet": { circuit: string; number: number };
  "lift-breaker": { circuit: string; current_a: number };
  "lift-generator": { circuit: string };
  "lift-bay": { number: number };
  "lift-cart": { heater: string };
  "lift-people": Readonly<Record<never, never>>;
  /** Several together. */
  "lift-all": { lifts: readonly Finding[] };
}
