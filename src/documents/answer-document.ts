import type { PlanLine, PlugInAnswer } from "../planning/index.js";
import { type AircraftScenario, lookFirst } from "../scenario/index.js";
import { JOULE_OF_KILOWATT_HOUR, SECONDS_OF_HOUR } from "../units/index.js";
import { criteriaDocument } from "./criterion-document.js";
import { rounded, stampOf } from "./result-header.js";
import type { PlanDocument } from "./result-schema.js";

/** The part of a plan that is known as soon as the plug-in is decided: laid over the plan before it, it is whole again. */
export type AnswerDocument = Pick<
  PlanDocument,
  | "status"
  | "message"
  | "look_first"
  | "aim"
  | "lines"
  | "heat_needed"
  | "barred"
  | "heating"
  | "plug_in"
  | "unplug"
  | "cover_off"
  | "departure"
  | "wanted_chance"
  | "chance"
  | "warm_chance"
  | "chance_error"
  | "weakest"
  | "criteria"
  | "too_hot"
  | "energy_kwh"
>;

export function answerDocument(
  answer: PlugInAnswer,
  wantedChance: number,
  read: AircraftScenario,
): AnswerDocument {
  const at = (t: number) => stampOf(read, t);
  const first = lookFirst(read, answer.departure);
  const { low, mid, high } = answer.energy;
  return {
    status: answer.status !== "not-reachable" && first.length > 0 ? "look-first" : answer.status,
    message: answer.message,
    look_first: first,
    aim: answer.aim,
    lines: {
      least: lineDocument(answer.lines.least, read),
      warm_through: lineDocument(answer.lines.warmThrough, read),
    },
    heat_needed: answer.heatNeeded,
    barred: answer.barred.map(({ heater: { id, name }, reason }) => ({ id, name, reason })),
    heating: heatingDocument(answer, read),
    plug_in: answer.plugIn === undefined ? null : at(answer.plugIn),
    unplug: at(answer.unplug),
    cover_off: at(answer.coverOff),
    departure: at(answer.departure),
    wanted_chance: wantedChance,
    chance: answer.chance,
    warm_chance: answer.warmChance,
    chance_error: rounded(answer.chanceError, 4),
    weakest: answer.weakest.criterion.id,
    criteria: criteriaDocument(answer.verdict),
    too_hot: answer.verdict.tooHot.map((v) => v.criterion.id),
    energy_kwh: { p05: kwh(low), p50: kwh(mid), p95: kwh(high) },
  };
}

export function kwh(joules: number): number {
  return rounded(joules / JOULE_OF_KILOWATT_HOUR, 3);
}

function lineDocument({ reached, plugIn, chance, energy }: PlanLine, read: AircraftScenario) {
  return {
    reached,
    plug_in: plugIn === undefined ? null : stampOf(read, plugIn),
    chance,
    energy_kwh: kwh(energy),
  };
}

function heatingDocument({ heating }: PlugInAnswer, read: AircraftScenario): PlanDocument["heating"] {
  if (heating === undefined) return null;
  const { heaters, onFor, longest, staysOn, wet } = heating;
  return {
    heaters: heaters.map(({ id }) => id),
    since: onFor === undefined ? null : stampOf(read, -onFor),
    on_h: onFor === undefined ? null : rounded(onFor / SECONDS_OF_HOUR, 2),
    longest_on_h: longest / SECONDS_OF_HOUR,
    stays_on: staysOn,
    wet_h: wet === undefined ? null : rounded(wet / SECONDS_OF_HOUR, 1),
  };
}
