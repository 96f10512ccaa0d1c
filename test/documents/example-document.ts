import type { ScenarioDocument } from "../../src/documents/index.js";
import { readScenarioDocument } from "../../src/documents/index.js";
import type { ReadScenario } from "../../src/documents/scenario-reading.js";

/** Weather that does not change, with no gap long enough to be warned of. */
export function steady(from: number, to: number) {
  const hours = Array.from({ length: (to - from) / 2 + 1 }, (_, i) => from + 2 * i);
  return hours.map((at_h) => ({ at_h, air_c: -15, wind_mps: 1, dew_point_c: -18, cloud_fraction: 0.5 }));
}

/** A plain document that has everything it needs; tests change what they are about. */
export const EXAMPLE: ScenarioDocument = {
  soakline: 2,
  name: "Example",
  aircraft: "four-carburettor-160",
  kit: { heaters: ["whole-engine-4"], covers: ["insulated-cover"] },
  start: "2026-01-14T18:00+01:00",
  zone: "Europe/Oslo",
  hours: 20,
  place: "ramp",
  fitted: { covers: ["insulated-cover"] },
  initial: { all_c: -15, uncertainty_k: 1 },
  weather: {
    points: steady(0, 20),
  },
  hangar: { air_c: 5 },
  site: { roughness_m: 0.03 },
  want: {
    departure: "10:00",
    chance: 0.8,
    unplug_before_min: 15,
    cover_off_before_min: 10,
    pulled_out: false,
  },
  ensemble: { members: 40, seed: 1 },
};

export function readExample(changes: Partial<Record<keyof ScenarioDocument, unknown>> = {}): ReadScenario {
  const reading = readScenarioDocument({ ...EXAMPLE, ...changes });
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

export function issuesOf(changes: Partial<Record<keyof ScenarioDocument | string, unknown>>) {
  const reading = readScenarioDocument({ ...EXAMPLE, ...changes });
  if (reading.ok) throw new Error("the document was accepted");
  return reading.issues;
}
