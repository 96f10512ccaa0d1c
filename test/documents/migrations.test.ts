import { expect, test } from "vitest";
import { SCENARIO_VERSION } from "../../src/documents/index.js";
import type { Migration } from "../../src/documents/migration.js";
import { migrated, SCENARIO_MIGRATIONS } from "../../src/documents/migrations.js";

/** A made-up history: version 1 said `wind_kt`, version 2 says `wind_mps`, version 3 wants a list. */
const CHAIN: readonly Migration[] = [
  {
    from: 1,
    migrate({ wind_kt, ...rest }) {
      if (typeof wind_kt !== "number") throw new TypeError("wind_kt is no number");
      return { ...rest, wind_mps: wind_kt / 2 };
    },
  },
  { from: 2, migrate: ({ wind_mps, ...rest }) => ({ ...rest, winds_mps: [wind_mps] }) },
];

test("a document of today passes unchanged", () => {
  const document = { soakline: SCENARIO_VERSION, name: "x" };
  expect(migrated(document)).toEqual({ ok: true, document, from: SCENARIO_VERSION });
});

test("an old document goes through every step, a middle one through the rest", () => {
  expect(migrated({ soakline: 1, wind_kt: 10 }, CHAIN, 3)).toEqual({
    ok: true,
    document: { soakline: 3, winds_mps: [5] },
    from: 1,
  });
  expect(migrated({ soakline: 2, wind_mps: 7 }, CHAIN, 3)).toEqual({
    ok: true,
    document: { soakline: 3, winds_mps: [7] },
    from: 2,
  });
});

test("the original is left as it was", () => {
  const document = { soakline: 1, wind_kt: 10 };
  migrated(document, CHAIN, 3);
  expect(document).toEqual({ soakline: 1, wind_kt: 10 });
});

test.each([
  [[], { kind: "not-an-object" }],
  ["text", { kind: "not-an-object" }],
  [null, { kind: "not-an-object" }],
  [{}, { kind: "missing-version" }],
  [{ soakline: "1" }, { kind: "invalid-version", version: "1" }],
  [{ soakline: 1.5 }, { kind: "invalid-version", version: 1.5 }],
  [{ soakline: 0 }, { kind: "invalid-version", version: 0 }],
  [{ soakline: 4 }, { kind: "newer-version", version: 4, current: 3 }],
  [
    { soakline: 1, wind_kt: "10" },
    { kind: "migration-failed", from: 1, reason: "wind_kt is no number" },
  ],
])("%j is a failure of its own kind", (document, failure) => {
  expect(migrated(document, CHAIN, 3)).toEqual({ ok: false, failure });
});

test("a chain with a gap, a double step or a missing end is a mistake in the program", () => {
  expect(() => migrated({ soakline: 1 }, CHAIN.slice(1), 3)).toThrow(RangeError);
  expect(() => migrated({ soakline: 1 }, [...CHAIN, CHAIN[1]], 3)).toThrow(/invalid migrations/);
  expect(() => migrated({ soakline: 1 }, CHAIN, 4)).toThrow(/expected from 1, 2, 3/);
});

test("the steps kept lead to the current version", () => {
  expect(SCENARIO_MIGRATIONS.map((m) => m.from)).toEqual(
    Array.from({ length: SCENARIO_VERSION - 1 }, (_, i) => i + 1),
  );
});
