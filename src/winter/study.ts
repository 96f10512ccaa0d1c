import type {
  KitRuleDocument,
  ReadWinter,
  WinterRowDocument,
  WinterStudyDocument,
} from "../documents/index.js";
import { finding } from "../findings/index.js";
import { bandOf } from "../numerics/index.js";
import { allCriteria } from "../readiness/index.js";
import { celsiusFromKelvin, SECONDS_OF_HOUR } from "../units/index.js";
import { attendedCost, costOf, paybackOf } from "./costs.js";
import { firstCautions } from "./first-cautions.js";
import { ALWAYS_ON, overLongest, rejectionsOf } from "./heater-limits.js";
import { type HabitResult, type PieceResult, pieceKey, piecesOf } from "./piece.js";
import { rankRows, winterAnswer } from "./ranking.js";
import { headerOfWinter, roundedTo, type StudyHeader } from "./study-header.js";

const JOULES_OF_KWH = 3.6e6;

/** The study of all pieces as it is stored, exchanged and shown. Throws when a piece is missing or there twice. */
export function winterStudy(read: ReadWinter, pieces: readonly PieceResult[]): WinterStudyDocument {
  const byKey = new Map(pieces.map((piece) => [pieceKey(piece), piece]));
  const wanted = piecesOf(read);
  if (byKey.size !== pieces.length) throw new RangeError("duplicate piece: a piece's result stands twice");
  for (const piece of wanted) {
    if (!byKey.has(pieceKey(piece))) throw new RangeError(`missing piece: ${pieceKey(piece)}`);
  }
  const resultsOf = (kit: number, habit: number) =>
    read.years.map((_, year) => byKey.get(pieceKey({ kit, year }))!.habits[habit]!);
  const header: StudyHeader = headerOfWinter(read);
  const reference = resultsOf(read.against.kit, read.against.habit);
  const rows = read.kits.flatMap((_, kit) =>
    read.habits.map((_, habit) => rowOf(read, kit, habit, resultsOf(kit, habit), reference)),
  );
  const ranking = rankRows(rows, header.wanted_chance);
  return {
    ...header,
    kind: "winter-study",
    rows,
    ranking,
    first_cautions: firstCautions(
      read.kits[rows[ranking[0] ?? -1]?.kit ?? -1]?.kit,
      read.kits.map(({ kit }) => kit),
    ),
    answer: winterAnswer(rows, ranking, header.kits),
  };
}

function rowOf(
  read: ReadWinter,
  kit: number,
  habit: number,
  years: readonly HabitResult[],
  reference: readonly HabitResult[],
): WinterRowDocument {
  const refused = years[0]!.refused;
  const choice = read.kits[kit]!;
  const count = read.departures.length;
  const drawn = Array.from({ length: refused === "" ? read.ensemble.members : 0 }, (_, d) => d + 1);
  /** Over winters and drawn aircraft. */
  const over = (pick: (one: HabitResult, d: number) => number) =>
    years.flatMap((one) => drawn.map((d) => pick(one, d)));
  const perYear = (pick: (one: HabitResult) => number, digits = 1) =>
    band(refused === "" ? years.map(pick) : [], digits);
  const ready = over((one, d) => one.ready[d]! / count);
  const warm = over((one, d) => one.warm[d]! / count);
  const longest = Math.max(...years.map((one) => one.longestOn));
  const costs = years.flatMap((one) => drawn.map((d) => costOf(one, d, count, choice, read.prices)));
  const priced = costs.every((cost) => cost !== undefined) && costs.length > 0;
  const hot = (lists: "hottestSurface" | "hottestFilm") => {
    const values = over((one, d) => one[lists][d]!).filter((temp) => temp > 0);
    return values.length === 0 ? null : band(values.map(celsiusFromKelvin), 0);
  };
  const heaterTime = mean(years.map((one) => one.heaterTime));
  const life = choice.heaterLife;
  return {
    ...{ kit, habit, refused },
    not_advised: refused === "" ? notAdvised(read, kit, habit, longest) : [],
    ready_rate: band(ready, 4),
    ready_mean: roundedTo(mean(ready), 4),
    warm_rate: band(warm, 4),
    warm_mean: roundedTo(mean(warm), 4),
    heater_h: perYear((one) => one.heaterTime / SECONDS_OF_HOUR),
    switch_ons: perYear((one) => one.switchOns, 0),
    shortest_on_h: roundedTo(shortestOf(years) / SECONDS_OF_HOUR, 2),
    longest_on_h: roundedTo(longest / SECONDS_OF_HOUR, 1),
    attended_h: perYear((one) => one.attendedTime / SECONDS_OF_HOUR),
    attended_money: perYear((one) => attendedCost(one.attendedTime, read.prices), 2),
    energy_kwh: band(
      over((one, d) => one.energy[d]! / JOULES_OF_KWH),
      2,
    ),
    fuel_kwh: band(
      over((one, d) => one.fuel[d]! / JOULES_OF_KWH),
      2,
    ),
    energy_money: priced
      ? band(
          costs.map((cost) => cost!.energy),
          2,
        )
      : null,
    winter_cost: priced
      ? band(
          costs.map((cost) => cost!.all),
          2,
        )
      : null,
    wet_h: perYear((one) => one.wetTime / SECONDS_OF_HOUR),
    frost_h: perYear((one) => one.frostTime / SECONDS_OF_HOUR),
    hottest_surface_c: hot("hottestSurface"),
    hottest_film_c: hot("hottestFilm"),
    too_hot: roundedTo(mean(years.map((one) => one.tooHot / count)), 4),
    given_up: roundedTo(mean(years.map((one) => one.givenUp / count)), 4),
    weakest: weakestOf(read, kit, years, count * drawn.length * years.length),
    heater_life_winters:
      life === undefined || heaterTime === 0 || refused !== "" ? null : roundedTo(life / heaterTime, 1),
    payback_winters: paybackBand(read, kit, habit, years, reference, drawn),
    months: monthsOf(years, drawn.length),
  };
}

/** Why a habit with a kit is compared and never recommended. @param longest [s] on in one go */
function notAdvised(read: ReadWinter, kit: number, habit: number, longest: number): KitRuleDocument[] {
  const { kit: pieces } = read.kits[kit]!;
  return [
    ...rejectionsOf(pieces),
    ...overLongest(pieces, longest),
    ...(read.habits[habit]!.do === "always-on" ? [ALWAYS_ON] : []),
  ];
}

/** [s] shortest time on over winters; 0 where it was never on. */
function shortestOf(years: readonly HabitResult[]): number {
  const used = years.map((one) => one.shortestOn).filter((time) => time > 0);
  return used.length === 0 ? 0 : Math.min(...used);
}

/** Winters to payback of each drawn aircraft over all winters; null for the reference itself or where a price is missing. */
function paybackBand(
  read: ReadWinter,
  kit: number,
  habit: number,
  years: readonly HabitResult[],
  reference: readonly HabitResult[],
  drawn: readonly number[],
): WinterRowDocument["payback_winters"] {
  const { against, kits, prices, departures } = read;
  const [own, other] = [kits[kit]!, kits[against.kit]!];
  if (drawn.length === 0 || reference[0]!.refused !== "" || (kit === against.kit && habit === against.habit))
    return null;
  if (own.price === undefined || other.price === undefined) return null;
  const extra = own.price - other.price;
  const savings = drawn.map((d) => {
    const cost = (one: HabitResult, choice: typeof own) =>
      costOf(one, d, departures.length, choice, prices)?.all;
    return mean(
      years.map(
        (one, year) => (cost(reference[year]!, other) ?? Number.NaN) - (cost(one, own) ?? Number.NaN),
      ),
    );
  });
  if (savings.some(Number.isNaN)) return null;
  const sorted = savings.map((saving) => paybackOf(extra, saving)).sort((a, b) => a - b);
  const at = (p: number) => {
    const value = sorted[Math.min(sorted.length - 1, Math.round(p * (sorted.length - 1)))]!;
    return Number.isFinite(value) ? roundedTo(value, 2) : null;
  };
  return { p05: at(0.05), p50: at(0.5), p95: at(0.95) };
}

function weakestOf(
  read: ReadWinter,
  kit: number,
  years: readonly HabitResult[],
  cases: number,
): WinterRowDocument["weakest"] {
  const criteria = allCriteria(read.installation, read.kits[kit]!.kit, read.limits);
  const counts = new Map<string, number>();
  for (const { failing } of years) {
    for (const [id, count] of Object.entries(failing)) counts.set(id, (counts.get(id) ?? 0) + count);
  }
  return [...counts]
    .sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]))
    .map(([id, count]) => ({
      id,
      title: criteria.find((one) => one.id === id)?.title ?? finding("own-words", { text: id }),
      share: roundedTo(count / cases, 4),
    }));
}

/** Means over the winters, month by month. */
function monthsOf(years: readonly HabitResult[], drawn: number): WinterRowDocument["months"] {
  if (drawn === 0) return [];
  const keys = [...new Set(years.flatMap(({ months }) => Object.keys(months)))].sort();
  return keys.map((month) => {
    const found = years.flatMap(({ months }) => months[month] ?? []);
    const sum = (pick: (one: (typeof found)[number]) => number) =>
      found.reduce((total, one) => total + pick(one), 0) / years.length;
    const departures = sum((one) => one.departures);
    return {
      month,
      departures: roundedTo(departures, 2),
      ready_rate: departures > 0 ? roundedTo(sum((one) => one.ready) / departures, 4) : null,
      energy_kwh: roundedTo(sum((one) => one.energy) / JOULES_OF_KWH, 2),
      heater_h: roundedTo(sum((one) => one.heaterTime) / SECONDS_OF_HOUR, 1),
      wet_h: roundedTo(sum((one) => one.wetTime) / SECONDS_OF_HOUR, 1),
    };
  });
}

function band(values: readonly number[], digits: number) {
  if (values.length === 0) return { p05: 0, p50: 0, p95: 0 };
  const { low, mid, high } = bandOf(Float64Array.from(values));
  return { p05: roundedTo(low, digits), p50: roundedTo(mid, digits), p95: roundedTo(high, digits) };
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
