import type { KitComparisonDocument, WinterRowDocument, WinterStudyDocument } from "../documents/index.js";

type KitEntry = KitComparisonDocument["kits"][number];
type KitCase = KitEntry["cases"][number];

/** Compares by one number after the other, smaller first. */
function byNumbers<T>(keys: (one: T) => readonly number[]): (a: T, b: T) => number {
  return (a, b) => {
    const [left, right] = [keys(a), keys(b)];
    const at = left.findIndex((value, i) => value !== right[i]);
    return at < 0 ? 0 : left[at]! - right[at]!;
  };
}

/** [1] rows below the wanted chance are told apart in steps of this. */
const STEP_OF_RATE = 0.05;

/**
 * Rows that may be recommended, best first: those ready as often as wanted before the others, then the cheapest winter with
 * everybody's time paid; where prices are missing the least time, then the least heat.
 */
export function rankRows(rows: readonly WinterRowDocument[], wanted: number): number[] {
  const able = rows
    .map((row, index) => ({ row, index }))
    .filter(({ row }) => row.refused === "" && row.not_advised.length === 0);
  const isPriced = able.every(({ row }) => row.winter_cost !== null);
  const missing = ({ ready_mean }: WinterRowDocument) =>
    ready_mean >= wanted ? 0 : 1 + Math.floor((wanted - ready_mean) / STEP_OF_RATE);
  const spent = (row: WinterRowDocument) =>
    isPriced ? [row.winter_cost!.p50] : [row.attended_h.p50, heatOf(row)];
  return able
    .sort(byNumbers(({ row, index }) => [missing(row), ...spent(row), -row.ready_mean, index]))
    .map(({ index }) => index);
}

function heatOf({ energy_kwh, fuel_kwh }: WinterRowDocument): number {
  return energy_kwh.p50 + fuel_kwh.p50;
}

/** [1] what counts as ready more often. */
const MORE_OFTEN = 0.02;

/** The rows that the answer speaks of. */
export function winterAnswer(
  rows: readonly WinterRowDocument[],
  ranking: readonly number[],
  kits: WinterStudyDocument["kits"],
): WinterStudyDocument["answer"] {
  const [best] = ranking;
  const unadvised = rows.flatMap((row, i) => (row.refused === "" && row.not_advised.length > 0 ? [i] : []));
  if (best === undefined) return { best: null, readier: null, dearer: null, unadvised: unadvised[0] ?? null };
  const top = rows[best]!;
  const price = (row: WinterRowDocument) => kits[row.kit]!.price;
  const gains = (row: WinterRowDocument) =>
    row.ready_mean >= top.ready_mean + MORE_OFTEN ||
    (row.winter_cost !== null && top.winter_cost !== null && row.winter_cost.p50 < top.winter_cost.p50);
  const dearer = ranking.filter((i) => (price(rows[i]!) ?? 0) > (price(top) ?? Number.POSITIVE_INFINITY));
  const readier = ranking.filter((i) => rows[i]!.ready_mean >= top.ready_mean + MORE_OFTEN);
  return {
    best,
    readier: readier.sort(byNumbers((i) => [-rows[i]!.ready_mean]))[0] ?? null,
    dearer: dearer.find((i) => gains(rows[i]!)) ?? null,
    unadvised: unadvised.find((i) => rows[i]!.kit === top.kit) ?? unadvised[0] ?? null,
  };
}

const isMet = ({ status }: KitCase) => status !== "not-reached";

/** Cases from the mildest to the hardest: warmer first, then calmer. */
function casesByCold(cases: readonly KitCase[]): number[] {
  return cases.map((_, c) => c).sort(byNumbers((c) => [-cases[c]!.air_c, cases[c]!.wind_mps]));
}

/** Index of the coldest case such that it and all milder ones are met, and of the mildest that is not; null: none. */
function reachOf(cases: readonly KitCase[]): {
  readonly cold: number | null;
  readonly next: number | null;
} {
  const order = casesByCold(cases);
  const at = order.findIndex((c) => !isMet(cases[c]!));
  const met = at < 0 ? order : order.slice(0, at);
  return { cold: met.at(-1) ?? null, next: at < 0 ? null : order[at]! };
}

/** How many cases from the mildest on are met. */
function depthOf({ cases }: KitEntry): number {
  const { next } = reachOf(cases);
  return next === null ? cases.length : casesByCold(cases).indexOf(next);
}

/** Kits that may be recommended, best first: none has to stay, then those that reach colder, then the cheaper start. */
export function rankKits(kits: readonly KitEntry[]): number[] {
  const able = kits
    .map((kit, index) => ({ kit, index }))
    .filter(({ kit }) => kit.barred.length === 0 && kit.not_advised.length === 0 && depthOf(kit) > 0);
  const sum = ({ cases }: KitEntry, pick: (one: KitCase) => number) =>
    cases.filter(isMet).reduce((total, one) => total + pick(one), 0);
  const starts = (kit: KitEntry) => {
    const isPriced = able.every(({ kit: { cases } }) => cases.every(({ cost }) => cost.all !== null));
    return isPriced ? sum(kit, ({ cost }) => cost.all!) : sum(kit, ({ attended_h }) => attended_h);
  };
  const warm = ({ cases }: KitEntry) =>
    cases.filter(({ aim, status }) => status !== "not-reached" && aim === "warm-through").length;
  return able
    .sort(
      byNumbers(({ kit, index }) => [
        Number(kit.attended),
        -depthOf(kit),
        -warm(kit),
        starts(kit),
        kit.price ?? 0,
        index,
      ]),
    )
    .map(({ index }) => index);
}

/** What the answer of a comparison speaks of. */
export function kitAnswer(
  kits: readonly KitEntry[],
  ranking: readonly number[],
): KitComparisonDocument["answer"] {
  const [best] = ranking;
  if (best === undefined) return { best: null, cold: null, next: null, colder: null, dearer: null };
  const top = kits[best]!;
  const deeper = ranking
    .filter((k) => depthOf(kits[k]!) > depthOf(top))
    .sort(byNumbers((k) => [-depthOf(kits[k]!)]));
  const met = ({ cases }: KitEntry) => cases.filter(isMet).length;
  const dearer = ranking.filter(
    (k) => (kits[k]!.price ?? 0) > (top.price ?? Number.POSITIVE_INFINITY) && met(kits[k]!) > met(top),
  );
  return { best, ...reachOf(top.cases), colder: deeper[0] ?? null, dearer: dearer[0] ?? null };
}
