import { oilById } from "../aircraft/index.js";
import { oilGradeAdvice } from "../starting/index.js";
import { weatherAt } from "../weather/index.js";
import type { PlanDocument } from "./result-schema.js";
import type { ReadScenario } from "./scenario-reading.js";

/** What must be put right or looked up before any chance counts: no battery, or an oil that no table lists for this cold. */
export function lookFirst(
  { scenario, batteryFitted }: ReadScenario,
  departure: number,
): PlanDocument["look_first"] {
  const found: PlanDocument["look_first"] = [];
  if (!batteryFitted) {
    found.push({
      code: "no-battery",
      text: "No battery is in the aircraft. Fit it warm and charged before the start.",
      source: "as the aircraft was described",
    });
  }
  const { tempAir } = weatherAt(scenario.weather, scenario.start + departure);
  const advice = oilGradeAdvice(oilById(scenario.installation.oil.oil_id), tempAir);
  if (!advice.listed) {
    found.push({
      code: "oil-unlisted",
      text: `Oil: ${advice.text}. Look in your engine maker's table.`,
      source: advice.source,
    });
  }
  return found;
}
