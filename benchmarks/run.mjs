// 48 h of every catalogue aircraft: Soakline against CVODE (C, SUNDIALS 6) on the same networks at the same error.
// Run after `npm run build`:  node benchmarks/run.mjs [seconds per measurement]
//
// Both get the same parts, links, configurations and weather, and both give the temperatures of all parts every ten
// minutes. Each uses the loosest tolerance whose greatest error against a tight run lies within 0.01-0.02 K, and CVODE
// the quickest of its ways. Times are CPU times of one integration: median in a warmed-up process of its own, the best
// of five such processes in turn. Ours includes working out the network's inputs from the weather, CVODE is handed them.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { CASES, greatestDifference, referenceRun } from "../test/reference/cases.mjs";
import { compileCvode, cvodeProblem, WAYS } from "./cvode/program.mjs";
import { EVERY_TEN_MINUTES, loadLibrary } from "./library.mjs";

const ERROR = { least: 0.01, most: 0.02 };
/** [K] from far too tight to far too loose. */
const TOLERANCES = Array.from({ length: 45 }, (_, k) => 1e-4 * 2 ** (k / 4));
/** [K] between the two tight runs; more would mean that they do not solve the same problem. */
const SAME = 1e-4;
const ROUNDS = 5;
const SECONDS = Number(process.argv[2] ?? 0.5);

const COLUMNS = [
  ["aircraft", 22],
  ["ours ms", 10],
  ["CVODE ms", 10],
  ["ratio", 8],
  ["error K", 10],
  ["CVODE K", 10],
  ["steps (failed)", 17],
  ["CVODE steps", 13],
  ["its way", 14],
];

const library = await loadLibrary();
const folder = mkdtempSync(join(tmpdir(), "soakline-cvode-"));
try {
  const program = compileCvode(folder);
  row(COLUMNS.map(([title]) => title));
  const results = CASES.map((_, index) => compare(program, index));
  const ours = results.reduce((sum, { our }) => sum + our.ms, 0);
  const others = results.reduce((sum, { other }) => sum + other.ms, 0);
  row(["all together", ours.toFixed(2), others.toFixed(2), (ours / others).toFixed(2)]);
} finally {
  rmSync(folder, { recursive: true });
}

function compare(program, index) {
  const { description, advance } = referenceRun(CASES[index], library, EVERY_TEN_MINUTES);
  const cvode = cvodeProblem(program, folder, description);
  const errorAt = (tolerance) => greatestDifference(advance(tolerance).samples, cvode.reference);
  const apart = errorAt(1e-6);
  if (!(apart < SAME)) throw new Error(`${description.name}: the tight runs differ by ${apart} K`);

  const [mine] = loosest(TOLERANCES.map(errorAt));
  if (mine === undefined)
    throw new Error(`${description.name}: no tolerance gives an error of ${ERROR.least}-${ERROR.most} K`);
  const ways = WAYS.flatMap((way) =>
    loosest(cvode.errors(way, TOLERANCES)).map((choice) => ({ ...way, ...choice })),
  );
  const way = quickest(ways.map((one) => ({ ...one, ...cvode.time(one, 0.2 * SECONDS) })));
  const rounds = Array.from({ length: ROUNDS }, () => ({
    our: timeOurs(index, mine.tolerance),
    other: cvode.time(way, SECONDS),
  }));
  const our = quickest(rounds.map((round) => round.our));
  const other = quickest(rounds.map((round) => round.other));
  row([
    description.name,
    our.ms.toFixed(2),
    other.ms.toFixed(2),
    (our.ms / other.ms).toFixed(2),
    mine.error.toFixed(4),
    way.error.toFixed(4),
    `${our.steps} (${our.rejected})`,
    String(other.steps),
    `${way.knots} ${way.order} ${way.light}`,
  ]);
  return { our, other };
}

/** The loosest tolerance with an error in the window, in a list; an empty one where there is none. */
function loosest(errors) {
  const k = errors.findLastIndex((error) => error >= ERROR.least && error <= ERROR.most);
  return k < 0 ? [] : [{ tolerance: TOLERANCES[k], error: errors[k] }];
}

function timeOurs(index, tolerance) {
  const script = fileURLToPath(new URL("ours.mjs", import.meta.url));
  return JSON.parse(
    execFileSync(process.execPath, [script, ...[index, tolerance, SECONDS].map(String)]).toString(),
  );
}

function quickest(results) {
  return results.reduce((best, one) => (one.ms < best.ms ? one : best));
}

function row(cells) {
  const padded = cells.map((cell, k) =>
    k === 0 ? cell.padEnd(COLUMNS[0][1]) : cell.padStart(COLUMNS[k][1]),
  );
  console.log(padded.join(""));
}
