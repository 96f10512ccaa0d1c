import { celsiusFromKelvin } from "../units/index.js";
import { type CsvRow, numberOfCell } from "../weather/index.js";
import type { ProbeColumn } from "./log-columns.js";
import { type FindingList, range, runsOf } from "./log-findings.js";
import { BELIEVABLE, COLD, NO_VALUE_NUMBERS, POWER_ON, POWER_ON_JUMP, placeKind } from "./log-rules.js";
import { celsiusOf, kelvinOf } from "./log-units.js";

/** Why a cell gave no temperature. */
type Lack = "nothing" | "no-value" | "no-number" | "unbelievable";

/** What loggers write where a probe gives nothing (common knowledge, in small letters). */
const NO_VALUE_WORDS = new Set(
  (
    "nan n/a #n/a na null none nil err error fault fail failed open short ol o.l. ovf unf lo ll lll hi hh hhh nc " +
    "missing disconnected off nosensor noprobe novalue"
  ).split(" "),
);
/** More stretches of empty cells than this in one column are told in one finding. */
const STRETCHES_OF_NOTHING = 20;

/** [K] of each probe at the rows in `order`, NaN where a cell gives no temperature; each of those is in a finding. */
export function temperaturesOf(
  rows: readonly CsvRow[],
  order: Int32Array,
  columns: readonly ProbeColumn[],
  findings: FindingList,
): readonly Float64Array[] {
  const lacks = columns.map(() => new Map<number, Lack>());
  const temps = columns.map((column, p) => {
    const series = new Float64Array(order.length).fill(Number.NaN);
    for (let k = 0; k < order.length; k++) {
      const read = temperatureOf(rows[order[k]].cells[column.index], column);
      if (typeof read === "number") series[k] = read;
      else lacks[p].set(k, read);
    }
    return series;
  });
  columns.forEach((column, p) => {
    for (const k of afterPowerOn(temps[p])) {
      temps[p][k] = Number.NaN;
      lacks[p].set(k, "no-value");
    }
    listLacks(column, p);
  });
  return temps;

  function listLacks(column: ProbeColumn, p: number): void {
    const isCold = coldness(columns, temps, p);
    const empty: (readonly [number, number])[] = [];
    for (const lack of ["nothing", "no-value", "no-number", "unbelievable"] as const) {
      const lacking = [...lacks[p]].flatMap(([k, kind]) => (kind === lack ? [k] : [])).sort((a, b) => a - b);
      for (const [first, last] of runsOf(lacking)) {
        if (lack === "nothing" && !isCold(first, last)) empty.push([first, last]);
        else list(lack, [[first, last]], isCold(first, last));
      }
    }
    if (empty.length > STRETCHES_OF_NOTHING) list("nothing", empty, false);
    else for (const stretch of empty) list("nothing", [stretch], false);

    function list(lack: Lack, stretches: readonly (readonly [number, number])[], cold: boolean): void {
      const rowsOf = stretches.flatMap(([first, last]) => range(first, last).map((k) => order[k]));
      const cell = rows[order[stretches[0][0]]].cells[column.index].trim();
      const noValue = lack === "nothing" || lack === "no-value";
      findings.add(
        rowsOf.sort((a, b) => a - b),
        {
          kind: noValue && cold ? "no-value-in-cold" : lack === "nothing" ? "gap" : "bad-value",
          expected:
            lack === "unbelievable"
              ? `a temperature from ${BELIEVABLE[0]} to ${BELIEVABLE[1]} °C`
              : "a temperature",
          received: `${cell || "nothing"}${rowsOf.length > 1 ? ` (${rowsOf.length} cells)` : ""}`,
          rejected: true,
        },
        column.name,
      );
    }
  }
}

/** [K], or why there is none. */
function temperatureOf(cell: string, { unit }: ProbeColumn): number | Lack {
  const text = cell.trim();
  if (text === "") return "nothing";
  const number = numberOfCell(text) ?? numberBeforeUnit(text, unit);
  if (number === undefined) return isNoValueWord(text) ? "no-value" : "no-number";
  const celsius = celsiusOf(number, unit);
  if (NO_VALUE_NUMBERS.some((sign) => isSame(celsius, sign))) return "no-value";
  return celsius >= BELIEVABLE[0] && celsius <= BELIEVABLE[1] ? kelvinOf(number, unit) : "unbelievable";
}

/** "-12.5 °C" in a column of °C. */
function numberBeforeUnit(text: string, unit: string): number | undefined {
  const match = /^(.*\d)\s*(?:°|º|˚)?\s*([cf])$/i.exec(text);
  return match?.[2].toLowerCase() === unit ? numberOfCell(match[1]) : undefined;
}

function isNoValueWord(text: string): boolean {
  return /^[-\u2012-\u2015_.*?\s]+$/.test(text) || NO_VALUE_WORDS.has(text.toLowerCase().replace(/\s/g, ""));
}

/** A sensor's own number, also when it came through °F with one decimal. */
function isSame(celsius: number, sign: number): boolean {
  return Math.abs(celsius - sign) < 0.03;
}

/** Readings of the power-on value whose neighbours on both sides, as far as there are any, are far away. */
function afterPowerOn(temps: Float64Array): readonly number[] {
  const signs: number[] = [];
  temps.forEach((temp, k) => {
    if (isSame(celsiusFromKelvin(temp), POWER_ON)) signs.push(k);
  });
  return runsOf(signs).flatMap(([first, last]) => {
    const before = temps.subarray(0, first).findLast((temp) => !Number.isNaN(temp));
    const after = temps.subarray(last + 1).find((temp) => !Number.isNaN(temp));
    const neighbours = [before, after].filter((temp) => temp !== undefined);
    const far = neighbours.every((temp) => Math.abs(celsiusFromKelvin(temp) - POWER_ON) >= POWER_ON_JUMP);
    return far && neighbours.length > 0 ? range(first, last) : [];
  });
}

/** Whether it was so cold around a stretch of one probe that its silence may come from that. */
function coldness(
  columns: readonly ProbeColumn[],
  temps: readonly Float64Array[],
  p: number,
): (first: number, last: number) => boolean {
  const isCold = (temp: number | undefined) => temp !== undefined && celsiusFromKelvin(temp) <= COLD;
  const air = temps.filter((_, q) => q !== p && placeKind(columns[q].place) === "exposed");
  return (first, last) =>
    isCold(nearestBefore(temps[p], first)) ||
    isCold(nearestAfter(temps[p], last)) ||
    air.some((series) => isCold(nearestBefore(series, first + 1)) || isCold(nearestAfter(series, last - 1)));
}

/** How many rows a neighbour is looked for: the cold of half a day ago says nothing. */
const NEIGHBOURHOOD = 100;

function nearestBefore(temps: Float64Array, k: number): number | undefined {
  return temps.subarray(Math.max(0, k - NEIGHBOURHOOD), k).findLast((temp) => !Number.isNaN(temp));
}

function nearestAfter(temps: Float64Array, k: number): number | undefined {
  return temps.subarray(k + 1, k + 1 + NEIGHBOURHOOD).find((temp) => !Number.isNaN(temp));
}
