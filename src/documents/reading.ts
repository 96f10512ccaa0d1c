import { z } from "zod";
import type { Notes } from "../scenario/index.js";
import { type DocumentIssue, issueAt, type Path } from "./issue.js";
import { type ScenarioSections, scenarioSchema } from "./scenario-schema.js";
import { issuesOfSchema } from "./schema-issues.js";

export type { Notes };

/** What was read of a document, or every fault in it. */
export type Reading<T> =
  | ({ readonly ok: true } & T)
  | { readonly ok: false; readonly issues: readonly DocumentIssue[] };

export function newNotes(): Notes {
  return { issues: [], warnings: [], assumptions: [] };
}

export function fault(notes: Notes, path: Path, expected: string, received: unknown): undefined {
  notes.issues.push(issueAt(path, expected, received));
  return undefined;
}

/**
 * Reads every section of a scenario by its own schema, so that a fault in one does not hide those in another. Sections
 * with a fault, and those left out, are undefined.
 */
export function sectionsOf(document: Readonly<Record<string, unknown>>, notes: Notes): ScenarioSections {
  return sectionsBy(scenarioSchema, document, notes);
}

/** The same for a document of any kind, by its schema. */
export function sectionsBy<T extends z.ZodRawShape>(
  { shape }: z.ZodObject<T>,
  document: Readonly<Record<string, unknown>>,
  notes: Notes,
): Partial<z.infer<z.ZodObject<T>>> {
  const sections: Record<string, unknown> = {};
  for (const [key, schema] of Object.entries(shape)) {
    const section = document[key] === undefined ? {} : { [key]: document[key] };
    const parsed = z.object({ [key]: schema }).safeParse(section);
    if (parsed.success) Object.assign(sections, parsed.data);
    else notes.issues.push(...issuesOfSchema(parsed.error, section));
  }
  for (const key of Object.keys(document)) {
    if (Object.hasOwn(shape, key)) continue;
    fault(notes, [key], `no such key (known: ${Object.keys(shape).join(", ")})`, document[key]);
  }
  return sections as Partial<z.infer<z.ZodObject<T>>>;
}
