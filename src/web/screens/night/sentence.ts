import { type KnownPlan, knownPlan, type PlanState } from "../../data/plan-state.js";
import { clockBeside } from "../../units/times.js";
import { inUnits, type Units } from "../../units/units.js";
import type { Words } from "../../words/en.js";
import type { AircraftView } from "../../worker/protocol.js";
import { timeOf } from "./night-model.js";

/** Where, when and in which units it is said. */
interface Place {
  readonly zone: string;
  readonly language: string;
  readonly units: Units;
  readonly now: number;
}

/** What to do, in one sentence, and what it hangs on, in another. */
export interface Sentence {
  readonly main: string;
  readonly beside: string;
}

/** The answer for one aircraft in plain words. */
export function sentenceOf(
  aircraft: AircraftView,
  state: PlanState | undefined,
  w: Words,
  place: Place,
): Sentence {
  const { name } = aircraft;
  const plan = knownPlan(state);
  if (aircraft.running) return { main: w.night.running(name), beside: "" };
  if (aircraft.departures.length === 0)
    return { main: w.night.nothingWanted(name), beside: w.night.chooseTime };
  if (state?.reasons !== undefined)
    return { main: w.night.noPlan(name), beside: inUnits(state.reasons.join(" "), place.units) };
  if (plan === undefined) return { main: w.night.working(name), beside: "" };
  const at = (time: number) => clockBeside(time, place.now, place.zone, place.language);
  const ready = at(timeOf(plan.departure));
  const odds = w.odds(plan.chance);
  const binds = weakestWords(plan, w);
  if (plan.status === "not-reachable") {
    const [remedy] = plan.remedies ?? [];
    const nothing = state?.isBusy ? "" : w.night.nothingHelps;
    const help =
      remedy === undefined
        ? nothing
        : w.night.wouldHelp(inUnits(remedy.text, place.units), w.odds(remedy.chance));
    return { main: w.night.notReady(name, ready, odds), beside: `${binds} ${help}` };
  }
  if (aircraft.heatersOn.length > 0) {
    return { main: w.night.pluggedIn(name, at(timeOf(plan.unplug)), odds, ready), beside: binds };
  }
  if (plan.plug_in === null) return { main: w.night.noHeat(name, odds, ready), beside: binds };
  const plugIn = timeOf(plan.plug_in);
  const main =
    plugIn - place.now < 60_000
      ? w.night.plugInNow(name, odds, ready)
      : w.night.plugIn(name, at(plugIn), odds, ready);
  return { main, beside: `${w.night.unplugAt(at(timeOf(plan.unplug)))} ${binds}` };
}

/** What decides, in the user's language where the criterion is known by name. */
export function weakestWords({ weakest, criteria }: KnownPlan, w: Words): string {
  const title = criterionTitle(weakest, criteria.find(({ id }) => id === weakest)?.title ?? weakest, w);
  return w.night.decides(title);
}

export function criterionTitle(id: string, title: string, w: Words): string {
  return (w.criteria as Readonly<Record<string, string>>)[id] ?? title;
}
