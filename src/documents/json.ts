import type { DocumentIssue } from "./issue.js";

export type JsonResult =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly issue: DocumentIssue };

/** A document given as text or already as a value. */
export function jsonOf(source: unknown): JsonResult {
  if (typeof source !== "string") return { ok: true, value: source };
  try {
    // Editors on some systems begin a file with a byte order mark.
    return { ok: true, value: JSON.parse(source.replace(/^\ufeff/, "")) };
  } catch (error) {
    const place = placeOf(source, error instanceof Error ? error.message : "");
    const received = source.trim() === "" ? "nothing" : place.line.slice(0, 60);
    return { ok: false, issue: { path: place.path, expected: `JSON (${place.reason})`, received } };
  }
}

function placeOf(text: string, message: string): { path: string; line: string; reason: string } {
  const position = /position (\d+)/.exec(message);
  const reason = message.replace(/ in JSON.*$/s, "").replace(/, ?".*$/s, "") || "not readable";
  const lines = text.split(/\r\n|\r|\n/);
  if (position === null) return { path: "document", line: lines.at(-1) ?? "", reason };
  const before = text.slice(0, Number(position[1])).split(/\r\n|\r|\n/);
  return { path: `line ${before.length}`, line: (lines[before.length - 1] ?? "").trim(), reason };
}
