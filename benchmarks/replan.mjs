// How long it takes until all four aircraft of a base have a plan again while a departure, the wind or a cover is moved,
// and what first answers miss by. One core, 200 members. Run on the built project:
// npm run build && node benchmarks/replan.mjs [trials]
import { coverById, heaterById, installationById } from "../dist/aircraft/index.js";
import { createRandom } from "../dist/numerics/index.js";
import { createReplanner, planPreheat } from "../dist/planning/index.js";
import { allCriteria } from "../dist/readiness/index.js";
import { finished } from "../dist/response/index.js";
import { drawEnsemble } from "../dist/simulation/index.js";

const HOUR = 3600;
const MEMBERS = 200;
const TRIALS = Number(process.argv[2] ?? 40);
const VERBOSE = process.argv.includes("--verbose");
const random = createRandom(11).stream("trials");
const between = (low, high) => low + (high - low) * random.uniform();

const time = Float64Array.from({ length: 43 }, (_, i) => i * HOUR);
const weather = {
  time,
  tempAir: time.map((t) => 255 + 4 * Math.cos(((t / HOUR - 20) / 12) * Math.PI)),
  windSpeed: time.map((t) => (t / HOUR > 9 && t / HOUR < 15 ? 8 : 3 + 2 * Math.sin(t / HOUR / 5))),
  tempDewPoint: time.map(() => 248),
  cloudCover: time.map((t) => (t / HOUR < 12 ? 0.2 : 0.9)),
  issued: 0,
  origin: "made for the benchmark",
  assumptions: [],
};
const AIRCRAFT = [
  ["four-carburettor-160", "whole-engine-4"],
  ["six-injected-300", "whole-engine-6"],
  ["four-light-100", "sump-pad-220"],
  ["radial-nine-360", "ducted-fuel-12000"],
];

const base = AIRCRAFT.map(([id, heater]) => {
  const installation = installationById(id);
  const kit = { heaters: [heaterById(heater)], covers: [coverById("insulated-cover")] };
  const request = {
    scenario: {
      installation,
      kit,
      start: 0,
      duration: 42 * HOUR,
      weather,
      site: { tempHangar: 281, roughness: 0.005 },
      initial: {
        configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) },
        temps: new Map(),
        tempOthers: 257,
        sd: 1.5,
      },
      events: [],
    },
    wish: { departure: 13 * HOUR, chance: 0.9, unplugBefore: 900, coverOffBefore: 600, pulledOut: true },
    heaters: [heater],
    criteria: allCriteria(installation, kit),
    draws: drawEnsemble({ members: MEMBERS, seed: 1, weather }),
  };
  return { id, request };
});

function timed(work) {
  const cpu = process.cpuUsage();
  const start = performance.now();
  const result = work();
  const wall = performance.now() - start;
  const { user, system } = process.cpuUsage(cpu);
  return { result, wall, cpu: (user + system) / 1000 };
}

const at = (values, p) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(p * values.length))];
const pair = (values) =>
  `${at(values, 0.5).toFixed(0).padStart(6)}${at(values, 0.95).toFixed(0).padStart(7)}`;

const opening = timed(() =>
  base.map(({ request }) => {
    const planner = createReplanner(request);
    planner.first(request.wish);
    return planner;
  }),
);
const planners = opening.result;
console.log(
  `opening, first answers of all four: ${opening.wall.toFixed(0)} ms (cpu ${opening.cpu.toFixed(0)} ms)`,
);
const longest = [];
const prepared = timed(() => {
  for (const planner of planners) {
    for (const steps of [planner.prepare(), planner.prepareWhatIfs()]) {
      for (let done = false; !done; ) {
        const piece = timed(() => steps.next().done);
        longest.push(piece.wall);
        done = piece.result;
      }
    }
  }
});
console.log(
  `playing all that look-ups read: ${prepared.wall.toFixed(0)} ms (cpu ${prepared.cpu.toFixed(0)} ms) in ${longest.length} pieces, 95 % of them under ${at(longest, 0.95).toFixed(0)} ms`,
);
const { arrayBuffers, heapUsed, rss } = process.memoryUsage();
const megabytes = (bytes) => (bytes / 2 ** 20).toFixed(0);
console.log(
  `memory: arrays ${megabytes(arrayBuffers)}, heap ${megabytes(heapUsed)}, process ${megabytes(rss)} MB`,
);

const departures = () => planners.map((planner) => ({ planner, departure: between(3, 34) * HOUR }));
const KINDS = {
  departure: departures,
  wind() {
    const windFactor = between(0.3, 2);
    return departures().map((d) => ({ ...d, planner: d.planner.whatIf({ windFactor }) }));
  },
  cover: () => departures().map((d) => ({ ...d, planner: d.planner.whatIf({ coversOn: [] }) })),
};

// As often as it takes until the engine has compiled what it runs.
for (let i = 0; i < 5; i++) for (const make of Object.values(KINDS)) for (const each of make()) first(each);

console.log(`
                  first answers      decided            first against decided:                          same as
                  of all four        of all four        within    within 10 min or   chance said,       planPreheat
moved             p50    p95 ms cpu  p50    p95 ms cpu  10 min    2 % of the chance  error p50, p95`);
for (const [kind, make] of Object.entries(KINDS)) {
  const firsts = { wall: [], cpu: [] };
  const decided = { wall: [], cpu: [] };
  const chanceErrors = [];
  let [cases, within, good, same, compared] = [0, 0, 0, 0, 0];
  for (let trial = 0; trial < TRIALS; trial++) {
    const moved = make();
    const quick = timed(() => moved.map((each) => first(each)));
    const slow = timed(() =>
      moved.map(({ planner, departure }) => finished(planner.decide(wishAt(planner, departure)))),
    );
    for (const [kept, { wall, cpu }] of [
      [firsts, quick],
      [decided, slow],
    ]) {
      kept.wall.push(wall);
      kept.cpu.push(cpu);
    }
    moved.forEach(({ planner, departure }, i) => {
      const said = quick.result[i];
      const { answer, finder } = slow.result[i];
      const off = Math.abs((said.plugIn ?? said.unplug) - (answer.plugIn ?? answer.unplug)) / 60;
      // What the chance really is at the plug-in that was said.
      const { chance } = finder.candidate(said.index).verdict;
      cases++;
      chanceErrors.push(100 * Math.abs(said.chance - chance));
      if (off <= 10) within++;
      if (off <= 10 || Math.abs(chance - answer.chance) <= 0.0201) good++;
      else if (VERBOSE)
        console.log(`  ${base[i].id}: ${lead(said)}, really ${chance}; decided ${lead(answer)}`);
      if (trial % 10 !== 0) return;
      compared++;
      const plan = planPreheat(planner.requestFor(wishAt(planner, departure)));
      const isSame = plan.plugIn === answer.plugIn && Math.abs(plan.chance - answer.chance) < 0.011;
      if (isSame) same++;
      else
        console.log(
          `  ${base[i].id} at ${(departure / HOUR).toFixed(2)} h: ${lead(plan)}, not ${lead(answer)}`,
        );
    });
  }
  const share = (count) => `${((100 * count) / cases).toFixed(0)} %`.padStart(6);
  console.log(
    `${kind.padEnd(14)}${pair(firsts.wall)}${at(firsts.cpu, 0.5).toFixed(0).padStart(8)}${pair(decided.wall)}${at(decided.cpu, 0.5).toFixed(0).padStart(8)}` +
      `  ${share(within)}   ${share(good)} of ${cases}       ${at(chanceErrors, 0.5).toFixed(1)}, ${at(chanceErrors, 0.95).toFixed(1)} %         ${same} of ${compared}`,
  );
}

function wishAt({ request }, departure) {
  return { ...request.wish, departure };
}

function first({ planner, departure }) {
  return planner.first(wishAt(planner, departure));
}

function lead({ plugIn, unplug, chance, status }) {
  return `${status} ${plugIn === undefined ? "none" : ((unplug - plugIn) / HOUR).toFixed(2)} h ${chance}`;
}
