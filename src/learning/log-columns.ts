import { isElementPart } from "../aircraft/index.js";
import type { CsvRow } from "../weather/index.js";
import type { ColumnTaken, ProbePlace } from "./log.js";
import type { ColumnUse, LogIssue, LogOptions, LogQuestion, TemperatureUnit } from "./log-options.js";
import { PROBE_PARTS } from "./log-rules.js";
import { runningOf, type SignalColumn } from "./log-signals.js";
import { type TimeColumns, timeColumnsOf } from "./log-time-columns.js";
import { type UnitLessColumn, unitByValues } from "./log-unit-guess.js";
import { unitOfCell, unitOfName } from "./log-units.js";
import { engineOfName, guessOfName, type NameGuess } from "./log-words.js";

export interface ProbeColumn {
  readonly index: number;
  readonly name: string;
  readonly place: ProbePlace;
  readonly unit: TemperatureUnit;
  /** Name of the mean that it goes into: heads of one engine are taken together. */
  readonly group?: string;
}

export interface LogColumns {
  readonly time: TimeColumns;
  readonly probes: readonly ProbeColumn[];
  readonly signals: readonly SignalColumn[];
  readonly questions: readonly LogQuestion[];
  /** What every column was taken for. */
  readonly taken: readonly ColumnTaken[];
  /** Engines that the names tell apart, and the one that was taken; undefined where they tell of none. */
  readonly engine: 1 | 2 | undefined;
}

/** What is known of a column before its unit. */
interface Found {
  readonly index: number;
  readonly name: string;
  readonly guess: NameGuess;
  readonly isTold: boolean;
  readonly unit: TemperatureUnit | undefined;
  readonly engine?: 1 | 2;
  readonly group?: string;
}

/** A header's names, each different from the others: a second "T1" in column 4 becomes "T1 (column 4)". */
function columnNames(header: readonly string[]): readonly string[] {
  return header.map((cell, i) => {
    const name = cell === "" ? `column ${i + 1}` : cell;
    return header.indexOf(cell) === i ? name : `${name} (column ${i + 1})`;
  });
}

/**
 * What each column is, from the options, its name, its unit and its values. What stays open becomes a question; undefined,
 * with issues, where the options contradict the file or no time can be found.
 */
export function columnsOf(
  header: readonly string[],
  unitRow: readonly string[] | undefined,
  rows: readonly CsvRow[],
  options: LogOptions,
  issues: LogIssue[],
): LogColumns | undefined {
  const names = columnNames(header);
  const uses = answered(names, options.columns, isUse, USES, issues);
  const units = answered(names, options.units, isUnit, "c or f", issues);
  const time = timeColumnsOf(names, uses, rows, issues);
  const found = names.flatMap((name, index): Found[] => {
    const use = uses.get(index);
    if (time?.indices.includes(index)) return [];
    const unit = unitOf(header[index], unitRow?.[index] ?? "", units.get(index), issues);
    const isTold = use !== undefined;
    const guess: NameGuess = !isTold
      ? guessOfName(header[index])
      : use === "not-used"
        ? { kind: "other-quantity", word: "not-used" }
        : { kind: "place", place: use as ProbePlace };
    return [{ index, name, guess, isTold, unit }];
  });
  const { columns: ofOne, engine } = engineTaken(found, header, options);
  const grouped = groupedHeads(ofOne.filter(({ isLeft }) => !isLeft));
  const signals = grouped.flatMap(({ index, guess }): SignalColumn[] =>
    guess.kind === "signal" ? [{ index, signal: guess.signal }] : [],
  );
  const byValues = options.unit ?? unitOfValues(grouped, rows, signals);
  const probes: ProbeColumn[] = [];
  const questions: LogQuestion[] = [];
  const taken: ColumnTaken[] = (time?.indices ?? []).map((i) => ({ column: names[i], as: "time" }));
  for (const { index, name, isLeft } of ofOne) {
    if (isLeft) taken.push({ column: name, as: "not-used", why: "other-engine" });
    else take(grouped.find((one) => one.index === index)!);
  }
  const isOpen = probes.length + questions.length > 0;
  if (!isOpen && time !== undefined) {
    issues.push({ place: "header", expected: "a column of temperatures", received: names.join(", ") });
  }
  if (issues.length > 0 || time === undefined) return undefined;
  return { time, probes, signals, questions, taken, engine };

  function take({ index, name, guess, unit: said, group, isTold }: Found): void {
    const ask = (question: Pick<LogQuestion, "ask" | "why" | "guesses">) => {
      questions.push({ column: name, ...question, samples: samplesOf(rows, index) });
      taken.push({ column: name, as: "not-used", why: "open" });
    };
    if (guess.kind === "ambiguous")
      ask({ ask: "place", why: "its name fits several places", guesses: guess.guesses });
    else if (guess.kind === "unknown") ask({ ask: "place", why: "its name tells no place", guesses: [] });
    else if (guess.kind === "other-quantity")
      taken.push({ column: name, as: "not-used", why: isTold ? "told" : "other-quantity" });
    else if (guess.kind === "signal") taken.push({ column: name, as: guess.signal });
    else takeProbe(guess.place);

    function takeProbe(place: ProbePlace): void {
      const unit = said ?? byValues;
      if (unit === undefined) {
        const why = "neither its name, its values nor the options say °C or °F";
        ask({ ask: "unit", why, guesses: [place] });
        return;
      }
      const ofGroup = group === undefined ? {} : { group };
      const isGuessed = said === undefined && options.unit === undefined;
      probes.push({ index, name, place, unit, ...ofGroup });
      taken.push({ column: name, as: place, unit, ...(isGuessed ? { unitBy: "values" } : {}), ...ofGroup });
    }
  }
}

/**
 * One engine's columns, where the names tell of two: the one asked for, or the first. Left and right alone may be the banks
 * of one engine: they are engines where a side has more than one kind of column.
 */
function engineTaken(found: readonly Found[], header: readonly string[], { engine: wanted }: LogOptions) {
  const read = found.map((one) => {
    const { engine, rest } = engineOfName(header[one.index]);
    const guess = one.isTold ? one.guess : guessOfName(rest);
    const tells = guess.kind === "place" || guess.kind === "signal" || guess.kind === "ambiguous";
    return engine !== undefined && tells ? { ...one, guess, engine } : one;
  });
  const kindsOf = (engine: 1 | 2) =>
    new Set(read.flatMap((one) => (one.engine === engine ? [JSON.stringify(one.guess)] : [])));
  const kinds = [kindsOf(1), kindsOf(2)].map((of) => of.size);
  const areEngines = kinds[0] > 0 && kinds[1] > 0 && Math.max(...kinds) > 1;
  if (!areEngines) {
    // One engine that is numbered all the same: the number is no cylinder's.
    const one = kinds[0] > 1 || kinds[1] > 1;
    return { columns: (one ? read : found).map((c) => ({ ...c, isLeft: false })), engine: undefined };
  }
  const engine = wanted ?? 1;
  return {
    columns: read.map((c) => ({ ...c, isLeft: c.engine !== undefined && c.engine !== engine && !c.isTold })),
    engine,
  };
}

/** Heads, or barrels, of several cylinders are one probe with the mean of them. */
function groupedHeads(found: readonly Found[]): readonly Found[] {
  const numbered = found.filter(({ guess }) => guess.kind === "ambiguous" && guess.isNumbered);
  const placeOf = ({ guess }: Found) => (guess.kind === "ambiguous" ? JSON.stringify(guess.guesses[0]) : "");
  return found.map((one) => {
    if (!numbered.includes(one) || one.guess.kind !== "ambiguous") return one;
    const together = numbered.filter((other) => placeOf(other) === placeOf(one));
    if (together.length < 2) return one;
    const [first, last] = [together[0], together[together.length - 1]];
    const group = `${first.name} … ${last.name}`;
    return { ...one, guess: { kind: "place", place: one.guess.guesses[0] }, group };
  });
}

function unitOfValues(
  found: readonly Found[],
  rows: readonly CsvRow[],
  signals: readonly SignalColumn[],
): TemperatureUnit | undefined {
  const open = found.flatMap(({ index, guess, unit }): UnitLessColumn[] => {
    if (unit !== undefined) return [];
    if (guess.kind === "place") return [{ index, place: guess.place }];
    return guess.kind === "signal" && guess.signal === "egt" ? [{ index, place: "exhaust" }] : [];
  });
  const air = found.flatMap(({ index, guess, unit }) =>
    guess.kind === "place" && typeof guess.place === "string" && unit !== undefined ? [{ index, unit }] : [],
  );
  const all = Int32Array.from(rows.keys());
  const ran = runningOf(rows, all, signals).some((runs) => runs === true);
  return unitByValues(rows, open, air, ran);
}

const USES = `outside-air, hangar-air, time, date, clock, not-used or a part: ${PROBE_PARTS.join(", ")}`;

function isUse(use: ColumnUse): boolean {
  if (typeof use === "object") return PROBE_PARTS.includes(use.part) || isElementPart(use.part);
  return ["outside-air", "hangar-air", "time", "date", "clock", "not-used"].includes(use);
}

function isUnit(unit: TemperatureUnit): boolean {
  return unit === "c" || unit === "f";
}

/** Answers of the options by index of their column. */
function answered<T>(
  names: readonly string[],
  answers: Readonly<Record<string, T>> | undefined,
  isValid: (answer: T) => boolean,
  expected: string,
  issues: LogIssue[],
): ReadonlyMap<number, T> {
  const found = new Map<number, T>();
  for (const [name, answer] of Object.entries(answers ?? {})) {
    const index = names.findIndex((other) => other.toLowerCase() === name.trim().toLowerCase());
    const place = `options, column ${name}`;
    if (index < 0) issues.push({ place, expected: `one of the columns ${names.join(", ")}`, received: name });
    else if (!isValid(answer))
      issues.push({ place, expected, received: JSON.stringify(answer) ?? "nothing" });
    else found.set(index, answer);
  }
  return found;
}

/** The unit that name, row of units and options agree on. */
function unitOf(
  name: string,
  unitCell: string,
  option: TemperatureUnit | undefined,
  issues: LogIssue[],
): TemperatureUnit | undefined {
  const said = [
    { by: "its name", unit: unitOfName(name) },
    { by: "the row of units", unit: unitOfCell(unitCell) },
    { by: "the options", unit: option },
  ].filter(({ unit }) => unit !== undefined);
  if (new Set(said.map(({ unit }) => unit)).size > 1) {
    issues.push({
      place: `header, column ${name}`,
      expected: "one unit",
      received: said.map(({ by, unit }) => `°${unit?.toUpperCase()} by ${by}`).join(", "),
    });
  }
  return said[0]?.unit;
}

/** The first three different values of a column that are not empty. */
function samplesOf(rows: readonly CsvRow[], index: number): readonly string[] {
  const samples = new Set<string>();
  for (const { cells } of rows) {
    const cell = cells[index].trim();
    if (cell !== "") samples.add(cell);
    if (samples.size === 3) break;
  }
  return [...samples];
}
