// How soon the live filter notices what is not as told, and how often it is wrong, on made aircraft of which nothing was
// learned before. Run on the built project: npm run build && node benchmarks/findings.mjs [aircraft of each kind]
import { coverById, heaterById, installationById } from "../dist/aircraft/index.js";
import { createLiveFilter, USUAL_SENSOR } from "../dist/learning/index.js";
import { madeFleet, madeLog, madeNight, trueTemps } from "../dist/learning/made-aircraft.js";

const HOUR = 3600;
const COUNT = Number(process.argv[2] ?? 50);
/** [s] between readings. */
const STEP = 60;
/** [h] when it happens; the heater is told to be on from 2 h on. */
const WHEN = 5;
const END = 9;
const KINDS = [
  ["four-carburettor-160", "sump-pad-220"],
  ["six-injected-300", "whole-engine-6"],
];
const times = Array.from({ length: (END * HOUR) / STEP + 1 }, (_, k) => k * STEP);
const sensors = ["oil", "heads"].map((part) => ({ name: part, place: { part }, ...USUAL_SENSOR }));

for (const [id, heater] of KINDS) {
  const plugIn = { at: 2 * HOUR, change: { do: "plug-in", heaters: [heater] } };
  const at = (change) => ({ at: WHEN * HOUR, change });
  const told = scenarioOf(id, heater, [plugIn], "ramp");
  const nights = [
    ["nothing", told, undefined],
    [
      "heater-not-heating",
      scenarioOf(id, heater, [plugIn, at({ do: "unplug", heaters: [heater] })], "ramp"),
      WHEN,
    ],
    [
      "cover-off",
      scenarioOf(id, heater, [plugIn, at({ do: "cover-off", covers: ["insulated-cover"] })], "ramp"),
      WHEN,
    ],
    ["other-place", scenarioOf(id, heater, [plugIn], "hangar"), 0],
    ["probe-out", told, WHEN],
  ];
  const fleet = madeFleet(told, COUNT, 21);
  console.log(`\n${id}, ${heater}, probes on oil and heads, a reading a minute: ${COUNT} aircraft`);
  console.log("what happens           believed   median after   90 % after   something else believed first");
  for (const [what, truth, since] of nights) {
    const night = madeNight(fleet, truth, times, 22);
    const delays = [];
    let wrong = 0;
    for (let a = 0; a < COUNT; a++) {
      const log = madeLog(fleet, night, a, sensors);
      if (what === "probe-out") dropOil(log, trueTemps(night, COUNT, a, "cowl_air"));
      const first = firstBelieved(told, log);
      if (first === undefined) continue;
      if (first.finding === what) delays.push(first.at / 60 - 60 * since);
      else wrong++;
    }
    delays.sort((a, b) => a - b);
    const after = (share) => {
      const k = Math.ceil(share * COUNT) - 1;
      return k < delays.length ? `${delays[k].toFixed(0)} min` : "-";
    };
    const cells = [`${delays.length}`.padStart(8), after(0.5).padStart(15), after(0.9).padStart(13)];
    console.log(`${what.padEnd(23)}${cells.join("")}${String(wrong).padStart(16)}`);
  }
}

/** The first finding that the filter takes for true. */
function firstBelieved(told, log) {
  const filter = createLiveFilter({ scenario: told, sensors });
  let state = filter.start();
  for (let k = 1; k < times.length; k++) {
    const readings = new Map(log.probes.map(({ name, temps }) => [name, temps[k]]));
    state = filter.step(state, { time: times[k], readings }).state;
    const found = filter.estimate(state).findings.find(({ believed }) => believed);
    if (found !== undefined) return { finding: found.finding, at: times[k] };
  }
  return undefined;
}

/** The oil probe falls out and takes the temperature of the air under the cowl within some minutes. */
function dropOil(log, air) {
  const { temps } = log.probes[0];
  let shown = temps[(WHEN * HOUR) / STEP];
  for (let k = (WHEN * HOUR) / STEP; k < temps.length; k++) {
    shown += (air[k] - shown) * (1 - Math.exp(-STEP / 300));
    temps[k] = Math.round(10 * shown) / 10;
  }
}

function scenarioOf(id, heater, events, place) {
  const time = Float64Array.from({ length: END + 2 }, (_, i) => i * HOUR);
  const tempAir = time.map((_, h) => 250 + 4 * Math.cos(((h - 15) / 12) * Math.PI));
  return {
    installation: installationById(id),
    kit: { heaters: [heaterById(heater)], covers: [coverById("insulated-cover")] },
    start: 0,
    duration: END * HOUR,
    weather: {
      ...{ time, tempAir, windSpeed: time.map((_, h) => 4 + 2 * Math.sin(h / 2)) },
      tempDewPoint: tempAir.map((t) => t - 4),
      cloudCover: time.map(() => 0.5),
      origin: "made for the benchmark",
      assumptions: [],
    },
    site: { tempHangar: 281, roughness: 0.005 },
    initial: {
      configuration: { place, heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) },
      temps: new Map(),
      tempOthers: 250,
      sd: 1.5,
    },
    events,
  };
}
