import {
  CALIBRATED,
  COVERS,
  type Cover,
  HEATERS,
  type Heater,
  heaterBasis,
  INSTALLATIONS,
  type Installation,
} from "../../index.js";
import type { Style } from "../style.js";
import { basisText, cared, list, wrapped } from "./words.js";

export type Section = "installations" | "heaters" | "covers";
export type Entry = Installation | Heater | Cover;

export const CATALOGUE: Readonly<Record<Section, readonly Entry[]>> = {
  installations: INSTALLATIONS,
  heaters: HEATERS,
  covers: COVERS,
};

/** One line an entry. */
export function catalogueList(sections: readonly Section[], style: Style): string[] {
  return sections.flatMap((section, i) => [
    ...(i > 0 ? [""] : []),
    style.colors.bold(section),
    ...CATALOGUE[section].flatMap((entry) =>
      wrapped(named(entry, style), style.width, `  ${entry.id.padEnd(24)}`, " ".repeat(26)),
    ),
  ]);
}

/** A heater with what its numbers rest on. */
function named(entry: Entry, style: Style): string {
  return "elements" in entry ? `${entry.name} (${basisText(heaterBasis(entry), style)})` : entry.name;
}

/** Every number of an entry, and where the numbers come from. */
export function catalogueEntry(entry: Entry, style: Style): string[] {
  const { id, name: _name, origins, ...rest } = entry;
  const { cautions = [], rejected, procedure, basis: _, ...numbers } = rest as Partial<Heater>;
  const values = leaves(numbers).map(([path, value]) => inUnitsOfKey(path, value, style));
  const width = Math.max(...values.map(([path]) => path.length)) + 2;
  return [
    style.colors.bold(`${id}: ${named(entry, style)}`),
    ...restsOn(entry, style),
    ...values.map(([path, value]) => `  ${path.padEnd(width)}${value}`),
    ...list("How it is done", procedure === undefined ? [] : stepsOf(procedure, style), style),
    "",
    style.colors.bold("Origin of the numbers"),
    ...Object.entries(origins).flatMap(([path, origin]) =>
      wrapped(`${path === "" ? "all" : path}: ${origin}`, style.width, "  ", "    "),
    ),
    ...cared(rejected === undefined ? cautions : [rejected, ...cautions], style),
  ];
}

/** How far measured engines speak for an installation. */
function restsOn(entry: Entry, style: Style): string[] {
  if (!("bodies" in entry)) return [];
  const measured = CALIBRATED.engines[entry.id];
  const text =
    measured === undefined
      ? "Rests on no measured engine of this class: scaled from the others."
      : `Rests on ${measured.runs} measured runs of ${measured.aircraft} aircraft of this class, and on those of the others.`;
  return wrapped(text, style.width, "  ", "  ");
}

function leaves(value: unknown, path = ""): [string, string][] {
  if (typeof value !== "object" || value === null) return [[path, String(value)]];
  return Object.entries(value).flatMap(([key, entry]) => leaves(entry, path === "" ? key : `${path}.${key}`));
}

function stepsOf({ steps, source }: NonNullable<Heater["procedure"]>, style: Style): string[] {
  return [...steps.map((step) => style.say(step)), `Source: ${source}`];
}

/** A temperature, or a difference of two, in the user's unit: then the unit stands at the value and not in the name. */
function inUnitsOfKey(path: string, value: string, style: Style): [string, string] {
  const key = TEMPERATURE.exec(path);
  if (key === null) return [path, value];
  return [
    path.slice(0, key.index),
    style.values.measure({ value: Number(value), unit: key[1] === "c" ? "c" : "k" }),
  ];
}

/** Not the kelvin of a conductance or of a heat capacity. */
const TEMPERATURE = /(?<!_per|_per_m)_(c|k)$/;
