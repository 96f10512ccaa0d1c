import type { Finding } from "../findings/index.js";

/** A fault in a document: where it is, what belongs there, what stands there. */
export interface DocumentIssue {
  /** "kit.heaters[0].longest_on_h"; "document" for the whole. */
  readonly path: string;
  readonly expected: string;
  readonly received: string;
  /** The whole of it as a finding, where there is one. */
  readonly reason?: Finding;
}

export type Path = readonly PropertyKey[];

/** A path as one writes it in JavaScript. @example pathText(["kit", "heaters", 0, "id"]) // "kit.heaters[0].id" */
export function pathText(path: Path): string {
  let text = "";
  for (const key of path) {
    if (typeof key === "number") text += `[${key}]`;
    else text += text === "" ? String(key) : `.${String(key)}`;
  }
  return text === "" ? "document" : text;
}

/** A value as it stands in a document, short enough for one line; "nothing" where there is none. */
function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  const text = JSON.stringify(value) ?? String(value);
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`;
}

const LONGEST = 60;

export function issueAt(path: Path, expected: string, received: unknown): DocumentIssue {
  return { path: pathText(path), expected, received: shown(received) };
}

/** One line for a terminal or a log. */
export function issueText({ path, expected, received }: DocumentIssue): string {
  return `${path}: expected ${expected}, received ${received}`;
}

/** The value at a path of a document. */
export function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const key of path) {
    if (typeof value !== "object" || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
