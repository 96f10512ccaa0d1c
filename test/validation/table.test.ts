/// <reference types="vite/types/importMeta.d.ts" />
import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { ValidationCase, ValidationGroup } from "./case.js";

// Every validation case of the *.cases.ts files is run here, and docs/validation.md lists them. `npm run validation`
// writes it; the test fails when it has drifted.

const FILE = new URL("../../docs/validation.md", import.meta.url);

const modules = import.meta.glob<Record<string, unknown>>("./*.cases.ts", { eager: true });
const groups = Object.keys(modules)
  .sort()
  .flatMap((file) => Object.values(modules[file]).flat().filter(isGroup));
const values = new Map(groups.flatMap(({ cases }) => cases.map((one) => [one, one.got()] as const)));

describe.each(groups.map((group) => [group.title, group.cases] as const))("%s", (_, cases) => {
  test.each(cases.map((one) => [`${one.name} [${one.source}]`, one] as const))("%s", (__, one) => {
    const got = values.get(one)!;
    expect(one.tolerance).toBeGreaterThan(0);
    expect(Number.isFinite(got), `got ${got}`).toBe(true);
    expect(
      Math.abs(got - one.expected),
      `expected ${one.expected} ± ${one.tolerance} ${one.unit}, got ${got}`,
    ).toBeLessThanOrEqual(one.tolerance);
  });
});

test("docs/validation.md lists every validation case as it comes out now", () => {
  const table = markdown();
  if (process.env.WRITE_VALIDATION === "1") writeFileSync(FILE, table);
  // Compared as a flag: a diff of a thousand lines helps nobody.
  const same = readFileSync(FILE, "utf8") === table;
  expect(same, "run `npm run validation` and look at what changed").toBe(true);
});

function isGroup(value: unknown): value is ValidationGroup {
  return typeof value === "object" && value !== null && "cases" in value && "title" in value;
}

function markdown(): string {
  const physics = casesOf("physics");
  const engine = casesOf("engine");
  const fits = [...physics, ...engine].filter((one) => one.isCalibration === true).length;
  return [
    "# Validation",
    "",
    "Numbers of this project held against numbers from outside. Written by `npm run validation`; the tests fail when it",
    "drifts. `got` is rounded to a hundredth of the tolerance.",
    "",
    `- Physics against published numbers: ${counted(physics)}.`,
    `- Whole engines against measurements: ${counted(engine)}.`,
    "",
    `Not counted: ${fits} numbers that a curve or a constant was fitted to, called calibration below, and the checks of`,
    "general mathematics. Tables and limits that the program takes over as they stand are no cases at all.",
    "",
    "## Physics of the product against published numbers",
    ...tableOf("physics"),
    "",
    "## Whole engines against measurements",
    "",
    "Runs of measured engines that set none of the constants stand in [measured-runs.md](measured-runs.md).",
    ...tableOf("engine"),
    "",
    "## General mathematics and decoding",
    "",
    `<details><summary>${casesOf("mathematics").length} checks</summary>`,
    ...tableOf("mathematics"),
    "",
    "</details>",
    "",
  ].join("\n");
}

function casesOf(part: ValidationGroup["part"]): ValidationCase[] {
  return groups.filter((group) => group.part === part).flatMap((group) => group.cases);
}

function counted(cases: readonly ValidationCase[]): string {
  const held = cases.filter((one) => one.isCalibration !== true);
  const marks = [...new Set(held.map((one) => one.mark))];
  const counts = marks.map((mark) => `${held.filter((one) => one.mark === mark).length} ${mark}`);
  return `${held.length} cases, ${counts.join("; ")}`;
}

function tableOf(part: ValidationGroup["part"]): string[] {
  return [
    "",
    "| case | expected | got | tolerance | unit | mark | source |",
    "|---|---|---|---|---|---|---|",
    ...groups
      .filter((group) => group.part === part)
      .flatMap(({ title, cases }) => [`| **${title}** | | | | | | |`, ...cases.map(row)]),
  ];
}

function row(one: ValidationCase): string {
  const cells = [
    one.name,
    number(one.expected),
    rounded(values.get(one)!, one.tolerance),
    `±${number(one.tolerance)} (${one.toleranceReason})`,
    one.unit,
    one.isCalibration === true ? `calibration, ${one.mark}` : one.mark,
    one.source,
  ];
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
}

function number(value: number): string {
  return String(Number(value.toPrecision(12)));
}

/** Rounded to a hundredth of the tolerance, so that the last bits of a machine's arithmetic do not show. */
function rounded(value: number, tolerance: number): string {
  const step = 10 ** Math.floor(Math.log10(tolerance / 100));
  return number(Number((Math.round(value / step) * step).toPrecision(12)));
}
