import { oilById } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import { oilGradeAdvice } from "../starting/index.js";
import { celsiusFromKelvin } from "../units/index.js";
import { weatherAt } from "../weather/index.js";
import type { AircraftScenario } from "./aircraft-scenario.js";

/** A reason to look before any chance counts. */
export interface LookFirst {
  readonly code: "no-battery" | "oil-unlisted";
  readonly text: Finding;
  readonly source: string;
}

/** What must be put right or looked up before any chance counts: no battery, or an oil that no table lists for this cold. */
export function lookFirst({ scenario, batteryFitted }: AircraftScenario, departure: number): LookFirst[] {
  const found: LookFirst[] = [];
  if (!batteryFitted) {
    found.push({
      code: "no-battery",
      text: finding("no-battery", {}),
      source: "as the aircraft was described",
    });
  }
  const { tempAir } = weatherAt(scenario.weather, scenario.start + departure);
  const advice = oilGradeAdvice(oilById(scenario.installation.oil.oil_id), tempAir);
  if (!advice.listed) {
    found.push({
      code: "oil-unlisted",
      text: finding("oil-unlisted", {
        grade: advice.grade,
        air_c: celsiusFromKelvin(tempAir),
        listed: advice.dispersant,
      }),
      source: advice.source,
    });
  }
  return found;
}
