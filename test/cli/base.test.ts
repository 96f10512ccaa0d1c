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
  test("opens with each aircraft's lines and reasons on one screen; --all adds lanes, reasons and tasks", async () => {
    const { code, stdout, stderr } = await soakline(["base", BASE, ...FEW]);
    expect(stderr).toBe("");
    expect(stdout.split("\n")[0]).toMatch(/^All 4 ready in time; all together \d+ in \d+\.$/);
    for (const name of ["Lynx", "Heron", "Marten", "Wren"]) {
      expect(stdout).toMatch(
        new RegExp(
          `^ok ${name} +\\d\\d:\\d\\d (into the hangar|plug in) [^;!]*\\d+ in\\s+\\d+\\n +covers off`,
          "m",
        ),
      );
    }
    expect(stdout.match(/start within \d+ min/g)?.length).toBe(4);
    expect(stdout.match(/weakest\s+point:/g)?.length).toBe(4);
    expect(stdout).toMatch(/More: --all/);
    expect(longest(stdout)).toBeLessThanOrEqual(80);
    expect(stdout.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
    expect(code).toBe(0);

    const all = (await soakline(["base", BASE, ...FEW, "--all"])).stdout;
    for (const name of ["Lynx", "Heron", "Marten", "Wren"]) {
      expect(all).toMatch(new RegExp(`^${name} +│.*S$`, "m"));
    }
    expect(all).toMatch(/^Ramp +│[ ▁▂▃▄▅▆▇█]+$/m);
    expect(all).toMatch(/Ramp: at most \d+\.\d A of 12\.8 A \(breaker 16 A\), 2 of 2 outlets/);
    expect(all).toMatch(/^Why\n- Lynx/m);
    expect(all).toMatch(/^To do\n- (\w+ )?\d\d:\d\d \w+ in/m);
    expect(all).toMatch(/If each had\s+the base to itself/);
    expect(all).toMatch(/residual-current/);
    expect(all).toMatch(/The aircraft's handbook .*decide/);
    expect(longest(all)).toBeLessThanOrEqual(80);
  }, 240_000);

  test("ends with 1 when a departure is missed, gives every cross its reason on one screen, in ASCII where asked for", async () => {
    const { code, stdout } = await soakline(["base", "-", ...FEW], {
      input: withOutlets(1),
      env: { ...PLAIN, LANG: "C" },
    });
    expect(stdout.split("\n")[0]).toMatch(/^\d of 4 ready in time; all together .*\. Not ready: /);
    const crosses = stdout.match(/^!! \w+/gm) ?? [];
    expect(crosses.length).toBeGreaterThan(0);
    expect(stdout.match(/is not ready for \d\d:\d\d(:|\s+because)/g)?.length).toBe(crosses.length);
    expect(stdout).toMatch(/^Would help +outlet number 2 on Ramp: \w+ ready, \d+ in\s+\d+/m);
    expect(stdout).toMatch(/^[\n -~]*$/);
    expect(longest(stdout)).toBeLessThanOrEqual(80);
    expect(stdout.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
    expect(code).toBe(1);
  }, 240_000);

  test("where the least holds without heat, none is planned and it says so", async () => {
    const document = JSON.parse(withOutlets(2));
    const points = document.weather.points.map((p: object) => ({ ...p, air_c: 8, dew_point_c: 2 }));
    const mild = {
      ...document,
      weather: { ...document.weather, points },
      hangar: { ...document.hangar, air_c: 10 },
    };
    for (const { scenario } of mild.aircraft) scenario.initial = { all_c: 8, uncertainty_k: 1 };
    const { code, stdout } = await soakline(["base", "-", ...FEW], { input: JSON.stringify(mild) });
    expect(stdout.match(/heat not required/g)?.length).toBe(4);
    expect(stdout).not.toMatch(/plug in/);
    expect(code).toBe(0);
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
