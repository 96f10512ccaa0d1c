import { type DocumentIssue, isRecord, issueAt } from "./issue.js";
import { jsonOf } from "./json.js";
import { type MigrationFailure, migrated, VERSION_KEY } from "./migrations.js";

export type CurrentForm =
  | { readonly ok: true; readonly document: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly issue: DocumentIssue };

/**
 * A scenario of any version in the form of today's. One without a readable version is taken as it stands: its schema
 * then names the version among the other faults.
 */
export function inCurrentForm(value: unknown): CurrentForm {
  const migration = migrated(value);
  if (migration.ok) return { ok: true, document: migration.document };
  const { failure } = migration;
  const unversioned = failure.kind === "missing-version" || failure.kind === "invalid-version";
  if (unversioned && isRecord(value)) return { ok: true, document: value };
  return { ok: false, issue: migrationIssue(failure, value) };
}

/** The same for a document, as text or as a value, whose kind says what it asks; another kind has no faults but that. */
export function inFormOfKind(kind: string, source: unknown): CurrentForm {
  const json = jsonOf(source);
  if (!json.ok) return json;
  const form = inCurrentForm(json.value);
  if (!form.ok || form.document.kind === kind) return form;
  return { ok: false, issue: issueAt(["kind"], JSON.stringify(kind), form.document.kind) };
}

function migrationIssue(failure: MigrationFailure, document: unknown): DocumentIssue {
  switch (failure.kind) {
    case "newer-version":
      return issueAt(
        [VERSION_KEY],
        `${failure.current} or less: the document is of a newer program`,
        failure.version,
      );
    case "migration-failed":
      return issueAt([], `a document of version ${failure.from} that can be brought forward`, failure.reason);
    default:
      return issueAt([], "an object", document);
  }
}
