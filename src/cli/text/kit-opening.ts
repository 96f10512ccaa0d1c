import type { KitComparisonDocument } from "../../index.js";
import type { Style } from "../style.js";
import type { Opening } from "./opening.js";
import { bareWind, clock, needed, odds, span, temperature, windUnit } from "./words.js";

type KitEntry = KitComparisonDocument["kits"][number];
type KitCase = KitEntry["cases"][number];
type Fact = readonly [label: string, text: string];

/** Which kit for what, and why. */
export function kitOpening(comparison: KitComparisonDocument, style: Style): Opening {
  const { name, aircraft, kits, answer, wanted_chance } = comparison;
  const first = kits.find(({ cases }) => cases.length > 0);
  const best = answer.best === null ? undefined : kits[answer.best];
  const unadvised = unadvisedFact(comparison);
  return {
    verdict: verdictOf(comparison, style),
    about: `${name}, ${aircraft.name.split(",")[0]}: ${kits.length} kits, ${first?.cases.length ?? 0} cold cases from cold-soaked, ${odds(wanted_chance)} wanted`,
    facts: [
      ...(best === undefined ? noneFacts(comparison, style) : bestFacts(best, comparison, style)),
      ...unadvised,
    ],
    cautions: comparison.first_cautions,
  };
}

function verdictOf({ kits, answer, wanted_chance }: KitComparisonDocument, style: Style): string {
  const best = answer.best === null ? undefined : kits[answer.best]!;
  if (best === undefined || answer.cold === null) {
    return `None of these kits makes it ready in ${odds(wanted_chance)} cases and may be recommended.`;
  }
  const cold = coldText(best.cases[answer.cold]!, style);
  const stay = best.attended ? "somebody must stay" : "nobody has to stay";
  const colder = answer.colder === null ? undefined : kits[answer.colder]!;
  const more = colder === undefined ? "" : ` ${sentenceOfColder(colder, style)}`;
  return `${best.name}: ready in ${odds(wanted_chance)} cases down to ${cold}; ${stay}.${more}`;
}

function sentenceOfColder(kit: KitEntry, style: Style): string {
  const reached = reachText(kit, style);
  return `${kit.name} reaches ${reached}${kit.attended ? ", but somebody must stay" : ""}.`;
}

function reachText(kit: KitEntry, style: Style): string {
  const last = reachOf(kit, ({ status }) => status !== "not-reached");
  return last === undefined ? "none of the cases" : coldText(last, style);
}

/** The coldest case such that it and all milder ones hold. */
function reachOf({ cases }: KitEntry, holds: (one: KitCase) => boolean): KitCase | undefined {
  const order = [...cases].sort((a, b) => b.air_c - a.air_c || a.wind_mps - b.wind_mps);
  const at = order.findIndex((one) => !holds(one));
  return (at < 0 ? order : order.slice(0, at)).at(-1);
}

function warmText(reached: KitCase | undefined, style: Style): string {
  if (reached === undefined) return "in none of the cases; only the least that the maker asks";
  return `${coldText(reached, style)} and milder; colder only the least that the maker asks`;
}

function bestFacts(best: KitEntry, comparison: KitComparisonDocument, style: Style): Fact[] {
  const { answer } = comparison;
  const cold = best.cases[answer.cold ?? 0]!;
  const at = coldText(cold, style);
  const isWarm = (c: KitCase) =>
    c.status === "not-required" || (c.status === "ready" && c.aim === "warm-through");
  return [
    ...tonightFact(best),
    [
      "Plug in",
      cold.lead_h === null
        ? `not required down to ${at}`
        : `${needed(cold.lead_h)} before the start at ${at}`,
    ],
    ["Warm through", warmText(reachOf(best, isWarm), style)],
    ["Costs a start", costText(cold, comparison, style)],
    ...insideFact(cold),
    ...weakestFact(best, comparison, style),
    moreFact(best, comparison, style),
  ];
}

function insideFact({ wet_h }: KitCase): Fact[] {
  if (wet_h === null) return [];
  return [["Inside", `${wet_h.toFixed(1)} h wet or frosted before that start (for comparing only)`]];
}

function tonightFact({ tonight }: KitEntry): Fact[] {
  if (tonight === null) return [];
  const { plug_in, unplug, departure, chance } = tonight;
  const status: string = tonight.status;
  const at = (stamp: typeof departure) => clock(stamp, departure);
  const start = `start ${at(departure)}, chance ${odds(chance)}`;
  if (status === "not-required") return [["Tonight", `heat not required; ${start}`]];
  if (status === "not-reachable")
    return [["Tonight", `not ready at ${at(departure)}: ${odds(chance)} at best`]];
  if (plug_in === null) return [["Tonight", start]];
  const look = status === "look-first" ? "; look first" : "";
  return [["Tonight", `plug in ${at(plug_in)}, unplug ${at(unplug)}, ${start}${look}`]];
}

function costText(cold: KitCase, { currency, attended_per_h }: KitComparisonDocument, style: Style): string {
  const { cost, attended_h, energy_kwh } = cold;
  const money = (value: number) => `${value.toFixed(2)} ${currency}`.trimEnd();
  const time =
    attended_h === 0
      ? "nobody's time"
      : `${span(attended_h)} of somebody's time ${money(cost.attended)} (${attended_per_h} ${currency} an hour)`;
  const heat = `${energy_kwh.p50.toFixed(1)} kWh${cost.energy === null ? "" : ` ${money(cost.energy)}`}`;
  const all = cost.all === null ? "" : `${money(cost.all)} `;
  return `${all}at ${coldText(cold, style)}: ${heat}, ${time}`;
}

function weakestFact(best: KitEntry, { answer }: KitComparisonDocument, style: Style): Fact[] {
  if (answer.next === null) return [];
  const next = best.cases[answer.next]!;
  return [
    [
      "Weakest point",
      `${style.say(next.weakest_title)}: at ${coldText(next, style)} ready in ${odds(next.chance)}`,
    ],
  ];
}

function moreFact(best: KitEntry, { kits, answer, currency }: KitComparisonDocument, style: Style): Fact {
  if (best.price === null) return ["More money", "not known: its price is missing"];
  if (answer.dearer === null) return ["More money", "no dearer kit here makes more cases ready"];
  const kit = kits[answer.dearer]!;
  const extra = `${((kit.price ?? 0) - best.price).toFixed(0)} ${currency}`.trimEnd();
  const stay = kit.attended ? ", but somebody must stay" : "";
  return ["More money", `${kit.name}, ${extra} more, reaches ${reachText(kit, style)}${stay}`];
}

/** Nothing may be recommended: what comes nearest, and why not. */
function noneFacts({ kits }: KitComparisonDocument, style: Style): Fact[] {
  const able = kits.filter(({ barred, not_advised }) => barred.length === 0 && not_advised.length === 0);
  return able.slice(0, 4).flatMap(({ name, cases }): Fact[] => {
    const [mildest] = [...cases].sort((a, b) => b.air_c - a.air_c || a.wind_mps - b.wind_mps);
    if (mildest === undefined) return [];
    return [
      [
        "Best chance",
        `${name}: ${odds(mildest.chance)} at ${coldText(mildest, style)}, weakest point ${style.say(mildest.weakest_title)}`,
      ],
    ];
  });
}

/** Kits of which the first screen says why not. */
const MOST_UNADVISED = 3;

function unadvisedFact({ kits }: KitComparisonDocument): Fact[] {
  const told = kits.flatMap(({ name, barred, not_advised }) => {
    const [first] = [...barred, ...not_advised];
    return first === undefined ? [] : [`${name}: ${RULES[first.rule]}`];
  });
  if (told.length === 0) return [];
  const rest = told.length > MOST_UNADVISED ? `; ${told.length - MOST_UNADVISED} more` : "";
  return [["Not advised", `${told.slice(0, MOST_UNADVISED).join("; ")}${rest}`]];
}

const RULES = {
  "outdoors-only": "a burner never runs in a hangar (carbon monoxide, fire)",
  "engine-too-small": "too big for this engine",
  rejected: "engine makers reject it",
  "longest-on": "on beyond its longest time",
  "always-on": "it has no end",
} as const;

export function coldText({ air_c, wind_mps }: KitCase, style: Style): string {
  const wind = wind_mps === 0 ? "calm" : `${bareWind(wind_mps, style)} ${windUnit(style)}`;
  return `${temperature(air_c, style)}, ${wind}`;
}
