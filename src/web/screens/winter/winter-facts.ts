import type { Said, Words } from "../../words/index.svelte.js";
import type { Answer } from "../../worker/protocol.js";
import { criterionTitle } from "../night/sentence.js";

type Study = Answer<"winter">;
type Row = Study["rows"][number];
type Fact = readonly [label: string, text: string];

/** How values are shown to this user. */
export interface Shown {
  readonly w: Words;
  readonly say: Said;
}

/** The best kit and habit in one sentence; the order of the command line. */
export function winterSentence(study: Study, shown: Shown): string {
  const { w, say } = shown;
  const best = study.answer.best === null ? undefined : study.rows[study.answer.best];
  if (best === undefined) return w.winter.answerNone;
  const cost =
    best.winter_cost === null
      ? `${say.number(best.energy_kwh.p50 + best.fuel_kwh.p50)} kWh`
      : moneyText(best.winter_cost.p50, study, shown);
  return w.winter.answer(
    study.kits[best.kit].name,
    habitText(study, best, w),
    say.odds(best.ready_mean),
    cost,
  );
}

export function winterFacts(study: Study, shown: Shown): Fact[] {
  const { answer, rows } = study;
  const best = answer.best === null ? undefined : rows[answer.best];
  return [
    ...(best === undefined ? [] : bestFacts(study, best, shown)),
    ...unadvisedFact(study, shown),
    ...(best === undefined ? [] : [moreFact(study, best, shown)]),
  ];
}

function bestFacts(study: Study, best: Row, shown: Shown): Fact[] {
  const { w, say } = shown;
  const v = w.winter;
  const money = (value: number) => moneyText(value, study, shown);
  const { winter_cost, energy_money, attended_money, attended_h, heater_h, longest_on_h, frost_h } = best;
  const limit = study.kits[best.kit].longest_on_h;
  const [weakest] = best.weakest;
  return [
    [v.facts.ready, v.readyText(say.odds(best.ready_mean), say.odds(best.warm_mean))],
    [
      v.facts.costs,
      winter_cost === null || energy_money === null
        ? v.costMissing
        : v.costText(money(winter_cost.p50), money(energy_money.p50), money(attended_money.p50)),
    ],
    [v.facts.time, v.timeText(say.number(attended_h.p50), money(study.attended_per_h))],
    [
      v.facts.heat,
      v.heatText(
        say.number(best.energy_kwh.p50 + best.fuel_kwh.p50),
        say.number(heater_h.p50),
        say.number(longest_on_h),
        limit === null ? "–" : say.number(limit),
      ),
    ],
    [v.facts.inside, v.insideText(say.number(wetHours(best)), say.number(frost_h.p50))],
    [
      v.facts.weakest,
      weakest === undefined
        ? v.weakestNone
        : v.weakestText(criterionTitle(weakest.id, weakest.title, w), say.odds(weakest.share)),
    ],
  ];
}

function unadvisedFact(study: Study, { w, say }: Shown): Fact[] {
  const { answer, rows, kits } = study;
  if (answer.unadvised === null) return [];
  const row = rows[answer.unadvised];
  const [first] = row.not_advised;
  const limit = kits[row.kit].longest_on_h;
  const text =
    first.rule === "longest-on" && limit !== null
      ? w.winter.notAdvisedText(
          habitText(study, row, w),
          say.number(row.longest_on_h),
          say.number(limit),
          say.number(row.heater_h.p50),
          say.number(wetHours(row)),
        )
      : w.kit.rules[first.rule](first.heater);
  return [[w.winter.facts.notAdvised, text]];
}

function moreFact(study: Study, best: Row, shown: Shown): Fact {
  const { answer, rows, kits } = study;
  const v = shown.w.winter;
  const dearer = answer.dearer === null ? undefined : rows[answer.dearer];
  const price = kits[best.kit].price;
  if (dearer === undefined || price === null) return [v.facts.more, v.moreNone];
  const { name, price: other } = kits[dearer.kit];
  const extra = moneyText((other ?? 0) - price, study, shown);
  return [v.facts.more, v.moreText(name, extra, shown.say.odds(dearer.ready_mean))];
}

/** [h] above 0 °C. */
export function wetHours({ wet_h, frost_h }: Row): number {
  return Math.max(0, wet_h.p50 - frost_h.p50);
}

function habitText({ habits }: Study, { habit }: Row, w: Words): string {
  return w.winter.habits[habits[habit].do];
}

function moneyText(value: number, { currency }: Study, { say }: Shown): string {
  return `${say.number(value)} ${currency}`.trimEnd();
}
