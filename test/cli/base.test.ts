import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { basePlanSchema } from "../../src/documents/index.js";
import { PLAIN, soakline } from "./run.js";

const BASE = "examples/ravnholt-base.json";
const FEW = ["--members", "40"];

/** [characters] longest line. */
const longest = (text: string) => Math.max(...text.split("\n").map((line) => [...line].length));

/** The example without its cart and with so many outlets. */
function withOutlets(outlets: number): string {
  const document = JSON.parse(readFileSync(BASE, "utf8"));
  return JSON.stringify({
    ...document,
    carts: [],
    circuits: [{ ...document.circuits[0], outlets }],
  });
}

describe("base", () => {
  test("answers in the first line, then a row and a lane an aircraft, the circuit's load, reasons and tasks", async () => {
    const { code, stdout, stderr } = await soakline(["base", BASE, ...FEW]);
    expect(stderr).toBe("");
    expect(stdout.split("\n")[0]).toMatch(/^All 4 aircraft ready in time; all together \d\d %\.$/);
    for (const name of ["Lynx", "Heron", "Marten", "Wren"]) {
      expect(stdout).toMatch(
        new RegExp(`^ok ${name} +\\d\\d:\\d\\d +\\d\\d:\\d\\d +\\d\\d:\\d\\d +\\d+ %`, "m"),
      );
      expect(stdout).toMatch(new RegExp(`^${name} +│.*S$`, "m"));
    }
    expect(stdout).toMatch(/^Ramp +│[ ▁▂▃▄▅▆▇█]+$/m);
    expect(stdout).toMatch(/Ramp: at most \d+\.\d A of 12\.8 A \(breaker 16 A\), 2 of 2 outlets/);
    expect(stdout).toMatch(/^Why\n- Lynx/m);
    expect(stdout).toMatch(/^To do\n- Thu \d\d:\d\d plug in/m);
    expect(stdout).toMatch(/If each had\s+the base to itself/);
    expect(stdout).toMatch(/residual-current/);
    expect(stdout).toMatch(/The aircraft's handbook .*decide/);
    expect(longest(stdout)).toBeLessThanOrEqual(80);
    expect(code).toBe(0);
  }, 120_000);

  test("ends with 1 when a departure is missed, says which limit to lift, and is plain ASCII where asked for", async () => {
    const { code, stdout } = await soakline(["base", "-", ...FEW], {
      input: withOutlets(1),
      env: { ...PLAIN, LANG: "C" },
    });
    expect(stdout.split("\n")[0]).toMatch(/^\d of 4 (is|are) not sure enough: /);
    expect(stdout).toMatch(/^!! \w+/m);
    expect(stdout).toMatch(/is not ready for \d\d:\d\d\s+because/);
    expect(stdout).toMatch(/^Would help \(each tried, over fewer cases\)\n- .*outlet number 2 on Ramp/m);
    expect(stdout).toMatch(/^[\n -~]*$/);
    expect(longest(stdout)).toBeLessThanOrEqual(80);
    expect(code).toBe(1);
  }, 120_000);

  test("writes JSON of its schema, and faults with their place", async () => {
    const { code, stdout } = await soakline(["base", BASE, "--json", ...FEW]);
    const plan = basePlanSchema.parse(JSON.parse(stdout));
    expect(plan.members).toBe(40);
    expect(code).toBe(0);
    const bad = await soakline(["base", "-"], { input: withOutlets(0) });
    expect(bad.stderr).toMatch(/^circuits\[0\]\.outlets: expected .*received 0$/m);
    expect(bad.stdout).toBe("");
    expect(bad.code).toBe(2);
  }, 120_000);
});
