import { type AnswerDocument, answerDocument } from "../../documents/index.js";
import type { PlugInAnswer } from "../../planning/index.js";
import type { AircraftScenario } from "../../scenario/index.js";

/** The part of a plan that is known before the rest: laid over the plan before it, it is a whole plan again. */
export type FirstPlan = AnswerDocument & { readonly members: number };

export function firstPlan(
  answer: PlugInAnswer,
  wantedChance: number,
  members: number,
  read: AircraftScenario,
): FirstPlan {
  return { ...answerDocument(answer, wantedChance, read), members };
}
