import type { WinterRowDocument, WinterStudyDocument } from "../documents/index.js";
import { type Finding, finding } from "../findings/index.js";
import { type Fact, type FirstScreen, fact } from "./screen.js";

/** Which kit, used how, and what a winter with it comes to. */
export function winterScreen(study: WinterStudyDocument): FirstScreen {
  const best = study.answer.best === null ? undefined : study.rows[study.answer.best];
  return {
    verdict: best === undefined ? [finding("verdict-no-habit", {})] : verdictOf(study, best),
    facts: [
      ...(best === undefined ? [] : bestFacts(study, best)),
      ...unadvisedFact(study),
      ...(best === undefined ? [] : fact("more-money", dearer(study, best))),
    ],
    cautions: study.first_cautions,
  };
}

function verdictOf(study: WinterStudyDocument, best: WinterRowDocument): Finding[] {
  const { wanted_chance, rows, ranking, answer, kits } = study;
  const values = {
    kit: kits[best.kit]!.name,
    habit: habitOf(study, best),
    ready: best.ready_mean,
    wanted: best.ready_mean < wanted_chance ? wanted_chance : null,
    cost: costOf(study, best),
    heat_kwh: heatOf(best),
    attended_h: kits[best.kit]!.attended ? best.attended_h.p50 : null,
  };
  // The kit somebody would ask about: ready more often, or as often with somebody beside it.
  const watched = ranking.map((i) => rows[i]!).find((row) => row !== best && kits[row.kit]!.attended);
  const other = answer.readier === null ? watched : rows[answer.readier];
  if (other === undefined) return [finding("verdict-winter", values)];
  const { name, attended } = kits[other.kit]!;
  const beside = {
    kit: name,
    ready: other.ready_mean,
    cost: costOf(study, other),
    attended_h: attended ? other.attended_h.p50 : null,
  };
  return [finding("verdict-winter", values), finding("verdict-other-kit", beside)];
}

/** A habit without the chance that it plans for: that is no part of its name. */
function habitOf({ habits }: WinterStudyDocument, { habit }: WinterRowDocument): Finding {
  const { label } = habits[habit]!;
  return label.code === "habit-planned" ? finding("habit-planned", { chance: null }) : label;
}

function costOf({ currency }: WinterStudyDocument, { winter_cost }: WinterRowDocument) {
  return winter_cost === null ? null : { amount: winter_cost.p50, currency };
}

function heatOf({ energy_kwh, fuel_kwh }: WinterRowDocument): number {
  return energy_kwh.p50 + fuel_kwh.p50;
}

/** [h] above 0 °C. */
export function wetHours({ wet_h, frost_h }: WinterRowDocument): number {
  return Math.max(0, wet_h.p50 - frost_h.p50);
}

function bestFacts(study: WinterStudyDocument, best: WinterRowDocument): Fact[] {
  const { kits, attended_per_h, currency } = study;
  const [first] = best.weakest;
  return [
    ...fact("ready", finding("winter-ready", { least: best.ready_mean, warm: best.warm_mean })),
    ...fact("costs", costs(study, best)),
    ...fact(
      "time",
      finding("winter-time", {
        attended_h: best.attended_h.p50,
        per_h: { amount: attended_per_h, currency },
      }),
    ),
    ...fact(
      "heat",
      finding("winter-heat", {
        heat_kwh: heatOf(best),
        heater_h: best.heater_h.p50,
        longest_h: best.longest_on_h,
        allowed_h: kits[best.kit]!.longest_on_h,
      }),
    ),
    ...fact("inside", finding("winter-inside", { wet_h: wetHours(best), frost_h: best.frost_h.p50 })),
    ...fact(
      "weakest",
      first === undefined
        ? finding("winter-weakest-none", {})
        : finding("winter-weakest", { criterion: first.title, share: first.share }),
    ),
  ];
}

function costs(
  { currency }: WinterStudyDocument,
  { winter_cost, energy_money, attended_money }: WinterRowDocument,
): Finding {
  if (winter_cost === null || energy_money === null) return finding("winter-cost-unknown", {});
  const [all, heat, time] = [winter_cost.p50, energy_money.p50, attended_money.p50];
  return finding("winter-costs", { all, heat, time, rest: Math.max(0, all - heat - time), currency });
}

function unadvisedFact(study: WinterStudyDocument): Fact[] {
  const { rows, answer, kits, habits } = study;
  if (answer.unadvised === null) return [];
  const row = rows[answer.unadvised]!;
  const { name: kit, attended, longest_on_h: allowed } = kits[row.kit]!;
  if (habits[row.habit]!.do !== "always_on")
    return fact("not-advised", finding("kit-not-advised", { kit, rule: row.not_advised[0]!.rule }));
  return fact(
    "not-advised",
    finding("winter-always-on", {
      longest_h: row.longest_on_h,
      allowed_h: allowed !== null && row.longest_on_h > allowed ? allowed : null,
      alone_h: attended ? null : row.heater_h.p50,
      wet_h: wetHours(row),
    }),
  );
}

function dearer(study: WinterStudyDocument, best: WinterRowDocument): Finding {
  const { rows, answer, kits, currency } = study;
  const { price } = kits[best.kit]!;
  if (price === null) return finding("dearer-none", { why: "no-price" });
  if (answer.dearer === null) return finding("dearer-none", { why: "winter" });
  const row = rows[answer.dearer]!;
  const { name: kit, price: other } = kits[row.kit]!;
  return finding("dearer-winter", {
    kit,
    habit: habitOf(study, row),
    extra: { amount: (other ?? 0) - price, currency },
    ready: row.ready_mean,
    cost: costOf(study, row),
  });
}
