import type { CriterionDocument, PlanDocument, StampDocument } from "../../index.js";
import type { Style } from "../style.js";
import type { Opening } from "./opening.js";
import { clock, day, odds, span, valueText } from "./words.js";

/** The first screen of a plan: what to do, how sure that is, what is weakest, and what can hurt. */
export function planOpening(plan: PlanDocument, style: Style): Opening {
  return {
    verdict: verdictOf(plan, style),
    about: aboutOf(plan),
    facts: plan.status === "not-reachable" ? missingFacts(plan, style) : readyFacts(plan, style),
    cautions: plan.first_cautions,
  };
}

/** The first line: what to do and with what chance. */
function verdictOf(plan: PlanDocument, style: Style): string {
  const { plug_in, departure, status, heating } = plan;
  const at = (stamp: StampDocument) => clock(stamp, departure);
  const chance = odds(plan.chance);
  if (status === "look-first")
    return `Look first. ${plan.look_first.map(({ text }) => style.say(text)).join(" ")}`;
  if (status === "not-reachable") {
    return `Not ready at ${at(departure)}: ${chance} at best, ${odds(plan.wanted_chance)} wanted.`;
  }
  if (status === "not-required") {
    return `Preheat not required: start at ${at(departure)}, chance ${chance}.`;
  }
  if (heating?.stays_on && plug_in === null) {
    return `Heat is on. Unplug at ${at(plan.unplug)}, start at ${at(departure)}: chance ${chance}.`;
  }
  if (plug_in === null) throw new RangeError("missing plug_in: the plan is ready by heat");
  const first = heating === null || heating.stays_on ? "" : "Unplug now. ";
  return `${first}Plug in at ${at(plug_in)}, unplug at ${at(plan.unplug)}, start at ${at(departure)}: chance ${chance}.`;
}

function aboutOf({ name, aircraft, departure, zone }: PlanDocument): string {
  return `${name}, ${aircraft.name.split(",")[0]}, ${day(departure)}, ${zone}`;
}

type Facts = [string, string][];

function readyFacts(plan: PlanDocument, style: Style): Facts {
  const { departure, unplug, heating } = plan;
  const isHeated = plan.plug_in !== null || heating?.stays_on === true;
  return [
    heatFact(plan),
    ...(isHeated
      ? [["Unplug", `${clock(unplug, departure)}, ${minutesBefore(unplug, departure)}`] as [string, string]]
      : []),
    ...coversFact(plan),
    ["Chance", chanceText(plan)],
    ["Weakest point", weakestText(weakestOf(plan), style)],
    ["Stay with it", attendance(plan)],
    ...linesFact(plan),
    ...quarterFact(plan),
  ];
}

function missingFacts(plan: PlanDocument, style: Style): Facts {
  const { departure, remedies, barred } = plan;
  const help = remedies.slice(0, 3).map(({ text, chance, plug_in, attended }): [string, string] => {
    const when = plug_in === null ? "" : `, plug in at ${clock(plug_in, departure)}`;
    const watched = attended ? "; somebody must stay" : "";
    return ["Would help", `${style.say(text)}: ${odds(chance)}${when}${watched}`];
  });
  return [
    ...plan.look_first.map(({ text }): [string, string] => ["Look first", style.say(text)]),
    ["Best", bestText(plan)],
    ["Weakest point", weakestText(weakestOf(plan), style)],
    ...barred.map((heater): [string, string] => ["Not used", barredText(heater)]),
    ...(help.length === 0 ? ([["Would help", "nothing that was tried"]] as Facts) : help),
    ["Stay with it", attendance(plan)],
  ].slice(0, 8) as Facts;
}

function barredText({ name, reason }: PlanDocument["barred"][number]): string {
  return reason === "indoors"
    ? `${name}: a burner never runs in a hangar (carbon monoxide, fire)`
    : `${name}: too much heat for so small an engine`;
}

function heatFact({ plug_in, heating, departure, aim, status, unplug }: PlanDocument): [string, string] {
  const at = (stamp: StampDocument) => clock(stamp, departure);
  if (heating !== null) {
    const on =
      heating.on_h === null
        ? "since when is not known"
        : `for ${span(heating.on_h)} of at most ${span(heating.longest_on_h)} in one go`;
    const wet =
      heating.wet_h === null || heating.wet_h < 0.5 ? "" : `, inside wet or frosted ${span(heating.wet_h)}`;
    const next = heating.stays_on
      ? `stays on until ${at(unplug)}`
      : plug_in === null
        ? "off now"
        : `off now, on again at ${at(plug_in)}`;
    return ["Heat is on", `${on}${wet}; ${next}`];
  }
  if (plug_in === null) return ["Plug in", status === "not-required" ? "not required" : "without heat"];
  return [
    "Plug in",
    `${at(plug_in)} at the latest, for ${aim === "least" ? "the least that the maker asks" : "an engine warm through"}`,
  ];
}

/** What the crew does at covers off, with the time that is left from then on. */
export function coverOffText({ happenings, start_within_min }: PlanDocument): string[] {
  if (start_within_min === null || !happenings.some((h) => h.do === "cover_off")) return [];
  return [`start within ${shortSpan(start_within_min)}`];
}

function coversFact({ cover_off, departure, start_within_min, happenings, stay_warm }: PlanDocument): Facts {
  if (start_within_min === null) return [];
  const covered = happenings.some((h) => h.do === "cover_off");
  const out = happenings.some((h) => h.do === "move" && h.at_h === cover_off.at_h && h.what === "ramp");
  const acts = [...(covered ? ["covers off"] : []), ...(out ? ["pull out"] : [])].join(", ");
  const longest = stay_warm.uncovered.sure_h >= stay_warm.uncovered.horizon_h - 1e-3;
  const within = longest
    ? `it stays ready for ${span(stay_warm.uncovered.horizon_h)} and more`
    : `start within ${shortSpan(start_within_min)}`;
  return [["Then", acts === "" ? within : `${acts} at ${clock(cover_off, departure)}, ${within}`]];
}

function chanceText({ status, chance, warm_chance }: PlanDocument): string {
  const text = `${odds(chance)} that it may be started, ${odds(warm_chance)} warm through`;
  return status === "look-first" ? `once that is put right: ${text}` : text;
}

function bestText({ plug_in, heating, heaters, departure }: PlanDocument): string {
  if (plug_in !== null)
    return `plug in at ${clock(plug_in, departure)}${plug_in.at_h === 0 ? ", which is now" : ""}`;
  if (heating?.stays_on) return "leave the heat on";
  if (heaters.length === 0) return "no heat can be used";
  const least = Math.max(...heaters.map((h) => 60 * h.least_on_h));
  return `too late to heat for ${least} min and make the checks`;
}

function linesFact({ lines, departure, heating }: PlanDocument): Facts {
  if (heating?.stays_on && lines.least.plug_in === null && lines.warm_through.plug_in === null) return [];
  const one = ({ reached, plug_in, chance, energy_kwh }: PlanDocument["lines"]["least"]) => {
    if (plug_in === null) return reached ? "without heat" : "not without heat";
    if (!reached) return `${odds(chance)} at best`;
    return `${clock(plug_in, departure)}, ${energy_kwh.toFixed(1)} kWh`;
  };
  return [["Your choice", `the least: ${one(lines.least)}; warm through: ${one(lines.warm_through)}`]];
}

function quarterFact({ quarter_more }: PlanDocument): Facts {
  if (quarter_more === null) return [];
  const { chance, warm_chance } = quarter_more;
  return [["15 min more", `${odds(chance)} that it may be started, ${odds(warm_chance)} warm through`]];
}

function attendance({ heaters, plug_in, heating }: PlanDocument): string {
  if (plug_in === null && heating === null) return "nobody has to";
  const watched = heaters.filter((h) => h.attended);
  if (watched.length === 0) return "nobody has to; look at it once while it heats";
  return `somebody must, all the time: ${watched.map((h) => h.name).join(", ")}`;
}

/** Whole minutes, later whole five minutes, never more than there are. */
function shortSpan(minutes: number): string {
  return minutes <= 90 ? `${minutes} min` : span((5 * Math.floor(minutes / 5)) / 60);
}

function minutesBefore(stamp: StampDocument, departure: StampDocument): string {
  return `${Math.round((departure.at_h - stamp.at_h) * 60)} min before the start`;
}

export function weakestOf({ criteria, weakest }: PlanDocument): CriterionDocument {
  const found = criteria.find((c) => c.id === weakest);
  if (found === undefined) throw new RangeError(`unknown criterion: ${weakest}`);
  return found;
}

/** @example "cranking speed: 98 rpm, 1 in 20 slower than 42 rpm, needed 60 rpm" */
export function weakestText(
  { title, value, limit, unit, direction }: CriterionDocument,
  style: Style,
): string {
  const shown = (x: number) => valueText(x, unit, style);
  const [worst, word] =
    direction === "at-least"
      ? [value.p05, unit === "rpm" ? "slower" : unit === "c" ? "colder" : "less"]
      : [value.p95, "more"];
  const sign = direction === "at-least" ? "needed" : "at most";
  return `${style.say(title)}: ${shown(value.p50)}, 1 in 20 ${word} than ${shown(worst)}; ${sign} ${shown(limit)}`;
}
