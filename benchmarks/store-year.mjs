// A year of readings of 20 aircraft with 8 probes each in one store: how long the charts' queries take.
// Usage: npm run build && node benchmarks/store-year.mjs [minutes between readings, 10 where left out] [store url]
// Real probes say something every 10 s to 1 min. A raw reading every 10 min makes the same number of ten-minute and hour
// rollups with a tenth of the raw rows (8.4 million), and those two are what a year is looked at with.
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openStore } from "../dist/store/index.js";

const AIRCRAFT = 20;
const PROBES = 8;
const DAYS = 365;
const DAY = 86_400_000;
const START = Date.parse("2025-08-01T00:00:00Z");

const every = Number(process.argv[2] ?? 10) * 60_000;
const folder = mkdtempSync(join(tmpdir(), "soakline-year-"));
const url = process.argv[3] ?? `file:${join(folder, "year.db")}`;
const store = await openStore(url);

let adding = 0;
let rolling = 0;
let readings = 0;
for (let day = 0; day < DAYS; day++) {
  const rows = [];
  for (let time = START + day * DAY; time < START + (day + 1) * DAY; time += every) {
    for (let a = 0; a < AIRCRAFT; a++) {
      for (let p = 0; p < PROBES; p++) {
        const tempC = -15 + 12 * Math.sin(time / 1.37e7 + a) + p + ((time / every) % 7) / 10;
        rows.push({ aircraft: `aircraft-${a}`, probe: `probe-${p}`, time, tempC });
      }
    }
  }
  const begin = performance.now();
  await store.appendReadings(rows);
  const added = performance.now();
  await store.rollUp();
  adding += added - begin;
  rolling += performance.now() - added;
  readings += rows.length;
}
const perSecond = (ms) => `${Math.round(readings / (ms / 1000))} readings/s`;
console.log(
  `${readings} readings: added in ${seconds(adding)} (${perSecond(adding)}), rolled up in ${seconds(rolling)} (${perSecond(rolling)})`,
);
if (url.startsWith("file:")) console.log(`file: ${Math.round(statSync(url.slice(5)).size / 1e6)} MB`);

const year = { from: START, to: START + DAYS * DAY, limit: 1e6 };
const week = { from: START + 200 * DAY, to: START + 207 * DAY, limit: 1e6 };
await timed("a year, 8 probes, by the hour", (a) =>
  store.readings({ ...year, aircraft: `aircraft-${a}`, resolution: "hour" }),
);
await timed("a year, 1 probe, by the hour", (a) =>
  store.readings({ ...year, aircraft: `aircraft-${a}`, probes: ["probe-3"], resolution: "hour" }),
);
await timed("a week, 8 probes, by ten minutes", (a) =>
  store.readings({ ...week, aircraft: `aircraft-${a}`, resolution: "ten-minutes" }),
);
await timed("the newest of all 160 probes", () => store.latestReadings());
await store.close();
rmSync(folder, { recursive: true, force: true });

async function timed(what, query) {
  const times = [];
  let rows = 0;
  for (let i = 0; i < 40; i++) {
    const begin = performance.now();
    rows = (await query(i % AIRCRAFT)).length;
    times.push(performance.now() - begin);
  }
  times.sort((a, b) => a - b);
  const at = (share) => `${times[Math.floor(share * (times.length - 1))].toFixed(0)} ms`;
  console.log(`${what}: ${rows} rows, median ${at(0.5)}, 95 % ${at(0.95)}, longest ${at(1)}`);
}

function seconds(ms) {
  return `${(ms / 1000).toFixed(0)} s`;
}
