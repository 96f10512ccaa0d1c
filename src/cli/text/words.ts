export { clock, day } from "./clock.js";

import { finding, type Said, type SaidCaution } from "../../findings/index.js";
import {
  type CriterionDocument,
  fahrenheitFromCelsius,
  type HeaterBasis,
  WIND_UNITS,
  windIn,
} from "../../index.js";
import { english, sayIn } from "../../words/index.js";
import type { Style } from "../style.js";

/** Values that have no unit of the reader's. */
export const { odds, span, needed } = sayIn("en", { temp: "c", wind: "mps" }, english);

/** Between a number and its unit, so that they stay on one line; printed as a space. */
const NBSP = "\u00a0";

/** The same without its unit, for tables and axes. */
export function bareTemperature(celsius: number, { units }: Style): string {
  // Adding 0 turns -0 into 0.
  return String(Math.round(units === "f" ? fahrenheitFromCelsius(celsius) : celsius) + 0);
}

/** What a heater's numbers rest on: "measured on 2 runs". */
export function basisText(basis: HeaterBasis, style: Style): string {
  return style.say(finding("heater-basis", basis));
}

type Unit = CriterionDocument["unit"];

/** A value of a criterion without its unit. */
export function bareValue(value: number, unit: Unit, style: Style): string {
  switch (unit) {
    case "c":
      return bareTemperature(value, style);
    case "k":
      return String(Math.round(inUnitsOfDifference(value, style)) + 0);
    case "percent":
    case "ratio":
      return value.toFixed(1);
    case "rpm":
    case "index":
    case "count":
      return String(Math.round(value) + 0);
  }
}

/** Unit of a margin of a value in `unit`: degrees apart, not degrees. */
export function marginUnit(unit: Unit): Unit {
  return unit === "c" ? "k" : unit;
}

export function unitOf(unit: Unit, { units }: Style): string {
  switch (unit) {
    case "c":
      return units === "f" ? "°F" : "°C";
    case "k":
      return units === "f" ? "F°" : "K";
    case "percent":
      return "%";
    case "ratio":
      return "times";
    case "index":
      return "of 100";
    case "rpm":
      return "rpm";
    case "count":
      return "";
  }
}

function inUnitsOfDifference(kelvins: number, { units }: Style): number {
  return units === "f" ? kelvins * 1.8 : kelvins;
}

/** The same without its unit, for tables. */
export function bareWind(mps: number, { wind }: Style, decimals = 0): string {
  return windIn(mps, wind).toFixed(decimals);
}

export function windUnit({ wind }: Style): string {
  return WIND_UNITS[wind];
}

/** A chance; never "100 %" for less, nor "0 %" for more than none. */
export function percent(share: number): string {
  if (share > 0.99 && share < 1) return `over${NBSP}99${NBSP}%`;
  if (share > 0 && share < 0.01) return `under${NBSP}1${NBSP}%`;
  return `${Math.round(share * 100)}${NBSP}%`;
}

/** How many of 100 cases, never more than was counted. @example ofHundred(0.888) // "88 of 100" */
export function ofHundred(share: number): string {
  return `${bareOfHundred(share).replace(">", "over ").replace("<", "under ")} of 100`;
}

/** The same for columns. @example bareOfHundred(0.999) // ">99" */
export function bareOfHundred(share: number): string {
  if (share > 0.99) return ">99";
  return share < 0.01 ? "<1" : String(Math.floor(100 * share + 1e-9));
}

/** Lines of at most `width` characters, the later ones indented. */
export function wrapped(
  text: string,
  width: number,
  first = "",
  later = first.replace(/[^ ]/g, " "),
): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(" ")) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = later + word;
    } else line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}

/** A fact with its label in a column of its own. */
export function fact(label: string, text: string, style: Style): string[] {
  const [first, ...rest] = wrapped(text, style.width, label.padEnd(LABEL_WIDTH), " ".repeat(LABEL_WIDTH));
  return [style.colors.bold(first.slice(0, LABEL_WIDTH)) + first.slice(LABEL_WIDTH), ...rest];
}

const LABEL_WIDTH = 14;

/** A heading with a list below it; nothing when the list is empty. */
export function list(heading: string, entries: readonly string[], style: Style): string[] {
  if (entries.length === 0) return [];
  return ["", style.colors.bold(heading), ...entries.flatMap((entry) => wrapped(entry, style.width, "- "))];
}

/** What was assumed, in the user's unit. */
export function assumed(assumptions: readonly Said[], style: Style): string[] {
  return list("Assumed", assumptions.map(style.say), style);
}

/** Cautions with their sources. */
export function cared(cautions: readonly SaidCaution[], style: Style): string[] {
  return list(
    "Care",
    cautions.map((caution) => `${style.say(caution)} (${caution.source})`),
    style,
  );
}

interface Ending {
  readonly assumptions: readonly Said[];
  readonly warnings: readonly {
    readonly path: string;
    readonly expected: string;
    readonly received: string;
  }[];
  readonly cautions: readonly SaidCaution[];
}

/** What stands below every whole answer. */
export function closing({ assumptions, warnings, cautions }: Ending, style: Style): string[] {
  return [
    ...assumed(assumptions, style),
    ...list(
      "Doubtful input",
      warnings.map((w) => `${w.path}: expected ${w.expected}, received ${w.received}`),
      style,
    ),
    ...cared(cautions, style),
  ];
}

export const DEFERENCE =
  "The aircraft's handbook and the engine maker's instructions decide, and local fire and electrical rules; this is a calculation.";
