// How long a 500-member plan takes on one core. Run on the built project: npm run build && node benchmarks/plan.mjs
import { coverById, heaterById, installationById } from "../dist/aircraft/index.js";
import { planPreheat } from "../dist/planning/index.js";
import { temperatureCriteria } from "../dist/readiness/index.js";
import { drawEnsemble } from "../dist/simulation/index.js";

const HOUR = 3600;
const MEMBERS = Number(process.argv[2] ?? 500);
const time = Float64Array.from({ length: 31 }, (_, i) => i * HOUR);
const weather = {
  time,
  tempAir: time.map((_, i) => 256 + 3 * Math.cos(((i - 17) / 12) * Math.PI)),
  windSpeed: time.map((_, i) => 3 + 2 * Math.sin(i / 5)),
  tempDewPoint: time.map(() => 250),
  cloudCover: time.map(() => 0.3),
  issued: 0,
  origin: "made for the benchmark",
  assumptions: [],
};

console.log("aircraft              status         plug-in lead  chance   wall s   cpu s   goal: under 1 s");
for (const [id, heater] of [
  ["four-carburettor-160", "whole-engine-4"],
  ["six-injected-300", "whole-engine-6"],
  ["four-light-100", "sump-pad-220"],
  ["radial-nine-360", "ducted-fuel-12000"],
]) {
  const installation = installationById(id);
  const kit = { heaters: [heaterById(heater)], covers: [coverById("insulated-cover")] };
  const scenario = {
    installation,
    kit,
    start: 0,
    duration: 25 * HOUR,
    weather,
    site: { tempHangar: 281, roughness: 0.005 },
    initial: {
      configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) },
      temps: new Map(),
      tempOthers: 256,
      sd: 1.5,
    },
    events: [],
  };
  const once = () =>
    planPreheat({
      scenario,
      wish: { departure: 13 * HOUR, chance: 0.9, unplugBefore: 900, coverOffBefore: 600, pulledOut: true },
      heaters: [heater],
      criteria: temperatureCriteria(installation, kit),
      draws: drawEnsemble({ members: MEMBERS, seed: 1, weather }),
    });
  once();
  const cpu = process.cpuUsage();
  const start = performance.now();
  const plan = once();
  const wall = (performance.now() - start) / 1000;
  const used = process.cpuUsage(cpu).user / 1e6;
  const lead = plan.plugIn === undefined ? "-" : `${((plan.departure - plan.plugIn) / HOUR).toFixed(2)} h`;
  console.log(
    `${id.padEnd(22)}${plan.status.padEnd(15)}${lead.padEnd(14)}${plan.chance.toFixed(3).padEnd(9)}${wall.toFixed(2).padStart(6)}${used.toFixed(2).padStart(8)}`,
  );
}
