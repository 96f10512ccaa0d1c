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
  readonly log: string;
  /** "Header=place" pairs. */
  readonly column?: readonly string[];
  readonly logZone?: string;
  readonly logUnit?: "c" | "f";
}

/** The log of a file. Throws BadInput for a file that cannot be read, and with the questions that it leaves open. */
export function logFrom(
  { log, column = [], logZone, logUnit }: LogFlags,
  shell: Pick<Shell, "readText">,
): TemperatureLog {
  const text = textOf(log, "--log", shell);
  const options: LogOptions = {
    name: log,
    columns: Object.fromEntries(column.map(columnOf)),
    zone: logZone,
    unit: logUnit,
  };
  const reading = readTemperatureLog(text, options);
  if (!reading.ok) {
    throw new BadInput(reading.issues.map(({ place, ...rest }) => ({ path: `${log}: ${place}`, ...rest })));
  }
  const open = reading.needed ?? [];
  if (open.length > 0) throw new BadInput(open.map((question) => asked(question)));
  return reading.log;
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
