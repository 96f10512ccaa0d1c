import type { PlanDocument } from "../../../documents/index.js";
import type { KnownPlan } from "../../data/plan-state.js";
import type { Words } from "../../words/en.js";
import type { Said } from "../../words/said.js";
import type { AircraftView } from "../../worker/protocol.js";
import { HOUR, usedHeaters } from "./night-model.js";
import { weakestText } from "./sentence.js";

/** A line of the first screen: a label and one or two short sentences. */
export interface Fact {
  readonly label: string;
  readonly texts: readonly string[];
  /** Where the texts are not in the user's language. */
  readonly language?: "en";
}

/** The first screen of a plan in the order in which it is needed; the same lines as the command line's. */
export function factsOf(aircraft: AircraftView, plan: KnownPlan, w: Words, say: Said): Fact[] {
  const f = w.night.facts;
  const of = { plan, w, say };
  const weakest = { label: f.weakest, texts: [weakestText(plan, w, say)] };
  const stay = { label: f.stay, texts: [attendance(aircraft, plan, w)] };
  if (plan.status === "not-reachable") {
    return [
      ...lookFirst(of),
      ...heatOn(aircraft, of),
      best(of),
      why(of),
      weakest,
      ...barredFacts(of),
      ...helpFacts(of),
      stay,
    ];
  }
  const isHeated = plan.plug_in !== null || plan.heating?.stays_on === true;
  return [
    ...heatOn(aircraft, of),
    ...plugIn(of),
    ...(isHeated ? [unplug(of)] : []),
    ...covers(of),
    { label: f.chance, texts: [chanceText(plan, of)] },
    weakest,
    stay,
    ...barredFacts(of),
    ...lines(of),
    ...quarter(of),
  ];
}

function chanceText({ status, chance, warm_chance }: KnownPlan, { w, say }: Facts): string {
  const f = w.night.facts;
  const text = f.chances(say.odds(chance), say.odds(warm_chance));
  return status === "look-first" ? f.oncePutRight(text) : text;
}

interface Facts {
  readonly plan: KnownPlan;
  readonly w: Words;
  readonly say: Said;
}

function heatOn({ heatingSince }: AircraftView, of: Facts): Fact[] {
  const { plan, w, say } = of;
  const { heating, plug_in } = plan;
  const f = w.night.facts;
  if (heating === null) return [];
  // A plug that went in this very minute is known to the logbook only.
  const onFor = heating.on_h ?? (heatingSince === undefined ? undefined : (say.now - heatingSince) / HOUR);
  const on =
    onFor === undefined ? f.sinceUnknown : f.onFor(of.say.span(onFor), of.say.span(heating.longest_on_h));
  const wet =
    heating.wet_h === null || heating.wet_h < WORTH_SAYING_H ? "" : f.wet(of.say.span(heating.wet_h));
  const next = heating.stays_on
    ? f.staysOn(of.say.at(plan.unplug))
    : plug_in === null
      ? f.offNow
      : f.offThenOn;
  return [{ label: f.heatOn, texts: [`${on}${wet}; ${next}`] }];
}

/** [h] wet inside that is worth a word. */
const WORTH_SAYING_H = 0.5;

function plugIn(of: Facts): Fact[] {
  const { plan, w } = of;
  const f = w.night.facts;
  if (plan.plug_in === null) {
    if (plan.heating !== null) return [];
    return [{ label: f.plugIn, texts: [plan.status === "not-required" ? f.notRequired : f.withoutHeat] }];
  }
  const text = plan.aim === "least" ? f.latestLeast : f.latestWarm;
  return [{ label: f.plugIn, texts: [text(of.say.at(plan.plug_in))] }];
}

function unplug(of: Facts): Fact {
  const { plan, w } = of;
  const f = w.night.facts;
  const minutes = Math.round((plan.departure.at_h - plan.unplug.at_h) * 60);
  return { label: f.unplug, texts: [f.before(of.say.at(plan.unplug), minutes)] };
}

/** Covers off and out, with the time that is left from then on. */
function covers(of: Facts): Fact[] {
  const { plan, w } = of;
  const f = w.night.facts;
  const { start_within_min: within, happenings, stay_warm } = plan;
  if (within === undefined || happenings === undefined || stay_warm === undefined)
    return [waiting(f.afterwards, w)];
  if (within === null) return [];
  const { sure_h, horizon_h } = stay_warm.uncovered;
  const left =
    sure_h >= horizon_h - 1e-3 ? f.staysReady(of.say.span(horizon_h)) : f.startWithin(shortSpan(within, of));
  const acts = [
    ...(happenings.some((h) => h.do === "cover_off") ? [f.coversOff] : []),
    ...(happenings.some((h) => h.do === "move" && h.at_h === plan.cover_off.at_h && h.what === "ramp")
      ? [f.pullOut]
      : []),
  ].join(", ");
  return [
    {
      label: f.afterwards,
      texts: [acts === "" ? left : f.actsThen(acts, of.say.at(plan.cover_off), left)],
    },
  ];
}

/** Whole minutes, later whole five minutes, never more than there are. */
function shortSpan(minutes: number, { say }: Facts): string {
  return minutes <= 90 ? `${minutes} min` : say.span((5 * Math.floor(minutes / 5)) / 60);
}

function attendance(aircraft: AircraftView, plan: KnownPlan, w: Words): string {
  const f = w.night.facts;
  if (plan.plug_in === null && plan.heating === null) return f.nobody;
  const watched = usedHeaters(aircraft, plan).filter(({ attended }) => attended);
  return watched.length === 0 ? f.lookOnce : f.somebody(watched.map(({ name }) => name).join(", "));
}

function best(of: Facts): Fact {
  const { plan, w } = of;
  const f = w.night.facts;
  if (plan.plug_in !== null) return { label: f.best, texts: [f.bestPlugIn(of.say.at(plan.plug_in))] };
  return { label: f.best, texts: [plan.heating?.stays_on ? f.leaveOn : f.noHeatUsed] };
}

/** What must be put right or looked up as well; where it would be ready otherwise the headline says it. */
function lookFirst({ plan, w, say }: Facts): Fact[] {
  if (plan.look_first.length === 0) return [];
  const texts = plan.look_first.map(({ text }) => say.told(text));
  return [{ label: w.night.facts.lookFirst, texts, language: "en" }];
}

function why({ plan, w, say }: Facts): Fact {
  return { label: w.night.facts.why, texts: [say.told(plan.message ?? "")] };
}

function barredFacts({ plan, w }: Facts): Fact[] {
  const f = w.night.facts;
  if (plan.barred.length === 0) return [];
  return [{ label: f.notUsed, texts: plan.barred.map(({ name, reason }) => f.barred[reason](name)) }];
}

/** Remedies shown. */
const MOST_HELP = 3;

function helpFacts(of: Facts): Fact[] {
  const { plan, w } = of;
  const f = w.night.facts;
  if (plan.remedies === undefined) return [waiting(f.wouldHelp, w)];
  if (plan.remedies.length === 0) return [{ label: f.wouldHelp, texts: [f.nothingHelps] }];
  const texts = plan.remedies.slice(0, MOST_HELP).map(({ text, chance, plug_in, attended }) => {
    const when = plug_in === null ? "" : f.helpPlugIn(of.say.at(plug_in));
    return `${of.say.told(text)}: ${of.say.odds(chance)}${when}${attended ? f.helpStay : ""}`;
  });
  return [{ label: f.wouldHelp, texts }];
}

/** Both lines, for the owner to choose. */
function lines(of: Facts): Fact[] {
  const { plan, w } = of;
  const { lines: both, aim, heating } = plan;
  const f = w.night.facts;
  const isSettled = both.least.plug_in === null && both.warm_through.plug_in === null;
  if (heating?.stays_on === true && isSettled) return [];
  const one = ({ reached, plug_in, chance, energy_kwh }: PlanDocument["lines"]["least"]) => {
    const odds = of.say.odds(chance);
    const at =
      plug_in === null ? (reached ? f.withoutHeat : f.notWithoutHeat) : f.plugInAt(of.say.at(plug_in));
    const kwh = plug_in === null ? "" : `, ${of.say.number(energy_kwh, 1)}\u00a0kWh`;
    return `${at}, ${reached ? odds : f.atBest(odds)}${kwh}`;
  };
  const isHeated = plan.plug_in !== null;
  const mark = (of: typeof aim) => (isHeated && aim === of ? f.planned : "");
  return [
    {
      label: f.choice,
      texts: [
        `${f.least}: ${one(both.least)}${mark("least")}`,
        `${f.warmThrough}: ${one(both.warm_through)}${mark("warm-through")}`,
      ],
    },
  ];
}

function quarter({ plan, w, say }: Facts): Fact[] {
  const f = w.night.facts;
  const { quarter_more: more } = plan;
  if (more === undefined) return [waiting(f.quarterMore, w)];
  if (more === null) return [];
  return [{ label: f.quarterMore, texts: [f.chances(say.odds(more.chance), say.odds(more.warm_chance))] }];
}

/** What only the whole plan says, while it is worked out. */
function waiting(label: string, w: Words): Fact {
  return { label, texts: [w.night.facts.working] };
}
