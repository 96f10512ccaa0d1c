import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { finding } from "../../src/findings/index.js";
import { INPUT_KINDS } from "../../src/switching/inputs.js";
import {
  CLOCK_STEADY_S,
  CLOCK_TOLERANCE_S,
  CONFIRM_DEFAULT_S,
  REPEAT_FIRST_S,
  REPEAT_LONGEST_S,
  REST_DEFAULT_S,
  SILENT_DEFAULT_S,
  STUCK_AFTER_S,
} from "../../src/switching/rules.js";
import { PHASES } from "../../src/switching/state.js";
import { transitionsFor } from "../../src/switching/table.js";
import { english } from "../../src/words/index.js";

// docs/switching.md shows every phase with every input. WRITE_SWITCHING=1 writes that part; the test fails when it drifts.

const FILE = new URL("../../docs/switching.md", import.meta.url);
const BEGIN = "<!-- written from the code: begin -->";
const END = "<!-- written from the code: end -->";

test("docs/switching.md shows the table that the machine runs on", () => {
  const text = readFileSync(FILE, "utf8");
  const [before, rest] = text.split(BEGIN);
  const after = rest?.split(END)[1];
  expect(after, "both marks stand in the document").toBeDefined();
  const wanted = `${before}${BEGIN}\n${written()}${END}${after}`;
  if (process.env.WRITE_SWITCHING === "1") writeFileSync(FILE, wanted);
  const same = readFileSync(FILE, "utf8") === wanted;
  expect(
    same,
    "run WRITE_SWITCHING=1 npx vitest run test/switching/document.test.ts and look at what changed",
  ).toBe(true);
});

test("every phase has something to do on a start and on a stop, and ends up turning off", () => {
  for (const phase of PHASES) {
    for (const input of ["started", "stop"] as const) {
      const rows = transitionsFor(phase, input);
      expect(rows.map(({ next }) => next)).toEqual(["turning-off"]);
      expect(rows[0]?.effects).toContain("command off");
    }
  }
});

function written(): string {
  return [
    "",
    "| limit | value |",
    "|---|---|",
    `| clock: shift of wall against monotonic clock that is a jump | ${CLOCK_TOLERANCE_S} s |`,
    `| clock: both must agree again for | ${CLOCK_STEADY_S} s |`,
    `| probe: silent for (\`silent_after_s\` left out) | ${SILENT_DEFAULT_S} s |`,
    `| probe: exactly the same with the heater on for | ${STUCK_AFTER_S} s |`,
    `| confirmation within (\`confirm_within_s\` left out) | ${CONFIRM_DEFAULT_S} s |`,
    `| rest (\`rest_min\` left out) | ${REST_DEFAULT_S} s |`,
    `| off repeated after, doubling each time | ${REPEAT_FIRST_S} s |`,
    `| off repeated at least every | ${REPEAT_LONGEST_S} s |`,
    "",
    ...PHASES.flatMap((phase) => [
      `### ${phase}`,
      "",
      "| input | when | next | orders | reason |",
      "|---|---|---|---|---|",
      ...INPUT_KINDS.flatMap((input) => rowsOf(phase, input)),
      "",
    ]),
  ].join("\n");
}

function rowsOf(phase: (typeof PHASES)[number], input: (typeof INPUT_KINDS)[number]): string[] {
  const rows = transitionsFor(phase, input).map(({ when, next, effects, reason, note = "" }) =>
    [input, when, next, effects.join(", "), reason ? english(finding(reason, {})) : note].join(" | "),
  );
  const always = transitionsFor(phase, input).some(({ when }) => when === "always");
  const stays = [input, rows.length === 0 ? "always" : "otherwise", phase, "–", "–"].join(" | ");
  return [...rows, ...(always ? [] : [stays])].map((row) => `| ${row} |`);
}
