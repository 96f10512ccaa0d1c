import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { awaySchema } from "../../src/documents/index.js";
import { awayFromDocument } from "../../src/questions/index.js";
import { plainWords } from "../plain-words.js";
import { soakline } from "./run.js";

const AWAY = "examples/wren-away.json";
const FEW = ["--members", "40"];

const FIRST_SCREEN = 24;

describe("away", () => {
  test("the first line answers whether it starts at the return, covered and not", async () => {
    const { code, stdout } = await soakline(["away", AWAY, "--back", "14:00", ...FEW]);
    const lines = stdout.trimEnd().split("\n");
    expect(lines.slice(0, 2).join(" ")).toMatch(
      /^Ready when back at 14:00: .+ that it starts with covers on now, .+ without\./,
    );
    expect(stdout).toMatch(/^Cover on by {3}(now|1[23]:\d\d at the latest), off 10 min before the start$/m);
    expect(stdout).toMatch(/^Run it {8}not needed with covers on$/m);
    expect(code).toBe(0);
  });

  test("one screen of 24 lines of 80, everything else behind --all", async () => {
    for (const extra of [[], ["--back", "22:00"], ["--engine-c", "-25"], ["--without-cover"]]) {
      const { stdout } = await soakline(["away", AWAY, ...extra, ...FEW]);
      const lines = stdout.trimEnd().split("\n");
      expect(lines.length).toBeLessThanOrEqual(FIRST_SCREEN);
      expect(lines.filter((line) => [...line].length > 80)).toEqual([]);
      expect(stdout).toMatch(/The handbook and the engine maker decide\./);
    }
    const { stdout } = await soakline(["away", AWAY, "--all", ...FEW]);
    for (const part of ["Uncovered:", "Now:", "At the return", "Assumed", "Care"])
      expect(stdout).toContain(part);
    expect(stdout).not.toContain("The heater is unplugged");
  });

  test("where the cover is not enough a run is: by when, how long, with its cautions; exit 1", async () => {
    const { code, stdout } = await soakline(["away", AWAY, ...FEW]);
    expect(stdout).toMatch(/^Not ready when back at 15:00: /);
    expect(stdout).toMatch(/^Run it {8}\d0 min, .+: (9 in 10|19 in 20|over 99 in 100)$/m);
    expect(stdout).toMatch(/^Somebody {6}must be at the controls while it runs$/m);
    expect(stdout).toMatch(/Never leave a running engine alone/);
    expect(stdout).toMatch(/makes more water than it drives off/);
    expect(code).toBe(1);
  });

  test("a return that nothing reaches says how far it can be", async () => {
    const { code, stdout } = await soakline(["away", AWAY, "--back", "23:30", ...FEW]);
    expect(stdout).toMatch(/^Run it {8}no run reaches it$/m);
    expect(stdout).toMatch(/^Longest {7}back by \d\d:\d\d, with covers on now and \d runs? of 30 min/m);
    expect(code).toBe(1);
  });

  test("JSON of its schema; colder without than with the cover", async () => {
    const { stdout } = await soakline(["away", AWAY, "--json", ...FEW]);
    const { covered, uncovered, status, back, bridges } = awaySchema.parse(JSON.parse(stdout));
    if (covered === null) throw new Error("the example carries a cover");
    expect(covered.sure_h).toBeGreaterThan(uncovered.sure_h);
    const oilAtTwo = ({ course }: typeof covered) => course.parts.oil.p50_c[course.time_h.indexOf(2)];
    expect(oilAtTwo(covered)).toBeGreaterThan(oilAtTwo(uncovered) + 2);
    expect([status, back?.time.slice(11, 16)]).toEqual(["not-ready", "15:00"]);
    expect(bridges.length).toBeGreaterThan(0);
  });

  test("a cold engine is not ready, and no run is proposed without a start", async () => {
    const { code, stdout } = await soakline(["away", AWAY, "--engine-c", "-25", ...FEW]);
    expect(stdout).toMatch(/^Ready now {5}no, under 1 in 100$/m);
    expect(stdout).toMatch(/^Run it {8}no: no start is sure now$/m);
    expect(stdout).toMatch(/^By itself {5}not in the 12 h looked at$/m);
    expect(code).toBe(1);
  });

  test("with no return named it says how long it lasts; with no engine state it takes the cold side", async () => {
    const { initial: _, want: __, ...rest } = JSON.parse(readFileSync(AWAY, "utf8"));
    const away = (document: object) => {
      const outcome = awayFromDocument({ ...rest, ...document, ensemble: { members: 40, seed: 1 } });
      if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
      return outcome.result;
    };
    const unsaid = away({});
    expect([unsaid.engine_from, unsaid.status, unsaid.back]).toEqual(["air", "not-ready", null]);
    expect(plainWords(unsaid.assumptions)).toMatch(/No temperature of the engine is given: .* coldest air/);
    const warm = away({ initial: { shut_down_h_ago: 0 } });
    expect([warm.engine_from, warm.status, warm.bridges]).toEqual(["shut-down", "ready", []]);
    expect(warm.uncovered.sure_h).toBeGreaterThan(0.1);
    // Power there is none: a heater of the document that is plugged in changes nothing.
    const heated = away({
      kit: { heaters: ["sump-pad-220"], covers: rest.kit.covers },
      plugged_in: ["sump-pad-220"],
      initial: { shut_down_h_ago: 0 },
    });
    expect(heated.uncovered.sure_h).toBeCloseTo(warm.uncovered.sure_h, 1);
    expect(plainWords(heated.assumptions)).toMatch(/There is no power here/);
  });
});

describe("why", () => {
  test("lists its questions", async () => {
    const { code, stdout } = await soakline(["why"]);
    expect(stdout.split("\n")).toEqual(
      expect.arrayContaining(["oil-viscosity", "bearing-clearance", "frost-point"]),
    );
    expect(code).toBe(0);
  });

  test("answers one with number, curve, equation and source; a negative temperature is an argument", async () => {
    const { code, stdout } = await soakline(["why", "oil-viscosity", "-15", "--aircraft", "radial-nine-360"]);
    expect(stdout).toMatch(/At -15 °C SAE 50 .* has 25 Pa s/);
    for (const word of ["Equation", "Source", "ASTM D341", "X at -15 °C"]) expect(stdout).toContain(word);
    expect(code).toBe(0);
  });

  test("JSON carries the curve", async () => {
    const { stdout } = await soakline(["why", "bearing-clearance", "-25", "--json"]);
    const { value, unit, plot } = JSON.parse(stdout);
    expect(unit).toBe("mm");
    expect(plot.y[plot.x_c.indexOf(-25)]).toBe(value);
    expect(plot.x_c).toHaveLength(81);
  });

  test("names every fault at once", async () => {
    const { code, stderr } = await soakline(["why", "nonsense", "77"]);
    expect(stderr).toMatch(/topic: expected one of oil-viscosity, .*received nonsense/);
    expect(stderr).toMatch(/temp_c: expected a number from -40 to 40, received 77/);
    expect(code).toBe(2);
    const other = await soakline(["why", "frost-point", "0", "--aircraft", "x"]);
    expect(other.stderr).toMatch(/--aircraft: expected one of two-light-60/);
  });
});
