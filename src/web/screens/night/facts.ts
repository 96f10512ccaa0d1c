import type { PlanDocument } from "../../../documents/index.js";
import type { KnownPlan } from "../../data/plan-state.js";
import { clockBeside } from "../../units/times.js";
import { inUnits, numberText } from "../../units/units.js";
import type { Words } from "../../words/en.js";
import type { AircraftView } from "../../worker/protocol.js";
import { HOUR, timeOf, usedHeaters } from "./night-model.js";
import { type Reader, weakestText } from "./sentence.js";

/** A line of the first screen: a label and one or two short sentences. */
export interface Fact {
  readonly label: string;
  readonly texts: readonly string[];
  /** Where the texts are not in the user's language. */
  readonly language?: "en";
}

type Stamp = PlanDocument["departure"];

/** The first screen of a plan in the order in which it is needed; the same lines as the command line's. */
export function factsOf(aircraft: AircraftView, plan: KnownPlan, w: Words, reader: Reader): Fact[] {
  const f = w.night.facts;
  const say = { plan, w, reader };
  const weakest = { label: f.weakest, texts: [weakestText(plan, w, reader.units)] };
  const stay = { label: f.stay, texts: [attendance(aircraft, plan, w)] };
  if (plan.status === "not-reachable") {
    return [
      ...lookFirst(say),
      ...heatOn(aircraft, say),
      best(say),
      why(say),
      weakest,
      ...barredFacts(say),
      ...helpFacts(say),
      stay,
    ];
  }
  const isHeated = plan.plug_in !== null || plan.heating?.stays_on === true;
  return [
    ...heatOn(aircraft, say),
    ...plugIn(say),
    ...(isHeated ? [unplug(say)] : []),
    ...covers(say),
    { label: f.chance, texts: [chanceText(plan, w)] },
    weakest,
    stay,
    ...barredFacts(say),
    ...lines(say),
    ...quarter(say),
  ];
}

function chanceText({ status, chance, warm_chance }: KnownPlan, w: Words): string {
  const f = w.night.facts;
  const text = f.chances(w.odds(chance), w.odds(warm_chance));
  return status === "look-first" ? f.oncePutRight(text) : text;
}

interface Said {
  readonly plan: KnownPlan;
  readonly w: Words;
  readonly reader: Reader;
}

function clock({ reader: { now, zone, language } }: Said, stamp: Stamp): string {
  return clockBeside(timeOf(stamp), now, zone, language);
}

function heatOn({ heatingSince }: AircraftView, said: Said): Fact[] {
  const { plan, w, reader } = said;
  const { heating, plug_in } = plan;
  const f = w.night.facts;
  if (heating === null) return [];
  // A plug that went in this very minute is known to the logbook only.
  const onFor = heating.on_h ?? (heatingSince === undefined ? undefined : (reader.now - heatingSince) / HOUR);
  const on = onFor === undefined ? f.sinceUnknown : f.onFor(w.span(onFor), w.span(heating.longest_on_h));
  const wet = heating.wet_h === null || heating.wet_h < WORTH_SAYING_H ? "" : f.wet(w.span(heating.wet_h));
  const next = heating.stays_on
    ? f.staysOn(clock(said, plan.unplug))
    : plug_in === null
      ? f.offNow
      : f.offThenOn;
  return [{ label: f.heatOn, texts: [`${on}${wet}; ${next}`] }];
}

/** [h] wet inside that is worth a word. */
const WORTH_SAYING_H = 0.5;

function plugIn(said: Said): Fact[] {
  const { plan, w } = said;
  const f = w.night.facts;
  if (plan.plug_in === null) {
    if (plan.heating !== null) return [];
    return [{ label: f.plugIn, texts: [plan.status === "not-required" ? f.notRequired : f.withoutHeat] }];
  }
  const text = plan.aim === "least" ? f.latestLeast : f.latestWarm;
  return [{ label: f.plugIn, texts: [text(clock(said, plan.plug_in))] }];
}

function unplug(said: Said): Fact {
  const { plan, w } = said;
  const f = w.night.facts;
  const minutes = Math.round((plan.departure.at_h - plan.unplug.at_h) * 60);
  return { label: f.unplug, texts: [f.before(clock(said, plan.unplug), minutes)] };
}

/** Covers off and out, with the time that is left from then on. */
function covers(said: Said): Fact[] {
  const { plan, w } = said;
  const f = w.night.facts;
  const { start_within_min: within, happenings, stay_warm } = plan;
  if (within === undefined || happenings === undefined || stay_warm === undefined)
    return [waiting(f.afterwards, w)];
  if (within === null) return [];
  const { sure_h, horizon_h } = stay_warm.uncovered;
  const left =
    sure_h >= horizon_h - 1e-3 ? f.staysReady(w.span(horizon_h)) : f.startWithin(shortSpan(within, w));
  const acts = [
    ...(happenings.some((h) => h.do === "cover_off") ? [f.coversOff] : []),
    ...(happenings.some((h) => h.do === "move" && h.at_h === plan.cover_off.at_h && h.what === "ramp")
      ? [f.pullOut]
      : []),
  ].join(", ");
  return [
    {
      label: f.afterwards,
      texts: [acts === "" ? left : f.actsThen(acts, clock(said, plan.cover_off), left)],
    },
  ];
}

/** Whole minutes, later whole five minutes, never more than there are. */
function shortSpan(minutes: number, w: Words): string {
  return minutes <= 90 ? `${minutes} min` : w.span((5 * Math.floor(minutes / 5)) / 60);
}

function attendance(aircraft: AircraftView, plan: KnownPlan, w: Words): string {
  const f = w.night.facts;
  if (plan.plug_in === null && plan.heating === null) return f.nobody;
  const watched = usedHeaters(aircraft, plan).filter(({ attended }) => attended);
  return watched.length === 0 ? f.lookOnce : f.somebody(watched.map(({ name }) => name).join(", "));
}

function best(said: Said): Fact {
  const { plan, w } = said;
  const f = w.night.facts;
  if (plan.plug_in !== null) return { label: f.best, texts: [f.bestPlugIn(clock(said, plan.plug_in))] };
  return { label: f.best, texts: [plan.heating?.stays_on ? f.leaveOn : f.noHeatUsed] };
}

/** What must be put right or looked up as well; where it would be ready otherwise the headline says it. */
function lookFirst({ plan, w, reader }: Said): Fact[] {
  if (plan.look_first.length === 0) return [];
  const texts = plan.look_first.map(({ text }) => inUnits(text, reader.units));
  return [{ label: w.night.facts.lookFirst, texts, language: "en" }];
}

function why({ plan, w, reader }: Said): Fact {
  return { label: w.night.facts.why, texts: [inUnits(plan.message, reader.units)], language: "en" };
}

function barredFacts({ plan, w }: Said): Fact[] {
  const f = w.night.facts;
  if (plan.barred.length === 0) return [];
  return [{ label: f.notUsed, texts: plan.barred.map(({ name, reason }) => f.barred[reason](name)) }];
}

/** Remedies shown. */
const MOST_HELP = 3;

function helpFacts(said: Said): Fact[] {
  const { plan, w } = said;
  const f = w.night.facts;
  if (plan.remedies === undefined) return [waiting(f.wouldHelp, w)];
  if (plan.remedies.length === 0) return [{ label: f.wouldHelp, texts: [f.nothingHelps] }];
  const texts = plan.remedies.slice(0, MOST_HELP).map(({ text, chance, plug_in, attended }) => {
    const when = plug_in === null ? "" : f.helpPlugIn(clock(said, plug_in));
    return `${inUnits(text, said.reader.units)}: ${w.odds(chance)}${when}${attended ? f.helpStay : ""}`;
  });
  return [{ label: f.wouldHelp, texts, language: "en" }];
}

/** Both lines, for the owner to choose. */
function lines(said: Said): Fact[] {
  const { plan, w } = said;
  const { lines: both, aim, heating } = plan;
  const f = w.night.facts;
  const isSettled = both.least.plug_in === null && both.warm_through.plug_in === null;
  if (heating?.stays_on === true && isSettled) return [];
  const one = ({ reached, plug_in, chance, energy_kwh }: PlanDocument["lines"]["least"]) => {
    const odds = w.odds(chance);
    const at =
      plug_in === null ? (reached ? f.withoutHeat : f.notWithoutHeat) : f.plugInAt(clock(said, plug_in));
    const kwh = plug_in === null ? "" : `, ${numberText(energy_kwh, said.reader.units, 1)}\u00a0kWh`;
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

function quarter({ plan, w }: Said): Fact[] {
  const f = w.night.facts;
  const { quarter_more: more } = plan;
  if (more === undefined) return [waiting(f.quarterMore, w)];
  if (more === null) return [];
  return [{ label: f.quarterMore, texts: [f.chances(w.odds(more.chance), w.odds(more.warm_chance))] }];
}

/** What only the whole plan says, while it is worked out. */
function waiting(label: string, w: Words): Fact {
  return { label, texts: [w.night.facts.working] };
}
