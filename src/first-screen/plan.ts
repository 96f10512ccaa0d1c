import type { AnswerDocument, CriterionDocument, PlanDocument } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import { type Fact, type FirstScreen, fact } from "./screen.js";

/** A plan as far as it is known: what only the whole one says may still be worked out. */
export type KnownPlan = AnswerDocument & Partial<Omit<PlanDocument, keyof AnswerDocument>>;

/** What only whoever shows a plan knows. */
export interface Shown {
  /** [ms] the moment it is read; left out where that is not known. */
  readonly now?: number;
  /** [h] how long heat has been on, where only the logbook knows. */
  readonly onFor?: number | undefined;
  /** Heaters that it uses, while the whole plan is worked out. */
  readonly heaters?: readonly { readonly name: string; readonly attended: boolean }[];
}

/** What to do, with what chance, what is weakest, and what can hurt. */
export function planScreen(plan: KnownPlan, shown: Shown = {}): FirstScreen {
  return {
    verdict: [verdictOf(plan, shown)],
    facts: plan.status === "not-reachable" ? missingFacts(plan, shown) : readyFacts(plan, shown),
    cautions: plan.first_cautions ?? [],
  };
}

function verdictOf(plan: KnownPlan, { now }: Shown): Finding {
  const { plug_in, status, heating, chance, wanted_chance: wanted } = plan;
  const [unplug, start] = [plan.unplug.time, plan.departure.time];
  if (status === "look-first")
    return finding("verdict-look-first", { what: plan.look_first.map(({ text }) => text) });
  if (status === "not-reachable") return finding("verdict-not-ready", { start, chance, wanted });
  if (status === "not-required") return finding("verdict-not-required", { start, chance });
  if (plug_in === null) {
    return heating?.stays_on === true
      ? finding("verdict-heat-on", { unplug, start, chance })
      : finding("verdict-no-heat", { start, chance });
  }
  const isNow = now !== undefined && Date.parse(plug_in.time) - now < MINUTE;
  const is_off_first = heating !== null && !heating.stays_on;
  return finding("verdict-plug-in", { at: isNow ? null : plug_in.time, unplug, start, chance, is_off_first });
}

/** [ms] */
const MINUTE = 60_000;

function readyFacts(plan: KnownPlan, shown: Shown): Fact[] {
  const { plug_in, heating, departure, unplug, status, quarter_more: more } = plan;
  const minutes = Math.round((departure.at_h - unplug.at_h) * 60);
  return [
    ...heatFact(plan, shown),
    ...plugInFact(plan),
    ...(plug_in !== null || heating?.stays_on === true
      ? fact("unplug", finding("unplug-at", { at: unplug.time, minutes }))
      : []),
    ...afterFact(plan),
    ...fact("chance", chances(plan, status === "look-first")),
    ...fact("weakest", weakestLine(plan)),
    ...stayFact(plan, shown),
    ...barredFact(plan),
    ...choiceFact(plan),
    ...(more === null ? [] : fact("quarter-more", more === undefined ? WORKING : chances(more, false))),
  ];
}

function missingFacts(plan: KnownPlan, shown: Shown): Fact[] {
  const { look_first, message, remedies } = plan;
  const help = remedies
    ?.slice(0, MOST_HELP)
    .map(({ text, chance, plug_in, attended }) =>
      finding("would-help", { remedy: text, chance, plug_in: plug_in?.time ?? null, attended }),
    );
  return [
    ...fact("look-first", ...look_first.map(({ text }) => text)),
    ...heatFact(plan, shown),
    ...fact("best", best(plan)),
    ...(message === null ? [] : fact("why", message)),
    ...fact("weakest", weakestLine(plan)),
    ...barredFact(plan),
    ...fact(
      "would-help",
      ...(help?.length === 0 ? [finding("nothing-helps", { tried: null })] : (help ?? [WORKING])),
    ),
    ...stayFact(plan, shown),
  ];
}

/** Remedies shown. */
const MOST_HELP = 3;
const WORKING = finding("being-worked-out", {});

function heatFact({ heating, plug_in, unplug }: KnownPlan, { onFor }: Shown): Fact[] {
  if (heating === null) return [];
  const { stays_on, longest_on_h, wet_h } = heating;
  return fact(
    "heat-on",
    finding("heat-on-for", {
      // A plug that went in this very minute is known to the logbook only.
      on_h: heating.on_h ?? onFor ?? null,
      longest_on_h,
      wet_h: wet_h === null || wet_h < WORTH_SAYING_H ? null : wet_h,
      next: stays_on ? "stays" : plug_in === null ? "off" : "off-then-on",
      at: stays_on || plug_in === null ? unplug.time : plug_in.time,
    }),
  );
}

/** [h] wet inside that is worth a word. */
const WORTH_SAYING_H = 0.5;

function plugInFact({ plug_in, heating, status, aim }: KnownPlan): Fact[] {
  if (plug_in !== null) return fact("plug-in", finding("plug-in-latest", { at: plug_in.time, aim }));
  if (heating !== null) return [];
  return fact("plug-in", finding("plug-in-none", { is_required: status !== "not-required" }));
}

/** Covers off and out, with the time that is left from then on. */
function afterFact({ start_within_min: within, happenings, stay_warm, cover_off }: KnownPlan): Fact[] {
  if (within === undefined || happenings === undefined || stay_warm === undefined)
    return fact("after", WORKING);
  if (within === null) return [];
  const { sure_h, horizon_h } = stay_warm.uncovered;
  const isOut = happenings.some((h) => h.do === "move" && h.at_h === cover_off.at_h && h.what === "ramp");
  const acts = [
    ...(happenings.some((h) => h.do === "cover_off") ? (["covers-off"] as const) : []),
    ...(isOut ? (["pull-out"] as const) : []),
  ];
  const stays_h = sure_h >= horizon_h - 1e-3 ? horizon_h : null;
  return fact("after", finding("then-start", { acts, at: cover_off.time, within_min: within, stays_h }));
}

function chances(
  { chance, warm_chance }: Pick<PlanDocument, "chance" | "warm_chance">,
  is_put_right_first: boolean,
): Finding {
  return finding("chance-both", { start: chance, warm: warm_chance, is_put_right_first });
}

/** @example "cranking speed: 98 rpm, 1 in 20 slower than 42 rpm; needed 60 rpm" */
export function weakestLine({ criteria, weakest }: Pick<PlanDocument, "criteria" | "weakest">): Finding {
  const found = criteria.find(({ id }) => id === weakest);
  if (found === undefined) throw new RangeError(`unknown criterion: ${weakest}`);
  return criterionLine(found);
}

function criterionLine({ title: criterion, value, limit, unit, direction }: CriterionDocument): Finding {
  const measure = (of: number) => ({ value: of, unit });
  const worst = measure(direction === "at-most" ? value.p95 : value.p05);
  const values = { criterion, value: measure(value.p50), worst, limit: measure(limit), direction };
  return finding("weakest-point", values);
}

function stayFact({ plug_in, heating, heaters }: KnownPlan, shown: Shown): Fact[] {
  const is_heated = plug_in !== null || heating !== null;
  const used = is_heated ? (heaters ?? shown.heaters ?? []) : [];
  const attended = used.filter((one) => one.attended).map(({ name }) => name);
  return fact("stay", finding("stay-with", { attended, is_heated }));
}

function barredFact({ barred }: KnownPlan): Fact[] {
  return fact(
    "not-used",
    ...barred.map(({ name, reason }) => finding("barred-heater", { heater: name, reason })),
  );
}

/** Both lines, for the owner to choose. */
function choiceFact({ lines, aim, heating, plug_in: planned }: KnownPlan): Fact[] {
  const { least, warm_through } = lines;
  if (heating?.stays_on === true && least.plug_in === null && warm_through.plug_in === null) return [];
  const one = (line: "least" | "warm-through", { plug_in, ...rest }: typeof least) => {
    const is_planned = planned !== null && aim === line;
    return finding("line-of-two", { line, ...rest, plug_in: plug_in?.time ?? null, is_planned });
  };
  return fact("choice", one("least", least), one("warm-through", warm_through));
}

/** What comes nearest where it cannot be ready. */
function best({ plug_in, heating, heaters }: KnownPlan): Finding {
  if (plug_in !== null) return finding("best-plug-in", { at: plug_in.at_h === 0 ? null : plug_in.time });
  const least = Math.max(...(heaters ?? []).map(({ least_on_h }) => 60 * least_on_h));
  const least_on_min = Number.isFinite(least) ? least : null;
  return finding("best-without", { stays_on: heating?.stays_on === true, least_on_min });
}
