import type { z } from "zod";
import { type DocumentIssue, issueAt, type Path, valueAt } from "./issue.js";

type SchemaIssue = z.core.$ZodIssue;

/** Every fault a schema found in `document`, in the words of this project. */
export function issuesOfSchema(error: z.ZodError, document: unknown): DocumentIssue[] {
  return error.issues.flatMap((issue) => translated(issue, [], document));
}

function translated(issue: SchemaIssue, parent: Path, document: unknown): DocumentIssue[] {
  const path = [...parent, ...issue.path];
  const at = (expected: string) => [issueAt(path, expected, valueAt(document, path))];
  switch (issue.code) {
    case "invalid_type":
      return at(withArticle(issue.expected));
    case "invalid_value":
      return at(oneOf(issue.values));
    case "too_small":
    case "too_big":
      return at(rangeText(issue));
    case "unrecognized_keys":
      return issue.keys.map((key) =>
        issueAt([...path, key], `no such key (${issue.message})`, valueAt(document, [...path, key])),
      );
    case "invalid_union":
      return ofUnion(issue, path, document);
    default:
      return at(issue.message);
  }
}

/** Of the alternatives, the one the value was meant to be: the one it enters, with the fewest faults. */
function ofUnion(
  issue: SchemaIssue & { code: "invalid_union" },
  path: Path,
  document: unknown,
): DocumentIssue[] {
  if (issue.errors.length === 0) {
    const { options } = issue as { options?: readonly unknown[] };
    return [issueAt(path, oneOf(options ?? []), valueAt(document, path))];
  }
  const entered = issue.errors.filter((issues) => !issues.some(isTypeMismatchAtRoot));
  if (entered.length === 0) {
    const kinds = issue.errors.map((issues) => issues.find(isTypeMismatchAtRoot)?.expected ?? "");
    return [issueAt(path, kinds.map(withArticle).join(" or "), valueAt(document, path))];
  }
  const nearest = entered.reduce((a, b) => (b.length < a.length ? b : a));
  return nearest.flatMap((inner) => translated(inner, path, document));
}

function isTypeMismatchAtRoot(issue: SchemaIssue): issue is SchemaIssue & { code: "invalid_type" } {
  return issue.code === "invalid_type" && issue.path.length === 0;
}

function rangeText(issue: SchemaIssue & { code: "too_small" | "too_big" }): string {
  const bound = issue.code === "too_small" ? issue.minimum : issue.maximum;
  const more = issue.code === "too_small";
  if (issue.origin === "array" || issue.origin === "string") {
    const what = issue.origin === "array" ? "entries" : "characters";
    return more ? `at least ${bound} ${what}` : `at most ${bound} ${what}`;
  }
  if (issue.inclusive) return more ? `a number of ${bound} or more` : `a number of ${bound} or less`;
  return more ? `a number above ${bound}` : `a number below ${bound}`;
}

function oneOf(values: readonly unknown[]): string {
  const shown = values.map((value) => JSON.stringify(value));
  return shown.length === 1 ? `${shown[0]}` : `one of ${shown.join(", ")}`;
}

function withArticle(kind: string): string {
  if (kind === "int") return "a whole number";
  if (kind === "record") return "an object";
  return /^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`;
}
