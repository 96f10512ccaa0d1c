import { type Finding, finding, type Label } from "../../../findings/index.js";
import { type FirstScreen, type KnownPlan, planScreen } from "../../../first-screen/index.js";
import { knownPlan, type PlanState } from "../../data/plan-state.js";
import type { Words } from "../../words/en.js";
import type { Said } from "../../words/said.js";
import type { AircraftView } from "../../worker/protocol.js";
import { HOUR, usedHeaters } from "./night-model.js";

/** What to do, in one sentence, and what else has to be said of it. */
export interface Sentence {
  readonly main: string;
  readonly beside: string;
}

/** The first screen of a plan, with what only the logbook knows of the aircraft. */
export function screenOf(aircraft: AircraftView, plan: KnownPlan, { now }: Said): FirstScreen {
  const { heatingSince } = aircraft;
  const onFor = heatingSince === undefined ? undefined : (now - heatingSince) / HOUR;
  return planScreen(plan, { now, onFor, heaters: usedHeaters(aircraft, plan) });
}

/** The answer for one aircraft in plain words. */
export function sentenceOf(
  aircraft: AircraftView,
  state: PlanState | undefined,
  w: Words,
  say: Said,
): Sentence {
  const { name } = aircraft;
  const plan = knownPlan(state);
  if (aircraft.running) return { main: w.night.running(name), beside: "" };
  if (aircraft.departures.length === 0)
    return { main: w.night.nothingWanted(name), beside: w.night.chooseTime };
  if (state?.reasons !== undefined)
    return { main: w.night.noPlan(name), beside: state.reasons.map(say.told).join(" ") };
  if (plan === undefined) return { main: w.night.working(name), beside: "" };
  return { main: namedVerdict(name, screenOf(aircraft, plan, say), say), beside: "" };
}

/** The verdict of one aircraft of several. @example "Lynx: plug in at 09:10, unplug at 09:50, ..." */
export function namedVerdict(name: string, { verdict }: FirstScreen, say: Said): string {
  const text = verdict.map(say.told).join(" ");
  return `${name}: ${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}

/** What a label stands before, in one sentence. @example "Weakest point: crankshaft and bearings." */
export function labelled(of: Label, texts: readonly Finding[], say: Said): string {
  return `${say.told(finding("label", { of }))}: ${texts.map(say.told).join("; ")}.`;
}
