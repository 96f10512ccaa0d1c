import type { KitComparisonDocument } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import { type Fact, type FirstScreen, fact } from "./screen.js";

type KitEntry = KitComparisonDocument["kits"][number];
type KitCase = KitEntry["cases"][number];

/** Which kit for what, and why. */
export function kitScreen(comparison: KitComparisonDocument): FirstScreen {
  const { kits, answer, first_cautions } = comparison;
  const best = answer.best === null ? undefined : kits[answer.best];
  return {
    verdict: verdictOf(comparison),
    facts: [...(best === undefined ? noneFacts(kits) : bestFacts(best, comparison)), ...unadvisedFact(kits)],
    cautions: first_cautions,
  };
}

function verdictOf({ kits, answer, wanted_chance: chance }: KitComparisonDocument): Finding[] {
  const best = answer.best === null ? undefined : kits[answer.best];
  const cold = answer.cold === null ? undefined : best?.cases[answer.cold];
  if (best === undefined || cold === undefined) return [finding("verdict-no-kit", { chance })];
  const colder = answer.colder === null ? undefined : kits[answer.colder];
  const { name: kit, attended } = best;
  return [
    finding("verdict-kit", { kit, chance, cold: coldOf(cold), attended }),
    ...(colder === undefined ? [] : [finding("verdict-colder", reachOf(colder))]),
  ];
}

function coldOf({ air_c, wind_mps }: KitCase) {
  return { air_c, wind_mps };
}

/** A kit and the coldest case that it reaches, milder ones all with it. */
function reachOf(kit: KitEntry) {
  const reached = coldestOf(kit, ({ status }) => status !== "not-reached");
  return { kit: kit.name, cold: reached === undefined ? null : coldOf(reached), attended: kit.attended };
}

/** The coldest case such that it and all milder ones hold. */
function coldestOf({ cases }: KitEntry, holds: (one: KitCase) => boolean): KitCase | undefined {
  const order = fromMild(cases);
  const at = order.findIndex((one) => !holds(one));
  return (at < 0 ? order : order.slice(0, at)).at(-1);
}

function fromMild(cases: readonly KitCase[]): KitCase[] {
  return [...cases].sort((a, b) => b.air_c - a.air_c || a.wind_mps - b.wind_mps);
}

function bestFacts(best: KitEntry, comparison: KitComparisonDocument): Fact[] {
  const { answer, currency, attended_per_h } = comparison;
  const hardest = best.cases[answer.cold ?? 0]!;
  const next = answer.next === null ? undefined : best.cases[answer.next];
  const warm = coldestOf(
    best,
    ({ status, aim }) => status === "not-required" || (status === "ready" && aim === "warm-through"),
  );
  const cold = coldOf(hardest);
  const { cost, energy_kwh, attended_h, lead_h, wet_h } = hardest;
  return [
    ...tonightFact(best),
    ...fact("plug-in", finding("kit-lead", { lead_h, cold })),
    ...fact("warm-through", finding("kit-warm", { cold: warm === undefined ? null : coldOf(warm) })),
    ...fact(
      "costs-start",
      finding("kit-costs", {
        ...cost,
        energy_kwh: energy_kwh.p50,
        attended_h,
        attended_per_h,
        currency,
        cold,
      }),
    ),
    ...(wet_h === null ? [] : fact("inside", finding("kit-inside", { wet_h }))),
    ...(next === undefined
      ? []
      : fact(
          "weakest",
          finding("kit-weakest", { criterion: next.weakest_title, cold: coldOf(next), chance: next.chance }),
        )),
    ...fact("more-money", dearer(best, comparison)),
  ];
}

function tonightFact({ tonight }: KitEntry): Fact[] {
  if (tonight === null) return [];
  const { status, plug_in, unplug, departure, chance } = tonight;
  const values = {
    status,
    plug_in: plug_in?.time ?? null,
    unplug: unplug.time,
    start: departure.time,
    chance,
  };
  return fact("tonight", finding("kit-tonight", values));
}

function dearer({ price }: KitEntry, { kits, answer, currency }: KitComparisonDocument): Finding {
  if (price === null) return finding("dearer-none", { why: "no-price" });
  const kit = answer.dearer === null ? undefined : kits[answer.dearer];
  if (kit === undefined) return finding("dearer-none", { why: "cases" });
  return finding("dearer-kit", { ...reachOf(kit), extra: { amount: (kit.price ?? 0) - price, currency } });
}

/** Kits named where nothing may be recommended: what comes nearest. */
const MOST_NEAR = 4;

function noneFacts(kits: readonly KitEntry[]): Fact[] {
  const able = kits.filter(({ barred, not_advised }) => barred.length === 0 && not_advised.length === 0);
  const near = able.slice(0, MOST_NEAR).flatMap(({ name: kit, cases }) => {
    const [mildest] = fromMild(cases);
    if (mildest === undefined) return [];
    const { chance, weakest_title: criterion } = mildest;
    return [finding("kit-best-chance", { kit, chance, cold: coldOf(mildest), criterion })];
  });
  return fact("best-chance", ...near);
}

/** Kits of which the first screen says why not. */
const MOST_UNADVISED = 3;

function unadvisedFact(kits: readonly KitEntry[]): Fact[] {
  const told = kits.flatMap(({ name: kit, barred, not_advised }) => {
    const [first] = [...barred, ...not_advised];
    return first === undefined ? [] : [finding("kit-not-advised", { kit, rule: first.rule })];
  });
  const more = told.length - MOST_UNADVISED;
  return fact(
    "not-advised",
    ...told.slice(0, MOST_UNADVISED),
    ...(more > 0 ? [finding("more-not-advised", { kits: more })] : []),
  );
}
