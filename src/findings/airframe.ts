/** What was taken for granted, without values. */
type PlainAssumption =
  | "skin-at-air"
  | "inside-as-skin"
  | "open-sky"
  | "ground-at-air"
  | "no-sun-or-snowfall"
  | "outside-constant-door-shut"
  | "hangar-damp-as-outside"
  | "no-fan"
  | "melt-water-swept"
  | "melt-water-stays"
  | "weather-constant-no-sun"
  | "fittings-as-skin"
  | "standard-lapse"
  | "climb-damp-no-cloud"
  | "no-supercooling";

interface Described {
  readonly name: string;
  readonly origin: string;
}

/** Findings: frost, thaw, drying and freezing again. Code to its values; keys carry their unit. */
export type AirframeFindings = Readonly<Record<PlainAssumption, Record<never, never>>> & {
  readonly "panel-taken": Described;
  readonly "gap-taken": Described;
  readonly "wing-cover-taken": { readonly origin: string };
};
