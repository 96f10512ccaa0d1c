import type { KitChoice, ReadWinter } from "../documents/index.js";
import type { Finding } from "../findings/index.js";
import { allCriteria } from "../readiness/index.js";
import { unplugBeforeOf } from "./heater-limits.js";
import { forecastsOf, heaterScheduleOf, meanBefore } from "./heater-schedule.js";
import { createLeadTable, type LeadTable } from "./lead-table.js";
import { runSeason } from "./season.js";
import { posteriorOf } from "./season-aircraft.js";
import type { MonthTotals, SeasonTotals } from "./season-totals.js";
import { forecastAge, habitRefused } from "./switching.js";

/** A piece of a study: one kit through one winter, all habits. Pieces are independent of each other. */
export interface Piece {
  readonly kit: number;
  readonly year: number;
}

/** What a piece came to, as plain data that JSON carries without loss. Lists over members have the middle aircraft first. */
export interface PieceResult extends Piece {
  readonly habits: readonly HabitResult[];
}

export interface HabitResult {
  /** Why this habit cannot be had with this kit; then all numbers are 0 and lists empty. */
  readonly refused: Finding | "";
  /** Departures each member was ready for, and of those warm through. */
  readonly ready: readonly number[];
  readonly warm: readonly number[];
  readonly failing: Readonly<Record<string, number>>;
  /** [J] per member */
  readonly energy: readonly number[];
  readonly fuel: readonly number[];
  /** [s] */
  readonly heaterTime: number;
  readonly longestOn: number;
  readonly shortestOn: number;
  readonly switchOns: number;
  readonly attendedTime: number;
  /** [K] per member, 0 where never heated */
  readonly hottestSurface: readonly number[];
  readonly hottestFilm: readonly number[];
  readonly tooHot: number;
  readonly givenUp: number;
  /** [s] wet or frosted inside, and of those frosted */
  readonly wetTime: number;
  readonly frostTime: number;
  readonly breatherFrost: number;
  readonly months: Readonly<Record<string, MonthTotals>>;
}

export interface PieceOptions {
  /** See SeasonRequest. */
  readonly exact?: { readonly tolerance: number };
  readonly onProgress?: ((done: number) => boolean) | undefined;
}

/** Every piece of a study, kit by kit. */
export function piecesOf({ kits, years }: Pick<ReadWinter, "kits" | "years">): Piece[] {
  return kits.flatMap((_, kit) => years.map((_, year) => ({ kit, year })));
}

/** Name of a piece, the same in every process. */
export function pieceKey({ kit, year }: Piece): string {
  return `kit ${kit}, winter ${year}`;
}

/** Works one piece out; undefined when stopped. */
export function runPiece(
  read: ReadWinter,
  piece: Piece,
  options: PieceOptions = {},
): PieceResult | undefined {
  const choice = read.kits[piece.kit];
  const year = read.years[piece.year];
  if (choice === undefined || year === undefined)
    throw new RangeError(
      `unknown piece: ${pieceKey(piece)} (of ${read.kits.length} kits, ${read.years.length} winters)`,
    );
  const refusals = read.habits.map((habit) => habitRefused(choice, habit, read));
  const allowed = read.habits.filter((_, h) => refusals[h] === "");
  if (allowed.length === 0) return { ...piece, habits: refusals.map(refusedResult) };
  const forecasts = forecastsOf(read, choice, year.weather, piece.year);
  const schedules = allowed.map((habit) => {
    const table = habit.do === "planned" ? leadTableOf(read, piece.kit, habit.chance) : undefined;
    return heaterScheduleOf(read, choice, habit, forecasts, table);
  });
  const tallies = runSeason({
    ...{ read, kit: piece.kit, weather: year.weather, schedules },
    ...(options.exact === undefined ? {} : { exact: options.exact }),
    onProgress: options.onProgress,
  });
  if (tallies === undefined) return undefined;
  let next = 0;
  return {
    ...piece,
    habits: refusals.map((refused) =>
      refused === "" ? resultOf(tallies[next++]!.totals) : refusedResult(refused),
    ),
  };
}

/** Drawn aircraft that a lead is worked out over: the chance is known to 6 %. */
const TABLE_MEMBERS = 16;
/** [K] beyond the coldest and warmest night, for forecasts that err. */
const TABLE_MARGIN = 3;

const tables = new WeakMap<ReadWinter, Map<string, LeadTable>>();

/** The leads a plan would choose for a kit; worked out once a study, over all its winters' temperatures. */
export function leadTableOf(read: ReadWinter, kit: number, chance: number): LeadTable {
  const known = tables.get(read) ?? new Map<string, LeadTable>();
  tables.set(read, known);
  const key = `${kit}:${chance}`;
  const table = known.get(key) ?? madeTable(read, kit, chance);
  known.set(key, table);
  return table;
}

function madeTable(read: ReadWinter, kit: number, chance: number): LeadTable {
  const { installation, place, site, limits, coverOffBefore, ensemble, years, departures } = read;
  const choice: KitChoice = read.kits[kit]!;
  const unplugBefore = unplugBeforeOf(choice.kit, read.unplugBefore);
  const temps = years.flatMap(({ weather }) => departures.map((t) => meanBefore(weather, t).tempAir));
  return createLeadTable({
    ...{ installation, kit: choice.kit, place, site, unplugBefore, coverOffBefore, chance },
    criteria: allCriteria(installation, choice.kit, limits),
    age: place === "hangar" ? undefined : forecastAge(choice.switching),
    ensemble: { members: TABLE_MEMBERS, seed: ensemble.seed + 1, posterior: posteriorOf(read, kit) },
    tempRange: [Math.min(...temps) - TABLE_MARGIN, Math.max(...temps) + TABLE_MARGIN],
  });
}

function resultOf(totals: SeasonTotals): HabitResult {
  const list = (values: Float64Array) => Array.from(values);
  return {
    ...totals,
    refused: "",
    ready: list(totals.ready),
    warm: list(totals.warm),
    energy: list(totals.energy),
    fuel: list(totals.fuel),
    hottestSurface: list(totals.hottestSurface),
    hottestFilm: list(totals.hottestFilm),
    failing: Object.fromEntries([...totals.failing].sort()),
    months: Object.fromEntries([...totals.months].sort()),
  };
}

function refusedResult(refused: Finding | ""): HabitResult {
  const none = {
    heaterTime: 0,
    longestOn: 0,
    shortestOn: 0,
    switchOns: 0,
    attendedTime: 0,
    tooHot: 0,
    givenUp: 0,
    wetTime: 0,
    frostTime: 0,
    breatherFrost: 0,
  };
  const lists = { ready: [], warm: [], energy: [], fuel: [], hottestSurface: [], hottestFilm: [] };
  return { refused, ...none, ...lists, failing: {}, months: {} };
}
