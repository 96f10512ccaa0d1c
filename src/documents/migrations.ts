import { isRecord } from "./issue.js";
import { FROM_1_TO_2 } from "./migrate-1-to-2.js";
import type { Migration } from "./migration.js";

/** Version of the scenario document written and read here. */
export const SCENARIO_VERSION = 2;

export type MigrationFailure =
  | { readonly kind: "not-an-object" }
  | { readonly kind: "missing-version" }
  | { readonly kind: "invalid-version"; readonly version: unknown }
  | { readonly kind: "newer-version"; readonly version: number; readonly current: number }
  | { readonly kind: "migration-failed"; readonly from: number; readonly reason: string };

export type MigrationResult =
  | { readonly ok: true; readonly document: Record<string, unknown>; readonly from: number }
  | { readonly ok: false; readonly failure: MigrationFailure };

/**
 * Every step from version 1 to the current one, in order.
 * @internal
 */
export const SCENARIO_MIGRATIONS: readonly Migration[] = [FROM_1_TO_2];

/**
 * Brings a document of any earlier version to version `current`. Throws RangeError when the steps do not lead without
 * a gap from version 1 to `current`: that is a mistake in the program, not in the document. `key` carries the version.
 */
export function migrated(
  document: unknown,
  migrations: readonly Migration[] = SCENARIO_MIGRATIONS,
  current: number = SCENARIO_VERSION,
  key: string = VERSION_KEY,
): MigrationResult {
  requireContiguous(migrations, current);
  if (!isRecord(document)) return failed({ kind: "not-an-object" });
  const version = document[key];
  if (version === undefined) return failed({ kind: "missing-version" });
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return failed({ kind: "invalid-version", version });
  }
  if (version > current) return failed({ kind: "newer-version", version, current });
  let step = document;
  for (const migration of migrations.slice(version - 1)) {
    try {
      step = { ...migration.migrate(step), [key]: migration.from + 1 };
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
