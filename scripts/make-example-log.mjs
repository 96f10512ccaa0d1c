// Makes examples/logs/lynx-night.csv: what three probes and a thermometer outside would have logged on an invented
// aircraft that differs from its catalogue entry, through the night of examples/lynx-logged-night.json.
// Run on the built project: npm run build && node scripts/make-example-log.mjs
import { readFileSync } from "node:fs";
import { readScenarioDocument } from "../dist/index.js";
import { USUAL_SENSOR } from "../dist/learning/index.js";
import { madeFleet, madeLog, madeNight } from "../dist/learning/made-aircraft.js";
import { writeTextFile } from "../dist/node/index.js";
import { celsiusFromKelvin } from "../dist/units/index.js";
import { localText } from "../dist/weather/index.js";

const SEED = 20260112;
const PROBES = [
  ["oil temp", { part: "oil" }],
  ["case top", { part: "crankcase" }],
  ["heads", { part: "heads" }],
  ["outside", "outside-air"],
];

const reading = readScenarioDocument(readFileSync("examples/lynx-logged-night.json", "utf8"));
const { scenario, zone } = reading;
const times = Array.from({ length: 12 * 60 + 1 }, (_, i) => 60 * i);
const fleet = madeFleet(scenario, 1, SEED);
const night = madeNight(fleet, scenario, times, SEED);
const sensors = PROBES.map(([name, place]) => ({ name, place, ...USUAL_SENSOR }));
const log = madeLog(fleet, night, 0, sensors);
const rows = Array.from(log.time, (t, k) =>
  [localText(t, zone), ...log.probes.map((p) => celsiusFromKelvin(p.temps[k]).toFixed(1))].join(","),
);
const header = ["time", ...PROBES.map(([name]) => `${name} (°C)`)].join(",");
const note = "# invented: made by scripts/make-example-log.mjs, no aircraft was measured";
writeTextFile("examples/logs/lynx-night.csv", `${note}\n${header}\n${rows.join("\n")}\n`);
