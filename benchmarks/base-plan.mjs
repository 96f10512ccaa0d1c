// How long one plan for a whole base takes on one core, and how its cost grows with aircraft and hours.
// Run on the built project: npm run build && node benchmarks/base-plan.mjs [members]
//
// Two circuits of 16 A; heaters on switches. "room": outlets for all. "tight": an outlet for every third
// aircraft, so that they take turns. "moves": tight, with a bay and a cart besides. All members judge what is chosen; 40
// of them look among courses. The slope is that of log cost over log size: 1 is linear.
import { readFileSync } from "node:fs";
import { basePlanFromDocument } from "../dist/index.js";
import { solveMilp } from "../dist/node/index.js";

const MEMBERS = Number(process.argv[2] ?? 200);
const ROUNDS = 3;
const KINDS = [
  ["four-carburettor-160", "whole-engine-4"],
  ["six-injected-300", "whole-engine-6"],
  ["four-light-100", "whole-engine-4"],
  ["four-injected-200", "whole-engine-4"],
];
const example = JSON.parse(readFileSync(new URL("../examples/ravnholt-base.json", import.meta.url), "utf8"));

let solving = 0;
const timedSolve = async (lp) => {
  const before = cpu();
  const answer = await solveMilp(lp);
  solving += cpu() - before;
  return answer;
};

console.log(`yardstick: a hundred million square roots take ${yardstick().toFixed(2)} s of this core now`);
console.log("aircraft  hours  base   missed  wall s   cpu s  solver s   goal: 12 x 36 h under 2 s");
await measured(4, 24, "tight");
const byAircraft = [];
for (const count of [3, 6, 12, 24]) byAircraft.push([count, await measured(count, 36, "tight")]);
const byHours = [];
for (const hours of [18, 36, 72]) byHours.push([hours, await measured(12, hours, "room")]);
await measured(12, 36, "moves");
console.log(
  `slope of cost: ${slope(byAircraft).toFixed(2)} in aircraft, ${slope(byHours).toFixed(2)} in hours`,
);

async function measured(count, hours, kind) {
  const document = baseOf(count, hours, kind);
  const times = [];
  let missed = 0;
  let share = 0;
  for (let round = 0; round < ROUNDS; round++) {
    solving = 0;
    const start = performance.now();
    const before = cpu();
    const outcome = await basePlanFromDocument(document, { solveMilp: timedSolve });
    if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
    times.push({ wall: (performance.now() - start) / 1000, cpu: cpu() - before });
    missed = outcome.result.totals.missed;
    share = solving;
  }
  const best = times.reduce((a, b) => (a.cpu < b.cpu ? a : b));
  const cells = [String(count).padStart(8), String(hours).padStart(7), `  ${kind.padEnd(6)}`];
  const numbers = [
    String(missed).padStart(7),
    ...[best.wall, best.cpu, share].map((s) => s.toFixed(2).padStart(9)),
  ];
  console.log([...cells, ...numbers].join(""));
  return best.cpu;
}

/** Aircraft in turn of four kinds; departures half an hour apart, six times over, at the end of the time. */
function baseOf(count, hours, kind) {
  const points = Array.from({ length: hours + 1 }, (_, h) => ({
    at_h: h,
    air_c: -15 - 3 * Math.sin((2 * Math.PI * (h - 6)) / 24),
    wind_mps: 2.5,
    dew_point_c: -20,
    cloud_fraction: 0.2,
  }));
  const { name, note, start, zone, site } = example;
  const epoch = Date.parse(start) / 1000;
  const moment = (h) => new Date(1000 * (epoch + 3600 * h)).toISOString();
  const outlets = kind === "room" ? count : Math.max(1, Math.ceil(count / 6));
  return {
    ...{ soakline: 2, kind: "base", name, note, start, zone, site },
    hours,
    weather: { issued: start, points },
    ensemble: { members: MEMBERS, seed: 1 },
    circuits: ["north", "south"].map((id) => ({
      id,
      limit_a: 8 * Math.max(2, outlets),
      voltage_v: 230,
      outlets,
    })),
    ...(kind === "moves"
      ? {
          hangar: { air_c: 6, bays: 1, move_min: 20 },
          carts: [{ id: "cart", heater: "ducted-electric-1500" }],
        }
      : {}),
    aircraft: Array.from({ length: count }, (_, i) => {
      const [engine, heater] = KINDS[i % KINDS.length];
      return {
        id: `a${i}`,
        scenario: {
          name: `A${i}`,
          aircraft: engine,
          kit: { heaters: [heater], covers: ["insulated-cover", "propeller-cover"] },
          place: "ramp",
          fitted: { covers: ["insulated-cover", "propeller-cover"] },
          initial: { all_c: -15, uncertainty_k: 2 },
          want: {
            departure: moment(hours - 1 - (i % 6) / 2),
            chance: 0.9,
            unplug_before_min: 15,
            cover_off_before_min: 10,
          },
        },
        circuits: [i % 2 === 0 ? "north" : "south"],
        switching: "network",
      };
    }),
  };
}

/** [s] A busy machine gives less per second: seconds of two runs compare only when this does. */
function yardstick() {
  const before = cpu();
  let sum = 0;
  for (let i = 0; i < 1e8; i++) sum += Math.sqrt(i);
  if (!(sum > 0)) throw new Error("the yardstick did nothing");
  return cpu() - before;
}

function cpu() {
  return process.cpuUsage().user / 1e6;
}

/** Least squares through the logarithms. */
function slope(points) {
  const xs = points.map(([x]) => Math.log(x));
  const ys = points.map(([, y]) => Math.log(y));
  const mean = (v) => v.reduce((s, x) => s + x, 0) / v.length;
  const [mx, my] = [mean(xs), mean(ys)];
  return xs.reduce((s, x, i) => s + (x - mx) * (ys[i] - my), 0) / xs.reduce((s, x) => s + (x - mx) ** 2, 0);
}
