// Times 48 h of one case: node ours.mjs CASE TOLERANCE SECONDS; prints the median CPU time and the counts as JSON.
import { CASES, referenceRun } from "../test/reference/cases.mjs";
import { EVERY_TEN_MINUTES, loadLibrary } from "./library.mjs";

const [index, tolerance, seconds] = process.argv.slice(2).map(Number);
const { advance } = referenceRun(CASES[index], await loadLibrary(), EVERY_TEN_MINUTES);

cpuTimes(seconds); // warms up
const times = cpuTimes(seconds).sort((a, b) => a - b);
console.log(JSON.stringify({ ms: times[times.length >> 1], ...advance(tolerance).statistics }));

/** [ms] of as many runs as fit. */
function cpuTimes(duration) {
  const times = [];
  for (const end = performance.now() + 1000 * duration; performance.now() < end; ) {
    const before = process.cpuUsage();
    advance(tolerance);
    const { user, system } = process.cpuUsage(before);
    times.push((user + system) / 1000);
  }
  return times;
}
