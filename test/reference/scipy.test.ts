import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, test } from "vitest";
import * as aircraft from "../../src/aircraft/index.js";
import { GENERIC_OILS } from "../../src/properties/index.js";
import * as simulation from "../../src/simulation/index.js";
import { TRAJECTORY_TOLERANCE } from "../../src/simulation/run.js";
import { CASES, type Description, DURATION, greatestDifference, referenceRun } from "./cases.mjs";
import { everyLawRun } from "./every-law.js";
import { pythonWithScipy } from "./python.js";

const HOURLY = Array.from({ length: DURATION / 3600 + 1 }, (_, h) => h * 3600);
const catalogue = CASES.map((one) => referenceRun(one, { ...aircraft, ...simulation, GENERIC_OILS }, HOURLY));
const runs = [...catalogue, everyLawRun(HOURLY)];

/** Tolerance and largest difference allowed [K]. */
const CHECKS = [
  // Far below any tolerance used: what is left would be a difference in the equations.
  { what: "equations", tolerance: 1e-5, limit: 1e-4, of: runs },
  { what: "trajectory", tolerance: TRAJECTORY_TOLERANCE, limit: 0.02, of: catalogue },
  // Half as much again as the parts err: a heater that strikes the sump bends its course at once.
  { what: "ensemble", tolerance: simulation.ENSEMBLE_TOLERANCE, limit: 0.15, of: catalogue },
].flatMap(({ of, ...check }) => of.map((run) => ({ ...check, run, name: run.description.name })));
const python = pythonWithScipy();

test("scipy is there, or this is not the place that must have it", ({ skip }) => {
  if (python !== undefined) return;
  const missing = "no python3 with scipy (Debian: python3-scipy), so nothing was checked against it";
  if (process.env.CI !== undefined) throw new Error(`${missing}; it may not be skipped in CI`);
  console.warn(missing);
  skip(missing);
});

describe.skipIf(python === undefined)(
  "hourly temperatures of all parts over 48 h, against scipy's BDF",
  () => {
    const reference = new Map<string, number[]>();

    beforeAll(async () => {
      const descriptions = runs.map((run) => run.description);
      const samples = await integrateByScipy(python ?? "", descriptions);
      descriptions.forEach(({ name }, i) => {
        reference.set(name, samples[i].flat());
      });
    }, 120_000);

    test.each(CHECKS)("$what of $name within $limit K", ({ name, run, tolerance, limit }) => {
      const result = run.advance(tolerance);
      expect(result.status).toBe("completed");
      expect(greatestDifference(result.samples, reference.get(name) ?? [])).toBeLessThan(limit);
    });
  },
);

test("the cases cover every installation, every kind of heater and every law", () => {
  expect(CASES.map((one) => one.installation).sort()).toEqual(
    aircraft.INSTALLATIONS.map(({ id }) => id).sort(),
  );
  const kind = (id: string) => id.replace(/-\d+$/, "");
  const used = new Set(CASES.flatMap((one) => one.heaters.map(kind)));
  expect([...used].sort()).toEqual([...new Set(aircraft.HEATERS.map(({ id }) => kind(id)))].sort());
  const laws = new Set(runs.flatMap((run) => run.description.links.map(({ law }) => law)));
  expect([...laws].sort()).toEqual(["conduction", "free-convection", "radiation", "ventilation"]);
});

/** Samples x parts [K] of each description. */
function integrateByScipy(command: string, descriptions: readonly Description[]): Promise<number[][][]> {
  const script = fileURLToPath(new URL("integrate.py", import.meta.url));
  return new Promise((resolve, reject) => {
    const child = spawn(command, [script], { stdio: ["pipe", "pipe", "pipe"] });
    const out: Buffer[] = [];
    const faults: Buffer[] = [];
    child.stdout.on("data", (chunk: Buffer) => out.push(chunk));
    child.stderr.on("data", (chunk: Buffer) => faults.push(chunk));
    child.on("error", reject);
    child.on("close", (code) => {
      if (code === 0) resolve(JSON.parse(Buffer.concat(out).toString()));
      else reject(new Error(`integrate.py ended with ${code}: ${Buffer.concat(faults)}`));
    });
    child.stdin.end(JSON.stringify(descriptions));
  });
}
