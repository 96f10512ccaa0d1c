/// <reference types="vite/types/importMeta.d.ts" />
import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { ValidationCase, ValidationGroup } from "./case.js";

// docs/validation.md lists every validation case. `npm run validation` writes it; the test fails when it has drifted.

const FILE = new URL("../../docs/validation.md", import.meta.url);

const modules = import.meta.glob<Record<string, unknown>>("./*.cases.ts", { eager: true });
const groups = Object.keys(modules)
  .sort()
  .flatMap((file) => Object.values(modules[file]).filter(isGroup));

test("docs/validation.md lists every validation case as it comes out now", () => {
  const table = markdown(groups);
  if (process.env.WRITE_VALIDATION === "1") writeFileSync(FILE, table);
  // Compared as a flag: a diff of a thousand lines helps nobody.
  const same = readFileSync(FILE, "utf8") === table;
  expect(same, "run `npm run validation` and look at what changed").toBe(true);
});

test("there are the cases that were promised", () => {
  const published = groups.flatMap((g) => g.cases).filter((c) => c.mark === "published");
  expect(published.length).toBeGreaterThanOrEqual(120);
});

function isGroup(value: unknown): value is ValidationGroup {
  return typeof value === "object" && value !== null && "cases" in value && "title" in value;
}

function markdown(all: readonly ValidationGroup[]): string {
  const cases = all.flatMap((g) => g.cases);
  const counts = new Map<string, number>();
  for (const c of cases) counts.set(c.mark, (counts.get(c.mark) ?? 0) + 1);
  return [
    "# Validation",
    "",
    "Numbers of this project held against numbers from outside. Written by `npm run validation`; the tests fail when it",
    "drifts. `got` is rounded to a hundredth of the tolerance.",
    "",
    `${cases.length} cases: ${[...counts].map(([mark, n]) => `${n} ${mark}`).join(", ")}.`,
    ...all.flatMap((group) => [
      "",
      `## ${group.title}`,
      "",
      "| case | expected | got | tolerance | unit | mark | source |",
      "|---|---|---|---|---|---|---|",
      ...group.cases.map(row),
    ]),
    "",
  ].join("\n");
}

function row(c: ValidationCase): string {
  const cells = [
    c.name,
    number(c.expected),
    rounded(c.got(), c.tolerance),
    `±${number(c.tolerance)} (${c.toleranceReason})`,
    c.unit,
    c.mark,
    c.source,
  ];
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
}

function number(value: number): string {
  return String(Number(value.toPrecision(12)));
}

/** Rounded to a hundredth of the tolerance, so that the last bits of a machine's arithmetic do not show. */
function rounded(value: number, tolerance: number): string {
  const step = 10 ** Math.floor(Math.log10(Math.max(tolerance, Number.MIN_VALUE) / 100));
  return number(Number((Math.round(value / step) * step).toPrecision(12)));
}
