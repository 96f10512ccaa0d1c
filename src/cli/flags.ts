import { InvalidArgumentError, Option } from "commander";
import type { Overrides, WindUnit } from "../index.js";
import { textOf } from "./named-file.js";
import type { Shell } from "./shell.js";

/** What-ifs and looks shared by the commands that run a scenario. */
export interface RunFlags {
  readonly json?: boolean;
  readonly units?: "c" | "f";
  readonly windUnits?: WindUnit;
  readonly all?: boolean;
  readonly members?: number;
  readonly seed?: number;
  readonly chance?: number;
  readonly depart?: string;
  /** Back at the aircraft: the departure of `away`. */
  readonly back?: string;
  readonly heater?: readonly string[];
  readonly withoutCover?: boolean;
  readonly engineC?: number;
  readonly taf?: string;
  readonly metar?: string;
}

export const FLAG = {
  json: () => new Option("--json", "print JSON instead of text"),
  units: () => new Option("--units <unit>", "temperatures in °C or °F").choices(["c", "f"]).default("c"),
  wind: () =>
    new Option("--wind-units <unit>", "winds in kt, m/s or km/h")
      .choices(["kt", "mps", "kmh"])
      .default("mps"),
  all: () => new Option("--all", "print everything, not only the first screen"),
  members: () =>
    new Option("--members <n>", "number of cases that chances are counted over").argParser(aNumber),
  seed: () => new Option("--seed <n>", "seed of the random cases").argParser(aNumber),
  chance: () => new Option("--chance <p>", "wanted chance of being ready, such as 0.9").argParser(aNumber),
  depart: () => new Option("--depart <time>", "departure: HH:MM, or an ISO date and time"),
  back: () => new Option("--back <time>", "when it is to be started again: HH:MM, or an ISO date and time"),
  heater: () =>
    new Option("--heater <id>", "what if: only this heater; may be repeated").argParser(
      (id: string, before: readonly string[] = []) => [...before, id],
    ),
  withoutCover: () => new Option("--without-cover", "what if: nothing on the cowl"),
  engine: () =>
    new Option(
      "--engine-c <temperature>",
      "what if: the whole engine starts at this temperature, °C",
    ).argParser(aNumber),
  column: () =>
    new Option("--column <header=part>", "part that a log column measures; may be repeated").argParser(
      (pair: string, before: readonly string[] = []) => [...before, pair],
    ),
  logUnit: () => new Option("--log-unit <unit>", "unit of log columns that name none").choices(["c", "f"]),
  logEngine: () =>
    new Option(
      "--log-engine <n>",
      "which engine of a log with two: 1 left (taken unless told), 2 right",
    ).choices(["1", "2"]),
  aircraft: () => new Option("--aircraft <id>", "engine of the catalogue").default("four-carburettor-160"),
  taf: () => new Option("--taf <file>", "TAF file instead of the document's weather"),
  metar: () => new Option("--metar <file>", "METAR file instead of the document's weather"),
};

/** The what-ifs asked for, with report files read. Throws BadInput for a file that cannot be read. */
export function overridesOf(flags: Partial<RunFlags>, shell: Pick<Shell, "readText">): Overrides {
  return {
    withoutCover: flags.withoutCover,
    heaters: flags.heater,
    departure: flags.back ?? flags.depart,
    chance: flags.chance,
    members: flags.members,
    seed: flags.seed,
    engine_c: flags.engineC,
    taf: flags.taf === undefined ? undefined : textOf(flags.taf, "--taf", shell),
    metar: flags.metar === undefined ? undefined : textOf(flags.metar, "--metar", shell),
  };
}

function aNumber(text: string): number {
  const value = Number(text.trim() === "" ? Number.NaN : text);
  if (Number.isFinite(value)) return value;
  throw new InvalidArgumentError("Expected a number.");
}
