import type { Configuration } from "../aircraft/index.js";
import type { Timeline } from "../simulation/index.js";
import type { Deviation, FilterState, Suspect } from "./filter-state.js";

/** What is really so when the user's word deviates. */
function deviatingConfiguration(told: Configuration, deviation: Deviation): Configuration {
  switch (deviation) {
    case "heater-not-heating":
      return { ...told, heatersOn: new Set() };
    case "cover-off":
      return { ...told, coversOn: new Set() };
    case "other-place":
      return { ...told, place: told.place === "ramp" ? "hangar" : "ramp" };
  }
}

const timelines = new WeakMap<Timeline, Map<Deviation, Timeline>>();

/** A timeline with a deviation throughout; the same object for the same timeline. */
export function deviating(told: Timeline, deviation: Deviation | undefined): Timeline {
  if (deviation === undefined) return told;
  const known = timelines.get(told) ?? new Map<Deviation, Timeline>();
  timelines.set(told, known);
  const found =
    known.get(deviation) ??
    told.map(({ from, configuration }) => ({
      from,
      configuration: deviatingConfiguration(configuration, deviation),
    }));
  known.set(deviation, found);
  return found;
}

/** Whether a deviation makes any difference to what is told. */
function isConceivable({ heatersOn, coversOn }: Configuration, deviation: Deviation): boolean {
  if (deviation === "heater-not-heating") return heatersOn.size > 0;
  if (deviation === "cover-off") return coversOn.size > 0;
  return true;
}

const DEVIATIONS: readonly Deviation[] = ["heater-not-heating", "cover-off", "other-place"];

/**
 * Belief and suspects for a configuration: a deviation that no longer makes a difference is dropped, one that now does
 * branches off the belief.
 */
export function reviewed(
  { belief, suspects, mean, time }: FilterState,
  told: Configuration,
): Pick<FilterState, "belief" | "suspects"> {
  const holds = belief.deviation === undefined || isConceivable(told, belief.deviation);
  const now: FilterState["belief"] = holds ? belief : { deviation: undefined, since: time };
  const wanted: (Deviation | undefined)[] = [
    ...(now.deviation === undefined ? [] : [undefined]),
    ...DEVIATIONS.filter((d) => d !== now.deviation && isConceivable(told, d)),
  ];
  return {
    belief: now,
    suspects: wanted.map(
      (deviation): Suspect =>
        (holds ? suspects.find((s) => s.deviation === deviation) : undefined) ??
        branched(deviation, mean, time),
    ),
  };
}

export function branched(deviation: Deviation | undefined, mean: readonly number[], since: number): Suspect {
  return { deviation, mean, evidence: 0, since };
}

/** Odds of a deviation before any evidence: one night in a thousand; project judgement. */
const PRIOR_ODDS = 1e-3;

/** Chance of a suspect from its evidence. */
export function chanceOf({ evidence }: Suspect): number {
  const odds = PRIOR_ODDS * Math.exp(evidence);
  return odds / (1 + odds);
}

/** Chance from which the filter believes a suspect. */
export const BELIEVED = 0.99;
