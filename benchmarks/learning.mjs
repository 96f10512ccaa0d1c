// How long learning takes on one core: the fit of a 12 h, 1-minute log with three probes, and a live update.
// Run on the built project: npm run build && node benchmarks/learning.mjs
import { coverById, heaterById, installationById } from "../dist/aircraft/index.js";
import { createLiveFilter, fitAircraft, USUAL_SENSOR } from "../dist/learning/index.js";
import { madeFleet, madeLog, madeNight } from "../dist/learning/made-aircraft.js";

const HOUR = 3600;
const FITS = 5;
const time = Float64Array.from({ length: 15 }, (_, i) => i * HOUR);
const weather = {
  time,
  tempAir: time.map((_, i) => 256 + 3 * Math.cos(((i - 17) / 12) * Math.PI)),
  windSpeed: time.map((_, i) => 3 + Math.sin(i)),
  tempDewPoint: time.map(() => 250),
  cloudCover: time.map(() => 0.5),
  origin: "made for the benchmark",
  assumptions: [],
};
const minutes = Array.from({ length: 721 }, (_, k) => 60 * k);
const sensors = ["oil", "heads", "crankcase"].map((part) => ({
  name: part,
  place: { part },
  ...USUAL_SENSOR,
}));

console.log(
  "Fit of 12 h, 3 probes, 1 minute: goal under 3 s. Live update with 3 probes: goal under 5 ms. CPU times.",
);
console.log("aircraft              heater               fit s: median  worst   update ms: median   99 %");
for (const [id, heater] of [
  ["four-carburettor-160", "sump-pad-220"],
  ["four-carburettor-160", "whole-engine-4"],
  ["six-injected-300", "whole-engine-6"],
  ["radial-nine-360", "ducted-fuel-12000"],
]) {
  const scenario = {
    installation: installationById(id),
    kit: { heaters: [heaterById(heater)], covers: [coverById("insulated-cover")] },
    start: 0,
    duration: 12 * HOUR,
    weather,
    site: { tempHangar: 281, roughness: 0.005 },
    initial: {
      configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) },
      temps: new Map(),
      tempOthers: 256,
      sd: 2,
    },
    events: [
      { at: HOUR, change: { do: "plug-in", heaters: [heater] } },
      { at: 9 * HOUR, change: { do: "unplug", heaters: [heater] } },
    ],
  };
  const fleet = madeFleet(scenario, FITS, 1);
  const night = madeNight(fleet, scenario, minutes, 2);
  const logs = Array.from({ length: FITS }, (_, a) => madeLog(fleet, night, a, sensors));
  fitAircraft({ log: logs[0], scenario });
  const fits = logs.map((log) => cpuSeconds(() => fitAircraft({ log, scenario })));
  const filter = createLiveFilter({ scenario, sensors });
  const updates = [];
  let state = filter.start();
  for (let k = 1; k < minutes.length; k++) {
    const readings = new Map(logs[0].probes.map(({ name, temps }) => [name, temps[k]]));
    updates.push(
      1000 *
        cpuSeconds(() => {
          state = filter.step(state, { time: minutes[k], readings }).state;
        }),
    );
  }
  const cells = [at(fits, 0.5), at(fits, 1), at(updates, 0.5), at(updates, 0.99)].map((v) => v.toFixed(2));
  console.log(
    `${id.padEnd(22)}${heater.padEnd(21)}${cells[0].padStart(13)}${cells[1].padStart(7)}${cells[2].padStart(20)}${cells[3].padStart(7)}`,
  );
}

function cpuSeconds(work) {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

function at(values, share) {
  return [...values].sort((a, b) => a - b)[Math.round(share * (values.length - 1))];
}
