import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import {
  BEFORE,
  calibrate,
  crossValidated,
  type Population,
  priorsFile,
  type ReadingScore,
  readMeasuredRun,
  reportPage,
  summaryOf,
} from "../../src/calibration/index.js";

const ROOT = new URL("../../", import.meta.url);
const read = (path: string) => readFileSync(new URL(path, ROOT), "utf8");
const FOLDER = "data/measured-runs";
const runs = readdirSync(new URL(FOLDER, ROOT))
  .filter((name) => name.endsWith(".json"))
  .sort()
  .map((name) => readMeasuredRun(name, read(`${FOLDER}/${name}`)))
  .filter((run) => run.only_shape === undefined);

describe("what engines and nights are like, calibrated on measured runs", () => {
  let population: Population;
  let withoutOccasion: ReadingScore[];
  let withoutAircraft: ReadingScore[];

  beforeAll(() => {
    population = calibrate(runs, BEFORE);
    withoutOccasion = crossValidated(runs, "occasion", population);
    withoutAircraft = crossValidated(runs, "aircraft", population);
  }, 300_000);

  it("is what ships: npm run calibrate writes src/aircraft/calibrated.ts again", () => {
    const numbers = (text: string) => (text.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    expect(numbers(read("src/aircraft/calibrated.ts"))).toEqual(numbers(priorsFile(runs, population)));
  });

  it("is told in docs/measured-runs.md as it is", () => {
    expect(read("docs/measured-runs.md")).toBe(
      reportPage({ runs, population, withoutOccasion, withoutAircraft }),
    );
  });

  it.each([
    ["occasion", () => withoutOccasion],
    ["aircraft", () => withoutAircraft],
  ])("holds readings whose %s it did not know in bands that are neither narrow nor wide", (_, scores) => {
    const { in90, in50, medianError, bias, width90 } = summaryOf(scores());
    expect(in90).toBeGreaterThan(0.85);
    expect(in90).toBeLessThan(0.96);
    expect(in50).toBeGreaterThan(0.45);
    expect(medianError).toBeLessThan(4);
    expect(Math.abs(bias)).toBeLessThan(2);
    // Before the calibration bands of 23 K held 68 to 71 in 100.
    expect(width90).toBeLessThan(22);
  });

  it("is told in README by the same figures", () => {
    const readme = read("README.md");
    for (const [title, scores] of [
      ["its night left out", withoutOccasion],
      ["its aircraft left out", withoutAircraft],
    ] as const) {
      const { in50, in90, medianError, bias } = summaryOf(scores);
      const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
      const off = `${Math.abs(bias).toFixed(1)} K too ${bias < 0 ? "cold" : "warm"}`;
      expect(readme).toContain(
        `| ${title} | ${percent(in50)} | ${percent(in90)} | ${medianError.toFixed(1)} K | ${off} |`,
      );
    }
  });
});
