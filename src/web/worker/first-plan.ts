import { criteriaDocument } from "../../documents/criterion-document.js";
import type { PlanDocument, ReadScenario } from "../../documents/index.js";
import { rounded, stampOf } from "../../documents/result-header.js";
import type { PlugInAnswer } from "../../planning/index.js";
import { JOULE_OF_KILOWATT_HOUR } from "../../units/index.js";

/** The part of a plan that is known before the rest: laid over the plan before it, it is a whole plan again. */
export type FirstPlan = Pick<
  PlanDocument,
  | "status"
  | "message"
  | "members"
  | "heat_needed"
  | "plug_in"
  | "unplug"
  | "cover_off"
  | "departure"
  | "wanted_chance"
  | "chance"
  | "chance_error"
  | "weakest"
  | "criteria"
  | "too_hot"
  | "energy_kwh"
>;

export function firstPlan(
  answer: PlugInAnswer,
  wantedChance: number,
  members: number,
  read: ReadScenario,
): FirstPlan {
  const at = (t: number) => stampOf(read, t);
  const kwh = (joules: number) => rounded(joules / JOULE_OF_KILOWATT_HOUR, 3);
  const { low, mid, high } = answer.energy;
  return {
    status: answer.status,
    message: answer.message,
    members,
    heat_needed: answer.heatNeeded,
    plug_in: answer.plugIn === undefined ? null : at(answer.plugIn),
    unplug: at(answer.unplug),
    cover_off: at(answer.coverOff),
    departure: at(answer.departure),
    wanted_chance: wantedChance,
    chance: answer.chance,
    chance_error: rounded(answer.chanceError, 4),
    weakest: answer.verdict.weakest.criterion.id,
    criteria: criteriaDocument(answer.verdict),
    too_hot: answer.verdict.tooHot.map((v) => v.criterion.id),
    energy_kwh: { p05: kwh(low), p50: kwh(mid), p95: kwh(high) },
  };
}
