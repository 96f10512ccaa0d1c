import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

// Indicators that begin with I, J, Q or X are not assigned (ICAO Doc 7910), XX in a bulletin heading names no country
// (WMO-No. 386, table C1), both from memory: no report in the tree can be mistaken for one of a real place.

const REPORT = /\b(?:METAR|SPECI|TAF)(?: AMD| COR)?\s([A-Z]{4})(?=\s\d{6}Z)/g;
const HEADING = /\b(?:FT|FC|SA|SP)([A-Z]{2})\d{2}\s[A-Z]{4}\s\d{6}\b/g;

const TEXTS = execFileSync("git", ["ls-files", "src", "test", "examples", "docs", "README.md"], {
  encoding: "utf8",
})
  .split("\n")
  .filter((name) => /\.(ts|svelte|json|txt|md)$/.test(name))
  .map((name) => readFileSync(name, "utf8"));

const found = (pattern: RegExp) =>
  new Set(TEXTS.flatMap((text) => [...text.matchAll(pattern)].map((match) => match[1])));

test("stations of reports in the tree are ones that nobody was given", () => {
  const stations = found(REPORT);
  expect(stations).toContain("XXRV");
  expect([...stations].filter((station) => !/^[IJQX]/.test(station!))).toEqual([]);
});

test("bulletin headings name no country", () => {
  expect([...found(HEADING)]).toEqual(["XX"]);
});
