import { describe, expect, test } from "vitest";
import { awaySchema } from "../../src/documents/index.js";
import { soakline } from "./run.js";

const AWAY = "examples/wren-away.json";
const FEW = ["--members", "40"];

describe("away", () => {
  test.concurrent("says in the first line how long there is, covered longer than uncovered", async () => {
    const { code, stdout } = await soakline(["away", AWAY, ...FEW]);
    expect(stdout.split("\n")[0]).toMatch(/^Ready now\. It lasts .+ uncovered, .+ covered \(90 % sure\)\.$/);
    expect(stdout).toMatch(/handbook and the engine maker's instructions decide/);
    expect(stdout.split("\n").filter((line) => [...line].length > 80)).toEqual([]);
    expect(code).toBe(0);
  });

  test.concurrent("JSON of its schema; colder without than with the cover", async () => {
    const { code, stdout } = await soakline(["away", AWAY, "--json", ...FEW]);
    const away = awaySchema.parse(JSON.parse(stdout));
    expect(code).toBe(0);
    expect(away.covered.sure_h).toBeGreaterThan(away.uncovered.sure_h);
    const oilAtTwo = ({ course }: typeof away.covered) => course.parts.oil.p50_c[course.time_h.indexOf(2)];
    expect(oilAtTwo(away.covered)).toBeGreaterThan(oilAtTwo(away.uncovered) + 2);
  });

  test.concurrent("a cold engine is not ready: exit 1 and what binds", async () => {
    const { code, stdout } = await soakline(["away", AWAY, "--engine-c", "-25", ...FEW]);
    expect(stdout).toMatch(/^Not ready now: 0 % chance; .+ binds\./);
    expect(code).toBe(1);
  });
});

describe("why", () => {
  test.concurrent("lists its questions", async () => {
    const { code, stdout } = await soakline(["why"]);
    expect(stdout.split("\n")).toEqual(
      expect.arrayContaining(["oil-viscosity", "bearing-clearance", "frost-point"]),
    );
    expect(code).toBe(0);
  });

  test.concurrent("answers one with number, curve, equation and source; a negative temperature is an argument", async () => {
    const { code, stdout } = await soakline(["why", "oil-viscosity", "-15", "--aircraft", "radial-nine-360"]);
    expect(stdout).toMatch(/At -15 °C SAE 50 .* has 25 Pa s/);
    for (const word of ["Equation", "Source", "ASTM D341", "X at -15 °C"]) expect(stdout).toContain(word);
    expect(code).toBe(0);
  });

  test.concurrent("JSON carries the curve", async () => {
    const { stdout } = await soakline(["why", "bearing-clearance", "-25", "--json"]);
    const { value, unit, plot } = JSON.parse(stdout);
    expect(unit).toBe("mm");
    expect(plot.y[plot.x_c.indexOf(-25)]).toBe(value);
    expect(plot.x_c).toHaveLength(81);
  });

  test.concurrent("names every fault at once", async () => {
    const { code, stderr } = await soakline(["why", "nonsense", "77"]);
    expect(stderr).toMatch(/topic: expected one of oil-viscosity, .*received nonsense/);
    expect(stderr).toMatch(/temp_c: expected a number from -40 to 40, received 77/);
    expect(code).toBe(2);
    const other = await soakline(["why", "frost-point", "0", "--aircraft", "x"]);
    expect(other.stderr).toMatch(/--aircraft: expected one of two-light-60/);
  });
});
