import type { Measure, PlanningFindings } from "../../findings/index.js";
import type { Phrases, Say } from "../phrases.js";

const TRIED = {
  earliest: "even plugged in at the earliest moment allowed",
  "at-best": "at best",
  "heat-left-on": "with the heat left on",
  "no-heater": "without a heater",
  "no-heater-allowed": "without a heater that may run here",
  "too-late": "too late to heat long enough: without heat",
  "without-heat": "without heat",
} as const;

export const planning: Phrases<PlanningFindings> = {
  "plan-too-hot": ({ criterion, over_k }, say) =>
    `${say.finding(criterion)} would get too hot: ${say.difference(over_k, 0)} over its limit in the middle estimate`,
  "plan-unsure": ({ tried, chance, wanted, criterion, ok, margin }, say) =>
    `${TRIED[tried]} the chance is ${say.odds(chance)}, not ${say.odds(wanted)}; ` +
    `${say.finding(criterion)}: OK in ${say.number(100 * ok)} of 100, ${away(margin, say)} in the middle case`,
  "was-stopped": () => "it was stopped",
  "not-calculated": ({ remedy }) => remedy,
  "trials-not-calculated": () => "a trial of what would help could not be calculated",
  "no-forecast-entered": () => "no forecast was entered: there is no weather to plan with",
  "departure-too-far": ({ most_h }) => `the departure is more than ${most_h} h ahead: too far to plan`,
  "no-departure-wanted": () => "no departure is wanted",
  "no-forecast-reaches": ({ until, hours, forecasts }, say) =>
    `no forecast reaches from now to ${until === null ? `${hours} h ahead` : say.dayAndClock(until)}: ${forecasts.map(say.finding).join(" | ")}`,
  "forecast-not-used": ({ origin, why }, say) => `${origin}: ${say.finding(why)}`,
  "forecast-names-file": () => "it names a file, which a logbook does not hold",
  "no-forecast-of-then": () => "no forecast says anything of this time",
  "weather-known-until": ({ at, wanted }, say) =>
    `the weather is known up to ${say.dayAndClock(at)} only, not up to ${say.dayAndClock(wanted)}`,
  "weather-known-from": ({ at }, say) => `the weather is known from ${say.dayAndClock(at)} on only`,
  "plan-ready": () => "ready with the chance wanted",
  "plan-not-required": () => "preheat not required: past the maker's limit without heat",
  "help-cover": ({ cover }) => `put on now: ${cover}`,
  "help-heater": ({ heater }) => `heat with: ${heater}`,
  "help-hangar": ({ air_c }, say) => `bring it into the hangar (${say.temp(air_c)}) now`,
};

/** @example "12.1 K short", "3.2 K to spare" */
function away({ value, unit }: Measure, say: Say): string {
  return `${say.measure({ value: Math.abs(value), unit })} ${value < 0 ? "short" : "to spare"}`;
}
