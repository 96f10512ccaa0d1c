// Makes examples/logs/marten-*.csv and examples/logs/bad: one invented night of one aircraft, simulated, with the noise and
// the rounding of probes laid on from a seed, and then spoilt in the ways loggers and probes spoil logs.
// Run on the built project: npm run build && node scripts/make-log-examples.mjs
import { coverById, heaterById, installationById } from "../dist/aircraft/index.js";
import { writeTextFile } from "../dist/node/index.js";
import { createRandom } from "../dist/numerics/index.js";
import { centralDraws, prepareRun, timelineOf } from "../dist/simulation/index.js";
import { celsiusFromKelvin, fahrenheitFromCelsius, kelvinFromCelsius } from "../dist/units/index.js";

const HOUR = 3600;
const NOTE = "# invented: made by scripts/make-log-examples.mjs, no aircraft was measured";
const random = createRandom(20260118).stream("log examples");

/** [°C] oil, heads (mean of front and rear), pad surface and outside air, each minute from 18 h to 6 h UTC. */
const night = nightOf({
  start: Date.UTC(2026, 0, 18, 18) / 1000,
  minutes: 720,
  air: -24,
  plugIn: 2 * HOUR,
  unplug: 9 * HOUR,
});
const autumn = nightOf({
  start: Date.UTC(2026, 9, 24, 22) / 1000,
  minutes: 300,
  air: -4,
  plugIn: HOUR,
  unplug: 4 * HOUR,
});
const comma = (value) => value.toFixed(1).replace(".", ",");
const point = (value) => value.toFixed(1);
const utc = (t) => `${new Date(t * 1000).toISOString().slice(0, 19)}Z`;
const [day, clock] = [
  (t) => local(t).slice(0, 10).split("-").reverse().join("."),
  (t) => local(t).slice(11, 16),
];

write(
  "marten-ramp.csv",
  "Logger 12; serial 0042\nDate;Time;Oil;Heads;Pad surface;Outside\n;;°C;°C;°C;°C",
  (row) => [day(row.t), clock(row.t), ...[row.oil, row.heads, row.pad, row.air].map(comma)].join(";"),
);
write("marten-fahrenheit.csv", "timestamp,oil_f,CHT (°F),OAT (°F)", (row, k) =>
  k % 5 === 0
    ? [row.t, ...[row.oil, row.heads, row.air].map((c) => fahrenheitFromCelsius(c).toFixed(0))].join(",")
    : "",
);

const header = "time,oil (°C),CHT (°C),OAT (°C)";
const plain = (row, change = {}) => {
  const { oil, heads, air } = { ...row, ...change };
  return [utc(row.t), ...[oil, heads, air].map((v) => (typeof v === "number" ? point(v) : v))].join(",");
};
const between = (k, from, to) => k >= from && k < to;

write("bad/probe-fell-out.csv", header, (row, k) => {
  if (!between(k, 300, 560)) return plain(row);
  // Out at 5 h, put back at 9 h 20: a bare probe follows the air within two minutes.
  const share = Math.exp(-(k - 299) / 2);
  return plain(row, { oil: row.air + (night[299].oil - row.air) * share });
});
write(
  "bad/deep-cold.csv",
  header,
  (row, k) => {
    const colder = { oil: row.oil - 12, heads: row.heads - 14, air: row.air - 14 };
    if (between(k, 40, 130)) return plain(row, { ...colder, heads: "---" });
    if (between(k, 130, 150)) return plain(row, { ...colder, oil: -55 });
    if (k === 200) return plain(row, { ...colder, heads: "" });
    return plain(row, colder);
  },
  240,
);
write(
  "bad/spikes.csv",
  header,
  (row, k) => {
    if (k === 70) return plain(row, { oil: row.oil + 9 });
    if (between(k, 180, 182)) return plain(row, { heads: row.heads - 25 });
    if (k === 200) return plain(row, { oil: 85 });
    if (k === 201) return plain(row, { air: -127 });
    return plain(row);
  },
  240,
);
write("bad/stuck.csv", header, (row, k) =>
  plain(row, between(k, 200, 420) ? { heads: night[200].heads } : {}),
);
write(
  "bad/rows.csv",
  header,
  (row, k) => {
    if (k === 5) return `${plain(row)}\n${plain(row)}`;
    if (k === 8) return `${plain(row)}\n${plain(row, { oil: row.oil + 0.3 })}`;
    if (k === 20) return `${plain(night[21])}\n${plain(row)}`;
    if (k === 21 || between(k, 60, 110)) return "";
    if (k === 30) return plain(row).replace(/,[^,]*$/, "");
    if (k === 31) return plain(row).replace("T", " at ");
    if (k === 32) return plain(row, { oil: "warm" });
    if (k === 33) return plain(row, { heads: 999.9 });
    if (k === 34) return plain(row).replace(",", ',"');
    return plain(row);
  },
  150,
);
write(
  "bad/clock-back.csv",
  "time,oil (°C),CHT (°C),OAT (°C)",
  (row) => plain(row).replace(/^[^,]*/, localAutumn(row.t)),
  300,
  autumn,
);
write(
  "bad/unknown-columns.csv",
  "time,T1 (°C),T2,CHT 2 (°C),RH (%)",
  (row) => [utc(row.t), point(row.oil), point(row.heads), point(row.heads), "71"].join(","),
  30,
);
write("bad/two-units.csv", "time,oil (°C),CHT (°C),OAT (°C)\n,°F,°C,°C", (row) => plain(row), 30);
write("bad/no-zone.csv", header, (row) => plain(row).replace("Z", ""), 30);
write("bad/dates-both-ways.csv", header, (row) => plain(row).replace(/^[^,]*/, "03/04/2026 05:00"), 3);

function write(file, head, rowText, count = night.length, source = night) {
  const rows = source
    .slice(0, count)
    .map((row, k) => rowText(row, k))
    .filter((text) => text !== "");
  const note = head.startsWith("Logger") ? head : `${NOTE}\n${head}`;
  writeTextFile(
    `examples/logs/${file}`,
    `${note.startsWith("#") ? note : `${NOTE}\n${note}`}\n${rows.join("\n")}\n`,
  );
}

function nightOf({ start, minutes, air, plugIn, unplug }) {
  const time = Float64Array.from({ length: minutes / 60 + 2 }, (_, i) => start + i * HOUR);
  const tempAir = time.map((t) => kelvinFromCelsius(air + 2 * Math.cos((t - start) / (5 * HOUR))));
  const weather = {
    time,
    tempAir,
    windSpeed: time.map(() => 3),
    tempDewPoint: tempAir.map((t) => t - 3),
    cloudCover: time.map(() => 0.5),
    origin: "invented",
    assumptions: [],
  };
  const kit = { heaters: [heaterById("sump-pad-220")], covers: [coverById("insulated-cover")] };
  const configuration = { place: "ramp", heatersOn: new Set(), coversOn: new Set(["insulated-cover"]) };
  const heaters = ["sump-pad-220"];
  const scenario = {
    installation: installationById("four-carburettor-160"),
    ...{ kit, start, weather, duration: minutes * 60 },
    site: { tempHangar: kelvinFromCelsius(5), roughness: 0.005 },
    initial: { configuration, temps: new Map(), tempOthers: tempAir[0] + 1, sd: 0 },
    events: [
      { at: plugIn, change: { do: "plug-in", heaters } },
      { at: unplug, change: { do: "unplug", heaters } },
    ],
  };
  const run = prepareRun(scenario, centralDraws(weather));
  const sampleTimes = Array.from({ length: minutes }, (_, i) => i * 60);
  const timeline = timelineOf(configuration, scenario.events);
  const { samples } = run.advance({ state: run.initial, from: 0, to: minutes * 60, timeline, sampleTimes });
  const parts = run.network.parts.map(({ name }) => name);
  const at = (k, part) => celsiusFromKelvin(samples[k * parts.length + parts.indexOf(part)]);
  const pad = parts.findIndex((name) => name.startsWith("heater:"));
  const noisy = (value) => value + 0.15 * random.normal();
  return sampleTimes.map((s, k) => ({
    t: start + s,
    oil: noisy(at(k, "oil")),
    heads: noisy((at(k, "heads_front") + at(k, "heads_rear")) / 2),
    pad: noisy(at(k, parts[pad])),
    air: noisy(celsiusFromKelvin(run.forcing.tempAirAt(s, 0))),
  }));
}

/** Clock of a logger left on winter time, one hour before UTC. */
function local(t) {
  return new Date((t + HOUR) * 1000).toISOString();
}

/** Clock of a logger that follows Europe/Oslo through 25 October 2026, when it goes back at 01:00 UTC. */
function localAutumn(t) {
  const back = Date.UTC(2026, 9, 25, 1) / 1000;
  return new Date((t + (t < back ? 2 : 1) * HOUR) * 1000).toISOString().slice(0, 16);
}
