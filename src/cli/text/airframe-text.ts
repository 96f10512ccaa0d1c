import type { Said, SaidCaution } from "../../findings/index.js";
import { fahrenheitFromCelsius, localText, type StampDocument } from "../../index.js";
import type { Style } from "../style.js";
import { type Opening, screen } from "./opening.js";
import { assumed, cared, clock, list, odds, unitOf } from "./words.js";

const NBSP = "\u00a0";

/** A temperature to a tenth, without its unit: frost hangs on tenths. */
export function tenths(celsius: number, { units }: Style): string {
  const shown = (units === "f" ? fahrenheitFromCelsius(celsius) : celsius).toFixed(1);
  return shown === "-0.0" ? "0.0" : shown;
}

export function tenthsWithUnit(celsius: number, style: Style): string {
  return `${tenths(celsius, style)}${NBSP}${unitOf("c", style)}`;
}

/** A share of drawn cases, no surer than their number allows. @example countedOdds(1, 40) // "over 39 in 40" */
export function countedOdds(share: number, members: number): string {
  if (share === 1) return `over${NBSP}${members - 1} in ${members}`;
  if (share === 0) return `under${NBSP}1 in ${members}`;
  return share < 0.1 ? `${Math.round(share * members)} in ${members}` : odds(share);
}

/** The same of what may hurt, never less than was counted. @example countedRisk(0.18, 100) // "2 in 10" */
export function countedRisk(share: number, members: number): string {
  if (share === 0 || share === 1) return countedOdds(share, members);
  if (share < 0.1) return countedOdds(share, members);
  const of = share >= 0.95 ? 20 : 10;
  const cases = Math.ceil(share * of - 1e-9);
  return cases === of ? `over${NBSP}${of - 1} in ${of}` : `${cases} in ${of}`;
}

/** [lines] of a first screen. */
const SCREEN = 24;

/** A first screen with its third caution where there is room for it. */
export function fittedScreen(opening: Opening, rest: () => string[], style: Style): string[] {
  const first = screen(opening, rest, { ...style, all: false });
  const cautions = opening.cautions.slice(0, first.length > SCREEN ? 2 : 3);
  return screen({ ...opening, cautions }, rest, style);
}

/** An areal mass; a millimetre of water is one of them. @example mass(0.0938) // "0.09 kg/m²" */
export function mass(kilograms: number): string {
  return `${massValue(kilograms)}${NBSP}kg/m²`;
}

export function massValue(kilograms: number): string {
  if (kilograms < 0.0005) return "0";
  return kilograms.toFixed(kilograms < 0.0095 ? 3 : kilograms < 1.95 ? 2 : 1);
}

interface TimeBand {
  readonly p05: StampDocument | null;
  readonly p50: StampDocument | null;
  readonly p95: StampDocument | null;
}

/** "19:57 (9 in 10 cases: 18:33 to 23:16)"; `never` stands for what has not come by the end. */
export function timeBandText({ p05, p50, p95 }: TimeBand, sameDayAs: StampDocument, never: string): string {
  const at = (stamp: StampDocument | null) => (stamp === null ? never : clock(stamp, sameDayAs));
  if (p05 === null) return `${never} in 19 in 20 cases`;
  if (p50 === null) return `${at(p05)} at the earliest, ${never} in half of the cases`;
  return `${at(p50)} (9 in 10 cases: ${at(p05)} to ${at(p95)})`;
}

/** One column of a table over time: its heading, its width and its cells. */
export interface Column {
  readonly heading: string;
  readonly width: number;
  readonly cells: readonly string[];
}

/** [lines] most of a table over time. */
const MOST_LINES = 25;

/** Rows on whole hours from the start, more hours apart where there are many, under local times. */
export function hourlyRows(
  hours: readonly number[],
  start: StampDocument,
  zone: string,
  columns: readonly Column[],
  style: Style,
): string[] {
  const step = Math.max(1, Math.ceil(hours[hours.length - 1] / MOST_LINES));
  const epoch = Date.parse(start.time) / 1000;
  const heading = columns.map((c) => c.heading.padStart(c.width)).join("");
  const rows = hours.flatMap((hour, s) => {
    if (Math.abs(hour / step - Math.round(hour / step)) > 1e-6) return [];
    const time = localText(epoch + hour * 3600, zone).slice(11, 16);
    return [`${time} ${columns.map((c) => c.cells[s].padStart(c.width)).join("")}`];
  });
  return [style.colors.bold(`${"time".padEnd(6)}${heading}`), ...rows];
}

interface Outlook {
  readonly assumptions: readonly Said[];
  readonly warnings: readonly {
    readonly path: string;
    readonly expected: string;
    readonly received: string;
  }[];
  readonly cautions: readonly SaidCaution[];
}

/** What stands below every whole answer about the airframe. */
export function closing({ assumptions, warnings, cautions }: Outlook, style: Style): string[] {
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
