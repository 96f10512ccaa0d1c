// How often 90 % bands hold the truth, on made aircraft. Run on the built project:
//   npm run build && node benchmarks/coverage.mjs [aircraft of each kind] > coverage.txt
//
// Each made aircraft is fitted on one logged night, then foretold for the next night from a forecast with errors of its
// own: bands 2 h and 5 h after plug-in against the truth, for parts with and without a probe. On another night the live
// filter runs with what the fit taught, and its bands are held against the truth every hour. Seeds are fixed.
import { coverById, heaterById, installationById } from "../dist/aircraft/index.js";
import { learnedSensors } from "../dist/learning/fitted-aircraft.js";
import { createLiveFilter, fitAircraft, USUAL_SENSOR } from "../dist/learning/index.js";
import { madeFleet, madeLog, madeNight, trueTemps } from "../dist/learning/made-aircraft.js";
import { bandOf } from "../dist/numerics/index.js";
import { drawEnsemble, partTemps, simulate } from "../dist/simulation/index.js";

const HOUR = 3600;
const COUNT = Number(process.argv[2] ?? 200);
const KINDS = [
  ["four-carburettor-160", "sump-pad-220", ["oil", "heads"]],
  ["four-carburettor-160", "whole-engine-4", ["oil"]],
  ["six-injected-300", "whole-engine-6", ["oil", "heads", "crankcase"]],
  ["radial-nine-360", "in-cowl-400", ["oil", "heads"]],
];
const PARTS = ["oil", "crankshaft", "crankcase", "heads_rear", "barrels", "sump", "accessories", "battery"];
const MEMBERS = 200;

for (const [id, heater, places] of KINDS) {
  const first = scenarioOf(
    id,
    heater,
    { air: [256, 3, 17], wind: (h) => 3 + Math.sin(h), start: 256, sd: 2 },
    [
      [1, "plug-in"],
      [9, "unplug"],
    ],
  );
  const cold = { air: [250, 4, 15], wind: (h) => 4 + 2 * Math.sin(h / 2), start: 250, sd: 1.5 };
  const next = scenarioOf(id, heater, { ...cold, issued: 0 }, [[4, "plug-in"]]);
  const live = scenarioOf(id, heater, cold, [
    [2, "plug-in"],
    [9, "unplug"],
  ]);
  const sensors = places.map((part) => ({ name: part, place: { part }, ...USUAL_SENSOR }));
  const fleet = madeFleet(first, COUNT, 11);
  const logged = madeNight(fleet, first, every(300, 12), 12);
  const ahead = madeNight(fleet, next, [0, 6 * HOUR, 9 * HOUR], 13);
  const watched = madeNight(fleet, live, every(120, 12), 14);
  const nights = { later: {}, now: {} };
  const scores = new Map();
  let failed = 0;
  let alarms = 0;
  for (let a = 0; a < COUNT; a++) {
    const fit = fitAircraft({ log: madeLog(fleet, logged, a, sensors), scenario: first });
    if (fit.status !== "fitted") {
      failed++;
      continue;
    }
    fit.posterior.names.forEach((name, i) => {
      const sd = Math.hypot(...fit.posterior.factor[i]);
      const z = (Math.log(fleet.multipliers.get(name)[a]) - fit.posterior.mean[i]) / sd;
      scores.set(name, [...(scores.get(name) ?? []), z]);
    });
    foretell(nights.later, next, ahead, a, fit.posterior);
    alarms += watch(nights.now, live, watched, fleet, a, sensors, fit) ? 1 : 0;
  }
  console.log(`\n${id}, ${heater}, probes on ${places.join(", ")}: ${COUNT} aircraft, ${failed} not fitted`);
  console.log("part           night after: held  band K  without log K   live: held  band K");
  for (const part of PARTS) row(part, nights.later[part], nights.now[part]);
  row("all", total(nights.later), total(nights.now));
  console.log(`live nights with a false finding: ${alarms} of ${COUNT - failed}`);
  const z = [...scores].map(([name, all]) => `${name} ${Math.sqrt(mean(all.map((v) => v * v))).toFixed(2)}`);
  console.log(`root mean square of (truth - found)/sd: ${z.join(", ")}`);
}

function foretell(sums, next, ahead, a, posterior) {
  const request = { members: MEMBERS, seed: 1000 + a, weather: next.weather };
  const course = simulate(next, drawEnsemble({ ...request, posterior }), ahead.time);
  const unfitted = simulate(next, drawEnsemble(request), ahead.time);
  for (const part of PARTS) {
    const truth = trueTemps(ahead, COUNT, a, part);
    for (const s of [1, 2]) {
      const prior = bandOf(partTemps(unfitted, part, s));
      add(sums, part, bandOf(partTemps(course, part, s)), truth[s], prior.high - prior.low);
    }
  }
}

/** Whether anything was found wrong on a night on which nothing was. */
function watch(sums, live, watched, fleet, a, sensors, fit) {
  const log = madeLog(fleet, watched, a, sensors);
  const filter = createLiveFilter({ scenario: live, sensors: learnedSensors(fit), posterior: fit.posterior });
  let state = filter.start();
  let found = false;
  for (let k = 1; k < log.time.length; k++) {
    const readings = new Map(log.probes.map(({ name, temps }) => [name, temps[k]]));
    state = filter.step(state, { time: log.time[k], readings }).state;
    if (log.time[k] % HOUR !== 0) continue;
    const { parts, findings } = filter.estimate(state);
    found ||= findings.some(({ believed }) => believed);
    for (const part of PARTS) {
      const band = parts.find((p) => p.part === part);
      add(sums, part, band, trueTemps(watched, COUNT, a, part)[k], 0);
    }
  }
  return found;
}

function add(sums, part, { low, high }, truth, prior) {
  sums[part] ??= { count: 0, held: 0, width: 0, prior: 0 };
  const sum = sums[part];
  sum.count++;
  sum.held += truth >= low && truth <= high ? 1 : 0;
  sum.width += high - low;
  sum.prior += prior;
}

function total(sums) {
  const all = { count: 0, held: 0, width: 0, prior: 0 };
  for (const sum of Object.values(sums)) for (const key of Object.keys(all)) all[key] += sum[key];
  return all;
}

function row(part, later, now) {
  const share = ({ held, count }) => `${((100 * held) / count).toFixed(1)} %`;
  const per = (sum, key) => (sum[key] / sum.count).toFixed(1);
  const cells = [
    [share(later), 19],
    [per(later, "width"), 8],
    [per(later, "prior"), 15],
    [share(now), 14],
    [per(now, "width"), 8],
  ];
  console.log(part.padEnd(12) + cells.map(([text, width]) => text.padStart(width)).join(""));
}

function scenarioOf(id, heater, { air: [middle, swing, warmest], wind, start, sd, issued }, switching) {
  const time = Float64Array.from({ length: 15 }, (_, i) => i * HOUR);
  const tempAir = time.map((_, h) => middle + swing * Math.cos(((h - warmest) / 12) * Math.PI));
  return {
    installation: installationById(id),
    kit: { heaters: [heaterById(heater)], covers: [coverById("insulated-cover")] },
    start: 0,
    duration: 12 * HOUR,
    weather: {
      ...{ time, tempAir, windSpeed: time.map((_, h) => wind(h)) },
      tempDewPoint: tempAir.map((t) => t - 4),
      cloudCover: time.map(() => 0.5),
      ...(issued === undefined ? {} : { issued }),
      origin: "made for the benchmark",
      assumptions: [],
    },
    site: { tempHangar: 281, roughness: 0.005 },
    initial: {
      configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) },
      temps: new Map(),
      tempOthers: start,
      sd,
    },
    events: switching.map(([hour, what]) => ({ at: hour * HOUR, change: { do: what, heaters: [heater] } })),
  };
}

function every(step, hours) {
  return Array.from({ length: (hours * HOUR) / step + 1 }, (_, k) => k * step);
}

function mean(values) {
  return values.reduce((a, b) => a + b, 0) / values.length;
}
