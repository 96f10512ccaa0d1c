import {
  type LogOptions,
  type LogQuestion,
  type ProbePlace,
  readTemperatureLog,
  type TemperatureLog,
} from "../index.js";
import { BadInput } from "./exit.js";
import { textOf } from "./named-file.js";
import type { Shell } from "./shell.js";

/** How a log's file is to be read, as the flags say it. */
export interface LogFlags {
  readonly log?: string;
  /** "Header=place" pairs. */
  readonly column?: readonly string[];
  readonly logZone?: string;
  readonly logUnit?: "c" | "f";
  readonly logEngine?: "1" | "2";
}

/**
 * The log of a file, read as the document beside it says of zone and day. Throws BadInput for a file that cannot be read,
 * and with the questions that it leaves open where no column of it is a part; else those columns are left out, which is told.
 */
export function logFrom(
  document: string,
  { log, column = [], logZone, logUnit, logEngine }: LogFlags,
  shell: Pick<Shell, "readText">,
): TemperatureLog {
  if (log === undefined) {
    throw new BadInput([
      { path: "--log", expected: "a CSV file of logged temperatures", received: "nothing" },
    ]);
  }
  const text = textOf(log, "--log", shell);
  const options: LogOptions = {
    name: log,
    columns: Object.fromEntries(column.map(columnOf)),
    unit: logUnit,
    ...(logEngine === undefined ? {} : { engine: logEngine === "1" ? 1 : 2 }),
    ...whenOf(document, shell),
    ...(logZone === undefined ? {} : { zone: logZone }),
  };
  const reading = readTemperatureLog(text, options);
  if (!reading.ok) {
    throw new BadInput(reading.issues.map(({ place, ...rest }) => ({ path: `${log}: ${place}`, ...rest })));
  }
  const open = reading.needed ?? [];
  const isRead = reading.log.probes.some(({ place }) => typeof place === "object");
  if (open.length > 0 && !isRead) throw new BadInput(open.map((question) => asked(question)));
  return reading.log;
}

/** Zone and start of a scenario document; what is wrong with one is told where it is read itself. */
function whenOf(document: string, { readText }: Pick<Shell, "readText">): Pick<LogOptions, "zone" | "near"> {
  // Standard input can be read once.
  if (document === "-") return {};
  const file = readText(document);
  if (!file.ok) return {};
  try {
    const { zone, start } = JSON.parse(file.text);
    const near = Date.parse(start) / 1000;
    return { ...(typeof zone === "string" ? { zone } : {}), ...(Number.isNaN(near) ? {} : { near }) };
  } catch {
    return {};
  }
}

function columnOf(pair: string): [string, ProbePlace | "not-used"] {
  const at = pair.lastIndexOf("=");
  const place = pair.slice(at + 1).trim();
  if (at < 1 || place === "") {
    throw new BadInput([
      { path: "--column", expected: 'HEADER=PART, such as "T1=oil", or HEADER=not-used', received: pair },
    ]);
  }
  const isAir = place === "outside-air" || place === "hangar-air" || place === "not-used";
  return [pair.slice(0, at).trim(), isAir ? place : { part: place }];
}

function asked({ column, ask, why, samples, guesses }: LogQuestion) {
  const places = guesses.map((g) => (typeof g === "object" ? g.part : g));
  const expected =
    ask === "unit"
      ? "--log-unit c or f"
      : `--column "${column}=PART"${places.length > 0 ? `, perhaps ${places.join(" or ")}` : ""}, or =not-used`;
  return { path: `column ${column}`, expected: `${expected} (${why})`, received: samples.join(", ") };
}
