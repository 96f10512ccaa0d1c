import type { PlanningFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

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
    `${TRIED[tried]} the chance is ${say.percent(chance)}, not ${say.percent(wanted)}: ` +
    `${say.finding(criterion)} is OK in ${say.number(100 * ok)} of 100, its median margin is ${say.measure(margin)}`,
  "help-cover": ({ cover }) => `put on now: ${cover}`,
  "help-heater": ({ heater }) => `heat with: ${heater}`,
  "help-hangar": ({ air_c }, say) => `bring it into the hangar (${say.temp(air_c)}) now`,
};
