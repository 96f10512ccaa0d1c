import { fahrenheitFromCelsius, localText, type StampDocument } from "../../index.js";
import type { Style } from "../style.js";
import { clock, unitOf } from "./words.js";

const NBSP = "\u00a0";

/** A temperature to a tenth, without its unit: frost hangs on tenths. */
export function tenths(celsius: number, { units }: Style): string {
  const shown = (units === "f" ? fahrenheitFromCelsius(celsius) : celsius).toFixed(1);
  return shown === "-0.0" ? "0.0" : shown;
}

export function tenthsWithUnit(celsius: number, style: Style): string {
  return `${tenths(celsius, style)}${NBSP}${unitOf("c", style)}`;
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
