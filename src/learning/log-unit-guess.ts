import { type CsvRow, numberOfCell } from "../weather/index.js";
import type { ProbePlace } from "./log.js";
import type { TemperatureUnit } from "./log-options.js";
import { placeKind } from "./log-rules.js";
import { celsiusOf } from "./log-units.js";

/** A column whose unit is looked for: where it sits, or the exhaust of an engine that runs. */
export interface UnitLessColumn {
  readonly index: number;
  readonly place: ProbePlace | "exhaust";
}

/**
 * [°C] the most that each shows in any flight, and the least that its most is when the engine ran: exhaust and heads tell
 * the units apart, since what is common in one is impossible in the other. Makers' usual red lines with room to spare, from
 * memory: heads 260, oil 118; a leaned exhaust 650 to 870.
 */
const MOST = { exhaust: 1000, heads: 275, oil: 135, air: 50 } as const;
const LEAST_OF_RUNNING = { exhaust: 520, heads: 85 } as const;
/** [K] A part colder than the air around by more than this was read in the wrong unit. */
const BELOW_AIR = 8;

/**
 * The one unit of all columns without one that what they show allows; undefined where both would do, or neither.
 * @param air columns of the air with their unit, as far as that is known
 * @param ran whether the engine ran while it was logged
 */
export function unitByValues(
  rows: readonly CsvRow[],
  columns: readonly UnitLessColumn[],
  air: readonly { readonly index: number; readonly unit: TemperatureUnit }[],
  ran: boolean,
): TemperatureUnit | undefined {
  const fits = (["c", "f"] as const).filter((unit) =>
    columns.every(({ index, place }) => isPossible(index, kindOf(place), unit)),
  );
  return fits.length === 1 ? fits[0] : undefined;

  function isPossible(index: number, kind: ReturnType<typeof kindOf>, unit: TemperatureUnit): boolean {
    let most = Number.NEGATIVE_INFINITY;
    for (const { cells } of rows) {
      const value = numberOfCell(cells[index]);
      if (value === undefined) continue;
      const celsius = celsiusOf(value, unit);
      most = Math.max(most, celsius);
      if (kind === "air") continue;
      for (const other of air) {
        const around = numberOfCell(cells[other.index]);
        if (around !== undefined && celsius < celsiusOf(around, other.unit) - BELOW_AIR) return false;
      }
    }
    if (most === Number.NEGATIVE_INFINITY || kind === undefined) return true;
    if (most > MOST[kind]) return false;
    return !ran || !(kind === "exhaust" || kind === "heads") || most >= LEAST_OF_RUNNING[kind];
  }
}

function kindOf(place: ProbePlace | "exhaust"): keyof typeof MOST | undefined {
  if (place === "exhaust") return "exhaust";
  if (typeof place === "string") return "air";
  if (place.part.startsWith("heads")) return "heads";
  return placeKind(place) === "mass" ? "oil" : undefined;
}
