// Fits what engines and nights are like to data/measured-runs, and writes the priors that plans draw from with the page
// that says how far they held for readings they did not know.
import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import {
  BEFORE,
  calibrate,
  crossValidated,
  priorsFile,
  readMeasuredRun,
  reportPage,
} from "../dist/calibration/index.js";

const ROOT = new URL("..", import.meta.url);
const RUNS = new URL("data/measured-runs/", ROOT);
const PRIORS = new URL("src/aircraft/calibrated.ts", ROOT);
const PAGE = new URL("docs/measured-runs.md", ROOT);

const runs = readdirSync(RUNS)
  .filter((name) => name.endsWith(".json"))
  .sort()
  .map((name) => readMeasuredRun(name, readFileSync(new URL(name, RUNS), "utf8")))
  .filter((run) => run.only_shape === undefined);
console.log(`${runs.length} runs`);
const population = calibrate(runs, BEFORE);
const told = (what) => (done) => {
  if (process.stdout.isTTY)
    process.stdout.write(`\r${what}: ${Math.round(100 * done)} %${done === 1 ? "\n" : ""}`);
};
const withoutOccasion = crossValidated(runs, "occasion", population, told("each occasion left out"));
const withoutAircraft = crossValidated(runs, "aircraft", population, told("each aircraft left out"));
writeFileSync(PRIORS, priorsFile(runs, population));
execFileSync("npx", ["biome", "format", "--write", "--log-level=error", PRIORS.pathname], {
  cwd: ROOT,
  stdio: "inherit",
});
const page = reportPage({ runs, population, withoutOccasion, withoutAircraft });
writeFileSync(PAGE, page);
console.log(page.slice(page.indexOf("## Left out"), page.indexOf("CRPS is")));
