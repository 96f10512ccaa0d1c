import type { Said, Words } from "../../words/index.svelte.js";
import type { Answer } from "../../worker/protocol.js";
import { criterionTitle } from "../night/sentence.js";

type Comparison = Answer<"kit">;
type Kit = Comparison["kits"][number];
type Case = Kit["cases"][number];
type Fact = readonly [label: string, text: string];

/** How values are shown to this user. */
export interface Shown {
  readonly w: Words;
  readonly say: Said;
  cold(of: { readonly air_c: number; readonly wind_mps: number }): string;
}

/** Which kit for what, in one sentence; the order of the command line. */
export function kitSentence({ kits, answer, wanted_chance }: Comparison, { w, say, cold }: Shown): string {
  const best = answer.best === null ? undefined : kits[answer.best];
  const chance = say.odds(wanted_chance);
  if (best === undefined || answer.cold === null) return w.kit.answerNone(chance);
  const colder = answer.colder === null ? undefined : kits[answer.colder];
  const reach = colder === undefined ? undefined : reachOf(colder, isMet);
  const more =
    colder === undefined || reach === undefined
      ? ""
      : w.kit.answerColder(colder.name, cold(reach), colder.attended);
  return w.kit.answer(best.name, chance, cold(best.cases[answer.cold]), best.attended) + more;
}

export function kitFacts(comparison: Comparison, shown: Shown): Fact[] {
  const { kits, answer } = comparison;
  const best = answer.best === null ? undefined : kits[answer.best];
  return [
    ...(best === undefined ? [] : bestFacts(best, comparison, shown)),
    ...unadvisedFact(comparison, shown),
  ];
}

function bestFacts(best: Kit, comparison: Comparison, shown: Shown): Fact[] {
  const { answer, currency, kits } = comparison;
  const { w, cold, say } = shown;
  const k = w.kit;
  const hardest = best.cases[answer.cold ?? 0];
  const at = cold(hardest);
  const money = (value: number | null) =>
    value === null ? "–" : `${say.number(value, 2)} ${currency}`.trimEnd();
  const next = answer.next === null ? undefined : best.cases[answer.next];
  const dearer = answer.dearer === null ? undefined : kits[answer.dearer];
  const warm = reachOf(best, isWarm);
  const { cost, energy_kwh, attended_h, lead_h, wet_h } = hardest;
  return [
    ...tonightFact(best, shown),
    [k.facts.plugIn, lead_h === null ? k.noLeadAt(at) : k.leadAt(say.needed(lead_h), at)],
    [k.facts.warm, warm === undefined ? k.warmNever : k.warmTo(cold(warm))],
    [
      k.facts.costs,
      `${money(cost.all)} ${k.costAt(at, `${say.number(energy_kwh.p50, 1)} kWh`, money(cost.energy), say.span(attended_h), money(cost.attended))}`,
    ],
    ...(wet_h === null ? [] : [[k.facts.inside, k.insideWet(say.number(wet_h, 1))] as const]),
    ...(next === undefined
      ? []
      : [
          [
            k.facts.weakest,
            k.weakestAt(
              criterionTitle(next.weakest, next.weakest_title, w),
              cold(next),
              say.odds(next.chance),
            ),
          ] as const,
        ]),
    [
      k.facts.more,
      dearer === undefined || best.price === null
        ? k.moreNone
        : k.moreKit(dearer.name, money((dearer.price ?? 0) - best.price)),
    ],
  ];
}

function tonightFact({ tonight }: Kit, { w, say }: Shown): Fact[] {
  if (tonight === null) return [];
  const { plug_in, unplug, departure, chance } = tonight;
  const k = w.kit;
  const status: string = tonight.status;
  const start = say.at(departure);
  const odds = say.odds(chance);
  if (status === "not-reachable") return [[k.facts.tonight, k.tonightShort(start, odds)]];
  if (plug_in === null) return [[k.facts.tonight, k.tonightWithout(start, odds)]];
  return [[k.facts.tonight, k.tonightPlan(say.at(plug_in), say.at(unplug), start, odds)]];
}

function unadvisedFact({ kits }: Comparison, { w }: Shown): Fact[] {
  const rules = kits.flatMap(({ barred, not_advised }) => [...barred, ...not_advised]);
  if (rules.length === 0) return [];
  const texts = rules.map(({ rule, heater }) => w.kit.rules[rule](heater));
  return [[w.kit.facts.notAdvised, [...new Set(texts)].join("; ")]];
}

const isMet = ({ status }: Case) => status !== "not-reached";
const isWarm = ({ status, aim }: Case) =>
  status === "not-required" || (status === "ready" && aim === "warm-through");

/** The coldest case such that it and all milder ones hold. */
function reachOf({ cases }: Kit, holds: (one: Case) => boolean): Case | undefined {
  const order = cases.toSorted((a, b) => b.air_c - a.air_c || a.wind_mps - b.wind_mps);
  const at = order.findIndex((one) => !holds(one));
  return (at < 0 ? order : order.slice(0, at)).at(-1);
}
