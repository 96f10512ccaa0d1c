import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

// The checklist in docs/security.md is worth what its tests are: here they are looked for by name.

const TEXT = readFileSync("docs/security.md", "utf8");

interface Row {
  readonly point: string;
  readonly state: string;
  readonly reason: string;
}

const rows: Row[] = TEXT.split("\n").flatMap((line) => {
  const [, point = "", , state = "", reason = ""] = line.split("|").map((cell) => cell.trim());
  return /^\d+\.\d+\.\d+$/.test(point) ? [{ point, state, reason }] : [];
});

/** "`file` name; `file` name; words" as [file, name], with what follows a name left out. */
function named(text: string): [string, string][] {
  return [...text.matchAll(/`([a-z-]+)` (.+?)(?=; `|$)/gs)].map(([, file, name]) => [file!, name!]);
}

function source(file: string): string {
  const path = `test/server/${file}.test.ts`;
  expect(existsSync(path), path).toBe(true);
  return readFileSync(path, "utf8");
}

/** The title of a test of the file that the text begins with, the longest. */
function titleIn(file: string, text: string): string | undefined {
  const titles = [...source(file).matchAll(/(?:\btest\(|\]\)\(|as const\)\()\s*"((?:[^"\\]|\\.)*)"/g)];
  return titles
    .map(([, title]) => title!)
    .filter((title) => text === title || text.startsWith(`${title};`))
    .sort((a, b) => b.length - a.length)[0];
}

describe("the security checklist", () => {
  test("has every point once, in a state it knows", () => {
    expect(rows.length).toBeGreaterThan(90);
    const points = rows.map(({ point }) => point);
    expect(points.filter((point, i) => points.indexOf(point) < i)).toEqual([]);
    for (const { point, state } of rows) expect(["held", "partly", "not held", "-"], point).toContain(state);
  });

  test("names a test for what is held, and a reason for what is not", () => {
    for (const { point, state, reason } of rows) {
      expect(reason, point).not.toBe("");
      if (state === "held") expect(named(reason).length, point).toBeGreaterThan(0);
      if (state === "not held" || state === "-") expect(named(reason), point).toEqual([]);
    }
  });

  test("names only tests that are there", () => {
    const outside = TEXT.split("\n\n").filter((part) => part.startsWith("Also held"));
    const words = outside.map((part) =>
      part
        .replaceAll("\n", " ")
        .replace(/^Also held[^:]*: /, "")
        .replace(/\.$/, ""),
    );
    const all = [...rows.map(({ reason }) => reason), ...words].flatMap(named);
    expect(all.length).toBeGreaterThan(90);
    const missing = all.filter(([file, text]) => titleIn(file, text) === undefined);
    expect(missing).toEqual([]);
  });
});
