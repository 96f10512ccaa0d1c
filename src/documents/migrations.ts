import { isRecord } from "./issue.js";

/** Version of the scenario document written and read here. */
export const SCENARIO_VERSION = 1;

/** A step from one version of a document to the next. */
export interface Migration {
  readonly from: number;
  /** Returns the document in the form of version `from + 1`; the version number itself is set by the chain. */
  migrate(document: Readonly<Record<string, unknown>>): Record<string, unknown>;
}

export type MigrationFailure =
  | { readonly kind: "not-an-object" }
  | { readonly kind: "missing-version" }
  | { readonly kind: "invalid-version"; readonly version: unknown }
  | { readonly kind: "newer-version"; readonly version: number; readonly current: number }
  | { readonly kind: "migration-failed"; readonly from: number; readonly reason: string };

export type MigrationResult =
  | { readonly ok: true; readonly document: Record<string, unknown>; readonly from: number }
  | { readonly ok: false; readonly failure: MigrationFailure };

/** Every step from version 1 to the current one, in order. There is none yet: version 1 is the current one. */
export const SCENARIO_MIGRATIONS: readonly Migration[] = [];

/**
 * Brings a document of any earlier version to version `current`. Throws RangeError when the steps do not lead without
 * a gap from version 1 to `current`: that is a mistake in the program, not in the document.
 */
export function migrated(
  document: unknown,
  migrations: readonly Migration[] = SCENARIO_MIGRATIONS,
  current: number = SCENARIO_VERSION,
): MigrationResult {
  requireContiguous(migrations, current);
  if (!isRecord(document)) return failed({ kind: "not-an-object" });
  const version = document[VERSION_KEY];
  if (version === undefined) return failed({ kind: "missing-version" });
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return failed({ kind: "invalid-version", version });
  }
  if (version > current) return failed({ kind: "newer-version", version, current });
  let step = document;
  for (const migration of migrations.slice(version - 1)) {
    try {
      step = { ...migration.migrate(step), [VERSION_KEY]: migration.from + 1 };
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      return failed({ kind: "migration-failed", from: migration.from, reason });
    }
  }
  return { ok: true, document: step, from: version };
}

/** The key that carries the version. */
export const VERSION_KEY = "soakline";

function requireContiguous(migrations: readonly Migration[], current: number): void {
  const from = migrations.map((m) => m.from);
  const wanted = Array.from({ length: current - 1 }, (_, i) => i + 1);
  if (from.length === wanted.length && from.every((version, i) => version === wanted[i])) return;
  throw new RangeError(
    `invalid migrations: from ${from.join(", ")} (expected from ${wanted.join(", ") || "nowhere"})`,
  );
}

function failed(failure: MigrationFailure): MigrationResult {
  return { ok: false, failure };
}
