import type { WinterRowDocument, WinterStudyDocument } from "../../index.js";
import type { Style } from "../style.js";
import type { Opening } from "./opening.js";
import { odds, temperature } from "./words.js";

type Fact = readonly [label: string, text: string];

/** Which kit, used how, and what a winter with it comes to. */
export function winterOpening(study: WinterStudyDocument, style: Style): Opening {
  const { rows, answer } = study;
  const best = answer.best === null ? undefined : rows[answer.best];
  return {
    verdict: verdictOf(study, best, style),
    about: aboutOf(study, style),
    facts: [
      ...(best === undefined ? [] : bestFacts(study, best, style)),
      ...unadvisedFact(study, style),
      ...moreFact(study, best, style),
    ],
    cautions: study.first_cautions,
  };
}

function verdictOf(study: WinterStudyDocument, best: WinterRowDocument | undefined, style: Style): string {
  if (best === undefined) return "None of these kits and habits may be recommended.";
  const { wanted_chance, kits } = study;
  const short = best.ready_mean < wanted_chance ? `, not the ${odds(wanted_chance)} wanted` : "";
  const cost = best.winter_cost === null ? `${heat(best)} kWh` : moneyText(best.winter_cost.p50, study);
  const stay = kits[best.kit]!.attended ? `; somebody must stay, ${hours(best.attended_h.p50)} h` : "";
  return `${spokenName(study, best, style)}: ready in ${odds(best.ready_mean)} departures${short}, ${cost} a winter${stay}.${otherText(study, best)}`;
}

/** The kit somebody would ask about: ready more often, or as often with somebody beside it. */
function otherText(study: WinterStudyDocument, best: WinterRowDocument): string {
  const { rows, ranking, answer, kits } = study;
  const readier = answer.readier === null ? undefined : rows[answer.readier];
  const watched = ranking.map((i) => rows[i]!).find((row) => row !== best && kits[row.kit]!.attended);
  const other = readier ?? watched;
  if (other === undefined) return "";
  const time = kits[other.kit]!.attended
    ? `, but takes ${hours(other.attended_h.p50)} h of somebody's time`
    : "";
  const price = other.winter_cost === null ? "" : `, ${moneyText(other.winter_cost.p50, study)}`;
  return ` ${kits[other.kit]!.name}: ${odds(other.ready_mean)}${price}${time}.`;
}

function aboutOf(study: WinterStudyDocument, style: Style): string {
  const { name, aircraft, winters, departures } = study;
  const coldest = Math.min(...winters.map(({ coldest_c }) => coldest_c));
  const count = winters.length === 1 ? "one winter" : `${winters.length} winters`;
  return `${name}, ${aircraft.name.split(",")[0]}: ${count} of ${departures} departures, coldest hour ${temperature(coldest, style)}`;
}

function bestFacts(study: WinterStudyDocument, best: WinterRowDocument, style: Style): Fact[] {
  const { kits, attended_per_h, currency } = study;
  const { longest_on_h } = kits[best.kit]!;
  const [first] = best.weakest;
  const limit = longest_on_h === null ? "" : ` (${longest_on_h} h allowed)`;
  return [
    ["Ready", `${odds(best.ready_mean)} departures may start, ${odds(best.warm_mean)} warm through`],
    ["Costs", costText(study, best)],
    [
      "Time",
      `${hours(best.attended_h.p50)} h of somebody standing by or plugging in, at ${attended_per_h} ${currency} an hour`,
    ],
    [
      "Heat",
      `${heat(best)} kWh in ${hours(best.heater_h.p50)} h, at most ${hours(best.longest_on_h)} h in one go${limit}`,
    ],
    [
      "Inside",
      `wet ${hours(wetHours(best))} h, frosted ${hours(best.frost_h.p50)} h a winter (for comparing only)`,
    ],
    [
      "Weakest point",
      first === undefined
        ? "none: nothing kept it from a start"
        : `${style.say(first.title)}, too cold in ${odds(first.share)} departures`,
    ],
  ];
}

function costText(
  study: WinterStudyDocument,
  { winter_cost, energy_money, attended_money }: WinterRowDocument,
): string {
  if (winter_cost === null || energy_money === null) return "not counted: a price is missing";
  const rest = Math.max(0, winter_cost.p50 - energy_money.p50 - attended_money.p50);
  return `${moneyText(winter_cost.p50, study)} a winter: heat ${energy_money.p50.toFixed(0)}, somebody's time ${attended_money.p50.toFixed(0)}, missed departures and upkeep ${rest.toFixed(0)}`;
}

function unadvisedFact(study: WinterStudyDocument, style: Style): Fact[] {
  const { rows, answer, kits, habits } = study;
  if (answer.unadvised === null) return [];
  const row = rows[answer.unadvised]!;
  const isHabit = habits[row.habit]!.do === "always_on";
  const { attended, longest_on_h } = kits[row.kit]!;
  if (!isHabit) return [["Not advised", `${kits[row.kit]!.name}: ${style.say(row.not_advised[0]!.text)}`]];
  const over =
    longest_on_h !== null && row.longest_on_h > longest_on_h
      ? `${hours(row.longest_on_h)} h in one go, ${longest_on_h} h allowed`
      : "it has no end";
  const watched = attended ? "" : `; hot with nobody there ${hours(row.heater_h.p50)} h`;
  return [["Not advised", `always on: ${over}${watched}; inside wet ${hours(wetHours(row))} h`]];
}

function moreFact(study: WinterStudyDocument, best: WinterRowDocument | undefined, style: Style): Fact[] {
  if (best === undefined) return [];
  const { rows, answer, kits } = study;
  const price = kits[best.kit]!.price;
  if (price === null) return [["More money", "not known: its price is missing"]];
  if (answer.dearer === null)
    return [["More money", "no dearer kit here is ready more often or costs less a winter"]];
  const row = rows[answer.dearer]!;
  const extra = moneyText((kits[row.kit]!.price ?? 0) - price, study);
  const cost = row.winter_cost === null ? "" : `, ${moneyText(row.winter_cost.p50, study)} a winter`;
  return [["More money", `${spokenName(study, row, style)}, ${extra} more: ${odds(row.ready_mean)}${cost}`]];
}

/** [h] above 0 °C. */
export function wetHours({ wet_h, frost_h }: WinterRowDocument): number {
  return Math.max(0, wet_h.p50 - frost_h.p50);
}

export function heat({ energy_kwh, fuel_kwh }: WinterRowDocument): string {
  const total = energy_kwh.p50 + fuel_kwh.p50;
  return total < 10 ? total.toFixed(1) : total.toFixed(0);
}

/** Without the chance that a plan is made for: it is no part of the name. */
function spokenName(study: WinterStudyDocument, row: WinterRowDocument, style: Style): string {
  return nameOf(study, row, style).replace(/, \d+ of 100$/, "");
}

export function nameOf(
  { kits, habits }: WinterStudyDocument,
  { kit, habit }: WinterRowDocument,
  { say }: Style,
): string {
  return `${kits[kit]!.name}, ${say(habits[habit]!.label)}`;
}

function moneyText(value: number, { currency }: WinterStudyDocument): string {
  return `${value.toFixed(0)} ${currency}`.trimEnd();
}

function hours(value: number): string {
  return value < 10 && value > 0 ? value.toFixed(1) : value.toFixed(0);
}
