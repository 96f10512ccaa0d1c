// Cost of one solver step per member on a heat network of 16 parts (a tree, plus a hub linked to nine of them): with a
// sparse linear derivative, and for the solver alone, where the three functions only copy ready numbers. Run after the
// build: node benchmarks/solver-step.mjs [members ...]
import { solve } from "../dist/solver/index.js";

const SIZE = 16;
const HUB = SIZE - 1;
/** Steps x members of one timed run, a few milliseconds; the quickest of many runs counts. */
const WORK = 3200;
const REPEATS = 150;

const links = [];
for (let i = 1; i < HUB; i++) links.push([i, (i - 1) >> 1]);
for (let i = 0; i < 9; i++) links.push([i, HUB]);

const neighbours = Array.from({ length: SIZE }, (_, i) => [i]);
for (const [a, b] of links) {
  neighbours[a].push(b);
  neighbours[b].push(a);
}
for (const row of neighbours) row.sort((a, b) => a - b);
const rowStart = Int32Array.from({ length: SIZE + 1 }, (_, i) => neighbours.slice(0, i).flat().length);
const column = Int32Array.from(neighbours.flat());
const pattern = { rowStart, column };

/** dT_i/dt = Σ rate (T_j - T_i) + 1e-3, other rates for each member. */
function network(members) {
  const rates = new Float64Array(column.length * members);
  for (let i = 0; i < SIZE; i++) {
    const diagonal = rowStart[i] + neighbours[i].indexOf(i);
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
      if (column[k] === i) continue;
      for (let m = 0; m < members; m++) {
        const rate = (1 + 0.3 * Math.sin(7 * (i + column[k]) + m)) / (10 * 3 ** (i % 8));
        rates[k * members + m] = rate;
        rates[diagonal * members + m] -= rate;
      }
    }
  }
  return {
    size: SIZE,
    members,
    pattern,
    derivative(_t, y, dydt) {
      dydt.fill(1e-3);
      for (let i = 0; i < SIZE; i++) {
        const o = i * members;
        for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
          const c = column[k] * members;
          const r = k * members;
          for (let m = 0; m < members; m++) dydt[(o + m) | 0] += rates[(r + m) | 0] * y[(c + m) | 0];
        }
      }
    },
    linearise(t, y, into) {
      this.derivative(t, y, into.slope);
      into.jacobian.set(rates);
      into.slopeInTime.fill(0);
    },
  };
}

/** The same, but f copies its value at the start of the run. */
function frozen(system, initial) {
  const slope = new Float64Array(initial.length);
  system.derivative(0, initial, slope);
  return { ...system, derivative: (_t, _y, dydt) => dydt.set(slope) };
}

function microsecondsPerMemberStep(system, initial) {
  const { members } = system;
  const steps = Math.max(20, Math.round(WORK / members));
  // Loose tolerance and a bounded step make every step alike and accepted.
  const tolerance = { absolute: 1e3, relative: 1e3 };
  const request = { system, initial, start: 0, end: steps, tolerance, firstStep: 1, maximumStep: 1 };
  let best = Number.POSITIVE_INFINITY;
  for (let r = 0; r < REPEATS; r++) {
    const before = performance.now();
    const { statistics } = solve(request);
    best = Math.min(best, performance.now() - before);
    if (statistics.steps !== steps || statistics.rejected !== 0)
      throw new Error(`unexpected: ${statistics.steps} steps, ${statistics.rejected} rejected`);
  }
  return (best * 1000) / steps / members;
}

console.log(
  `${links.length} links, ${2 * links.length} nonzeros off the diagonal; microseconds per member and step`,
);
console.log("members  with f  solver alone");
const wanted = process.argv.slice(2).map(Number);
for (const members of wanted.length > 0 ? wanted : [1, 4, 16, 64, 256]) {
  const system = network(members);
  const initial = Float64Array.from({ length: SIZE * members }, (_, k) => 250 + (k % 17));
  const whole = microsecondsPerMemberStep(system, initial);
  const alone = microsecondsPerMemberStep(frozen(system, initial), initial);
  console.log(`${String(members).padStart(7)}  ${whole.toFixed(3)}  ${alone.toFixed(3)}`);
}
