import type { PlanDocument, ScenarioDocument } from "../../src/documents/index.js";
import { planFromDocument } from "../../src/questions/index.js";
import type { Advice } from "./heat-spans.js";
import { isoAt, MEMBERS } from "./made-scenarios.js";
import { readOf } from "./replay.js";

/** A frosty evening on the ramp under a cover: a whole-engine set, departure in eight hours. */
export function night(change: Partial<ScenarioDocument> = {}): ScenarioDocument {
  return {
    soakline: 2,
    name: "night",
    aircraft: "four-carburettor-160",
    kit: { heaters: ["whole-engine-4"], covers: ["insulated-cover"] },
    start: isoAt(0),
    zone: "CET",
    hours: 10,
    place: "ramp",
    fitted: { covers: ["insulated-cover"] },
    weather: { points: [-6, 0, 10].map((at_h) => ({ at_h, air_c: -15, wind_mps: 3, dew_point_c: -18 })) },
    hangar: { air_c: -12 },
    site: { roughness_m: 0.03 },
    want: wantIn(8),
    ensemble: { members: MEMBERS, seed: 1 },
    ...change,
  };
}

export function wantIn(
  hours: number,
  change: Partial<NonNullable<ScenarioDocument["want"]>> = {},
): NonNullable<ScenarioDocument["want"]> {
  return { departure: isoAt(hours), chance: 0.8, unplug_before_min: 15, cover_off_before_min: 10, ...change };
}

/** Air of one temperature throughout. */
export function airOf(air_c: number, wind_mps = 3): ScenarioDocument["weather"] {
  return { points: [-6, 0, 10].map((at_h) => ({ at_h, air_c, wind_mps, dew_point_c: air_c - 3 })) };
}

export function planOf(document: ScenarioDocument): PlanDocument {
  const outcome = planFromDocument(document);
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

export function adviceOf(document: ScenarioDocument): Advice {
  return { read: readOf(document), plan: planOf(document) };
}
