import type { Finding } from "../../../findings/index.js";
import { english } from "../../../words/index.js";
import { type KnownPlan, knownPlan, type PlanState } from "../../data/plan-state.js";
import { criterionValue } from "../../units/units.js";
import type { Words } from "../../words/en.js";
import type { Said } from "../../words/said.js";
import type { AircraftView } from "../../worker/protocol.js";
import { timeOf } from "./night-model.js";

/** What to do, in one sentence, and what else has to be said of it. */
export interface Sentence {
  readonly main: string;
  readonly beside: string;
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
  return { main: verdictOf(name, plan, w, say), beside: "" };
}

/** The first line: what to do and with what chance. */
export function verdictOf(name: string, plan: KnownPlan, w: Words, say: Said): string {
  const { at } = say;
  const { status, plug_in, heating } = plan;
  const [unplug, start, odds] = [at(plan.unplug), at(plan.departure), say.odds(plan.chance)];
  if (status === "look-first") {
    const look = plan.look_first.map(({ code, text }) => w.night.look[code] ?? say.told(text));
    return w.night.lookFirst(name, look.join(" "));
  }
  if (status === "not-reachable") return w.night.notReady(name, start, odds, say.odds(plan.wanted_chance));
  if (status === "not-required") return w.night.notRequired(name, start, odds);
  if (plug_in === null) {
    return heating?.stays_on === true
      ? w.night.heatIsOn(name, unplug, start, odds)
      : w.night.noHeat(name, start, odds);
  }
  const first = heating === null || heating.stays_on ? "" : `${w.night.unplugNow} `;
  const isNow = timeOf(plug_in) - say.now < 60_000;
  const text = isNow
    ? w.night.plugInNow(name, unplug, start, odds)
    : w.night.plugIn(name, at(plug_in), unplug, start, odds);
  return first + text;
}

/** @example "Weakest point: crankshaft and bearings." */
export function weakestWords(plan: KnownPlan, w: Words): string {
  return w.night.weakestIs(weakestTitle(plan, w));
}

function weakestTitle({ weakest, criteria }: KnownPlan, w: Words): string {
  return criterionTitle(weakest, criteria.find(({ id }) => id === weakest)?.title ?? weakest, w);
}

/** @example "cranking speed: 98 rpm, 1 in 20 slower than 42 rpm; needed 60 rpm" */
export function weakestText(plan: KnownPlan, w: Words, { units }: Said): string {
  const found = plan.criteria.find(({ id }) => id === plan.weakest);
  const title = weakestTitle(plan, w);
  if (found === undefined) return title;
  const { value, limit, unit, direction } = found;
  const shown = (x: number) => criterionValue(x, unit, units);
  if (direction === "at-most")
    return w.night.tooMuchOf(title, shown(value.p50), shown(value.p95), shown(limit));
  const worse = unit === "c" ? w.night.colder : unit === "rpm" ? w.night.slower : w.night.less;
  return w.night.tooLittleOf(title, shown(value.p50), worse, shown(value.p05), shown(limit));
}

export function criterionTitle(id: string, title: string | Finding, w: Words): string {
  return (w.criteria as Readonly<Record<string, string>>)[id] ?? english(title);
}
