import { COVERS, type Cover, HEATERS, type Heater, INSTALLATIONS, type Installation } from "../../index.js";
import type { Style } from "../style.js";
import { wrapped } from "./words.js";

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
      wrapped(entry.name, style.width, `  ${entry.id.padEnd(24)}`, " ".repeat(26)),
    ),
  ]);
}

/** Every number of an entry, and where the numbers come from. */
export function catalogueEntry(entry: Entry, style: Style): string[] {
  const { id, name, origins, ...rest } = entry;
  const cautions = "cautions" in rest ? rest.cautions : [];
  const values = leaves(rest).filter(([path]) => !path.startsWith("cautions"));
  const width = Math.max(...values.map(([path]) => path.length)) + 2;
  return [
    style.colors.bold(`${id}: ${name}`),
    ...values.map(([path, value]) => `  ${path.padEnd(width)}${value}`),
    "",
    style.colors.bold("Origin of the numbers"),
    ...Object.entries(origins).flatMap(([path, origin]) =>
      wrapped(`${path === "" ? "all" : path}: ${origin}`, style.width, "  ", "    "),
    ),
    ...(cautions.length === 0 ? [] : ["", style.colors.bold("Care")]),
    ...cautions.flatMap(({ text, source }) => wrapped(`${text} (${source})`, style.width, "- ")),
  ];
}

function leaves(value: unknown, path = ""): [string, string][] {
  if (typeof value !== "object" || value === null) return [[path, String(value)]];
  return Object.entries(value).flatMap(([key, entry]) => leaves(entry, path === "" ? key : `${path}.${key}`));
}
