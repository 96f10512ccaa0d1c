import { finding } from "../findings/index.js";
import { SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { createLocalClock, readCsvTable } from "../weather/index.js";
import type { Clock } from "./clock.js";
import { dailyTimes } from "./daily-times.js";
import { fault, type Notes } from "./reading.js";
import type { ReadFile } from "./weather-sources/index.js";
import type { WinterSections } from "./winter-schema.js";

/** [h] project judgement: a training or survey flight. */
const USUAL_FLIGHT = 1.5;

/** When a winter's aircraft is wanted, [s] since epoch ascending, and how long it is away. */
export function flyingOf(
  { flying }: WinterSections,
  span: Clock,
  readFile: ReadFile | undefined,
  notes: Notes,
): { readonly departures: readonly number[]; readonly flightTime: number } | undefined {
  if (flying === undefined) return undefined;
  const { schedule, departures_csv, flight_h = USUAL_FLIGHT } = flying;
  if (flying.flight_h === undefined) notes.assumptions.push(finding("flight-taken", { hours: flight_h }));
  if ((schedule === undefined) === (departures_csv === undefined)) {
    const received = schedule === undefined ? "neither" : "both";
    return fault(notes, ["flying"], "either schedule or departures_csv", received);
  }
  const flightTime = flight_h * SECONDS_OF_HOUR;
  const all =
    departures_csv === undefined
      ? (schedule ?? []).flatMap(({ days, at }) => dailyTimes(at, span, days))
      : departuresFrom(departures_csv, span, readFile, notes);
  const wanted = [...new Set(all)].sort((a, b) => a - b);
  const sorted = wanted.filter((t) => t > span.start + FIRST_DAY);
  if (sorted.length < wanted.length) {
    notes.assumptions.push(finding("first-day-left-out", { departures: wanted.length - sorted.length }));
  }
  const tight = sorted.findIndex((t, i) => i > 0 && t - sorted[i - 1]! < flightTime + BETWEEN);
  if (tight > 0) {
    const gap = `${((sorted[tight]! - sorted[tight - 1]!) / SECONDS_OF_HOUR).toFixed(2)} h`;
    fault(notes, ["flying"], `departures at least flight_h and half an hour apart, ${flight_h + 0.5} h`, gap);
  }
  if (sorted.length === 0) fault(notes, ["flying"], "departures after the winter's first day", "none");
  return { departures: sorted, flightTime };
}

/** [s] the aircraft is given to take the weather's temperature before it is wanted first. */
const FIRST_DAY = 24 * SECONDS_OF_HOUR;
/** [s] on the ground between two flights. */
const BETWEEN = 30 * SECONDS_OF_MINUTE;

function departuresFrom(
  name: string,
  { start, end, zone }: Clock,
  readFile: ReadFile | undefined,
  notes: Notes,
): number[] {
  const path = ["flying", "departures_csv"];
  const file = readFile?.(name) ?? { ok: false as const, reason: "files cannot be read here" };
  if (!file.ok) {
    fault(notes, path, `a file that can be read (${file.reason})`, name);
    return [];
  }
  const table = readCsvTable(file.text);
  const column = table?.header.cells.map((cell) => cell.toLowerCase()).indexOf("time") ?? -1;
  if (table === undefined || column < 0) {
    fault(notes, path, "a header line with a column time, and rows", name);
    return [];
  }
  const at = (line: number) => `flying.departures_csv, line ${line}`;
  notes.issues.push(...table.faults.map(({ line, ...rest }) => ({ path: at(line), ...rest })));
  const read = createLocalClock(zone);
  return table.rows.flatMap(({ line, cells }) => {
    const text = cells[column]!;
    const reading = read(text);
    if (reading.ok && reading.epoch >= start && reading.epoch <= end) return [reading.epoch];
    const expected = reading.ok ? "a time within the winter" : reading.expected;
    notes.issues.push({ path: at(line), expected, received: text });
    return [];
  });
}
