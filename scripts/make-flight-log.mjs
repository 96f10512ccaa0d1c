// Makes examples/logs/wren-flight.csv: what an engine's own instruments would have logged of a flight and of the cool-down
// after it, on an invented aircraft that differs from its catalogue entry. °F, as many of them show, and no unit named.
// Run on the built project: npm run build && node scripts/make-flight-log.mjs
import { readFileSync } from "node:fs";
import { readScenarioDocument } from "../dist/index.js";
import { USUAL_SENSOR } from "../dist/learning/index.js";
import { madeFleet, madeLog, madeNight } from "../dist/learning/made-aircraft.js";
import { writeTextFile } from "../dist/node/index.js";
import { createRandom } from "../dist/numerics/index.js";
import { shutDownTemps } from "../dist/starting/index.js";
import { celsiusFromKelvin, fahrenheitFromCelsius } from "../dist/units/index.js";
import { localText, weatherAt } from "../dist/weather/index.js";

const SEED = 20260115;
const CYLINDERS = 6;
/** [s] after the document's start: the engine runs from then to then. */
const [FROM, TO] = [1800, 8640];
const HOURS = 10;
const random = createRandom(SEED).stream("flight");

const { scenario: asked, zone } = readScenarioDocument(
  readFileSync("examples/wren-after-flight.json", "utf8"),
);
const start = asked.start + TO;
const tempAir = weatherAt(asked.weather, start).tempAir;
const temps = shutDownTemps(asked.installation, tempAir);
const scenario = {
  ...asked,
  start,
  duration: HOURS * 3600,
  initial: { ...asked.initial, temps, tempOthers: temps.get("cowl_air"), sd: 3 },
  events: asked.events.map((event) => ({ ...event, at: event.at - TO })),
};
const fleet = madeFleet(scenario, 1, SEED);
const times = Array.from({ length: (HOURS * 3600) / 300 + 1 }, (_, i) => 300 * i);
const sensor = (name, place) => ({ name, place, ...USUAL_SENSOR });
const sensors = [
  sensor("oil", { part: "oil" }),
  sensor("heads", { part: "heads" }),
  sensor("air", "outside-air"),
];
const log = madeLog(fleet, madeNight(fleet, scenario, times, SEED), 0, sensors);
const [oil, heads, air] = log.probes.map(({ temps }) => Array.from(temps, celsiusFromKelvin));

const row = (t, c, rpm) => {
  const values = [...c.heads, c.oil, c.air, ...c.exhaust].map((v) => Math.round(fahrenheitFromCelsius(v)));
  const [date, clock] = localText(t, zone).slice(0, 19).split("T");
  return [date, clock.slice(0, 5), ...values, rpm, rpm > 0 ? 28.1 : 25.3].join(",");
};
const scattered = (middle, sd) => Array.from({ length: CYLINDERS }, () => middle + sd * random.normal());
const own = scattered(0, 4);
const rows = [];
for (let t = FROM; t < TO; t += 60) {
  const warm = 1 - Math.exp(-(t - FROM) / 500);
  const at = (hot) => air[0] + (hot - air[0]) * warm;
  const flying = {
    heads: own.map((off) => at(heads[0]) + off * warm + 0.3 * random.normal()),
    oil: at(oil[0]),
    air: air[0] + 0.3 * random.normal(),
    exhaust: scattered(700, 12),
  };
  rows.push(row(asked.start + t, flying, t < FROM + 600 ? 1200 : 2320));
}
log.time.forEach((t, k) => {
  const share = Math.exp(-k / 2);
  const standing = {
    heads: own.map((off) => heads[k] + off * share),
    oil: oil[k],
    air: air[k],
    exhaust: own.map(() => heads[k] * (1 - share) + 180 * share),
  };
  rows.push(row(t, standing, 0));
});
const each = (name) => Array.from({ length: CYLINDERS }, (_, i) => `${name}${i + 1}`);
const header = ["DATE", "TIME", ...each("CHT"), "OIL TEMP", "OAT", ...each("EGT"), "RPM", "VOLTS"].join(",");
const note = "# invented: made by scripts/make-flight-log.mjs, no aircraft was measured";
writeTextFile("examples/logs/wren-flight.csv", `${note}\n${header}\n${rows.join("\n")}\n`);
