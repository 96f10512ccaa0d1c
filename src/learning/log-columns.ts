import { isElementPart } from "../aircraft/index.js";
import type { CsvRow } from "../weather/index.js";
import type { ProbePlace } from "./log.js";
import type { ColumnUse, LogIssue, LogOptions, LogQuestion, TemperatureUnit } from "./log-options.js";
import { PROBE_PARTS } from "./log-rules.js";
import { type TimeColumns, timeColumnsOf } from "./log-time-columns.js";
import { unitOfCell, unitOfName } from "./log-units.js";
import { guessOfName } from "./log-words.js";

export interface ProbeColumn {
  readonly index: number;
  readonly name: string;
  readonly place: ProbePlace;
  readonly unit: TemperatureUnit;
}

export interface LogColumns {
  readonly time: TimeColumns;
  readonly probes: readonly ProbeColumn[];
  readonly questions: readonly LogQuestion[];
}

/** A header's names, each different from the others: a second "T1" in column 4 becomes "T1 (column 4)". */
function columnNames(header: readonly string[]): readonly string[] {
  return header.map((cell, i) => {
    const name = cell === "" ? `column ${i + 1}` : cell;
    return header.indexOf(cell) === i ? name : `${name} (column ${i + 1})`;
  });
}

/** Whether the first row below the header holds units and no readings. */
export function isUnitRow(cells: readonly string[]): boolean {
  return cells.some((cell) => unitOfCell(cell) !== undefined) && !cells.some((cell) => /\d/.test(cell));
}

/**
 * What each column is, from the options, its name and its unit. What stays open becomes a question; undefined, with
 * issues, where the options contradict the file or no time can be found.
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
  const probes: ProbeColumn[] = [];
  const questions: LogQuestion[] = [];
  names.forEach((name, index) => {
    const use = uses.get(index);
    if (use === "not-used" || time?.indices.includes(index)) return;
    const unit = unitOf(header[index], unitRow?.[index] ?? "", units.get(index), options.unit, issues);
    const guess =
      use === undefined ? guessOfName(header[index]) : { kind: "place" as const, place: use as ProbePlace };
    const ask = (question: Pick<LogQuestion, "ask" | "why" | "guesses">) =>
      questions.push({ column: name, ...question, samples: samplesOf(rows, index) });
    if (guess.kind === "ambiguous")
      ask({ ask: "place", why: "its name fits several places", guesses: guess.guesses });
    if (guess.kind === "unknown") ask({ ask: "place", why: "its name tells no place", guesses: [] });
    if (guess.kind === "other-quantity")
      ask({
        ask: "place",
        why: `its name says ${guess.word}, which is no temperature: not-used?`,
        guesses: [],
      });
    if (guess.kind !== "place") return;
    if (unit === undefined)
      ask({ ask: "unit", why: "neither its name nor the options say °C or °F", guesses: [guess.place] });
    else probes.push({ index, name, place: guess.place, unit });
  });
  if (probes.length + questions.length === 0 && time !== undefined) {
    issues.push({ place: "header", expected: "a column of temperatures", received: names.join(", ") });
  }
  return issues.length > 0 || time === undefined ? undefined : { time, probes, questions };
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

/** The unit that name, row of units and options agree on; the option for all columns serves those that say none. */
function unitOf(
  name: string,
  unitCell: string,
  option: TemperatureUnit | undefined,
  otherwise: TemperatureUnit | undefined,
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
  return said[0]?.unit ?? otherwise;
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
