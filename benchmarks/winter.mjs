// What whole winters cost, on the built package: npm run build && node benchmarks/winter.mjs [economy]
//
// First one winter of seven months for twelve kits under three habits on two threads. Then how the time of one thread
// grows when the hours, the kits or the members double: CPU times, so that other work on the machine counts less; a slope
// of 1 is linear. With "economy" also what thinned weather, loose steps and the table of leads cost against every hour at
// tight tolerance and against whole plans.
import { availableParallelism } from "node:os";
import { readWinterDocument } from "../dist/documents/index.js";
import { bundled, studyOnThreads } from "../dist/node/index.js";
import { planPreheat } from "../dist/planning/index.js";
import { allCriteria } from "../dist/readiness/index.js";
import { drawEnsemble } from "../dist/simulation/index.js";
import { cutSeries, weatherAt } from "../dist/weather/index.js";
import { meanBefore } from "../dist/winter/heater-schedule.js";
import { piecesOf, runPiece } from "../dist/winter/index.js";
import { leadTableOf } from "../dist/winter/piece.js";

const HOUR = 3600;
const HEATERS = [
  "sump-pad-100",
  "sump-pad-220",
  "sump-pad-300",
  "whole-engine-4",
  "in-cowl-400",
  "immersion-250",
];
const COVERS = ["insulated-cover", "improvised-quilt"];
const KITS = HEATERS.flatMap((heater) =>
  COVERS.map((cover) => ({
    name: `${heater}, ${cover}`,
    heaters: [heater],
    covers: [cover],
    switching: "local_network",
  })),
);

function document({ months = 7, kits = 12, members = 5 } = {}) {
  return {
    ...{ soakline: 2, kind: "winter", name: "benchmark", aircraft: "four-carburettor-160" },
    ...{ start: "2025-10-01T00:00+01:00", zone: "CET", months, place: "ramp", site: { roughness_m: 0.005 } },
    weather: { place: "ravnholt", years: 1 },
    flying: {
      schedule: [
        { days: ["tue", "thu"], at: "09:30" },
        { days: ["sat", "sun"], at: "11:00" },
      ],
      flight_h: 1.5,
    },
    kits: KITS.slice(0, kits),
    habits: [{ do: "always_on" }, { do: "clock", lead_h: 3 }, { do: "planned" }],
    ensemble: { members, seed: 1 },
  };
}

function read(sizes) {
  const reading = readWinterDocument(document(sizes));
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

await wholeWinter();
slopes();
if (process.argv[2] === "economy") {
  economy();
  leads();
}

async function wholeWinter() {
  const { bundle, reading } = bundled(document(), {}, () => ({ ok: false, reason: "no files" }));
  const cpu = process.cpuUsage();
  const start = performance.now();
  const outcome = await studyOnThreads({ bundle, read: reading, threads: 2 });
  const wall = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  const used = (user + system) / 1e6;
  const rows = outcome.result.rows.length;
  console.log(
    `12 kits x 3 habits x 6 aircraft x ${reading.departures.length} flights, 7 months hourly: ${rows} rows in ${wall.toFixed(1)} s on 2 threads of ${availableParallelism()} cores, ${used.toFixed(1)} s of CPU (goal: under 5 s on 2 idle cores)`,
  );
}

/** [s] of CPU that all pieces take in this thread, the best of three. */
function spent(sizes) {
  const times = [1, 2, 3].map(() => {
    const study = read(sizes);
    const cpu = process.cpuUsage();
    for (const piece of piecesOf(study)) runPiece(study, piece);
    return process.cpuUsage(cpu).user / 1e6;
  });
  return Math.min(...times);
}

function slopes() {
  spent({ months: 2, kits: 2, members: 3 });
  const series = {
    hours: [2, 4, 8].map((months) => ({ size: months, sizes: { months, kits: 2 } })),
    kits: [1, 2, 4].map((kits) => ({ size: kits, sizes: { months: 2, kits } })),
    members: [6, 12, 24].map((members) => ({ size: members, sizes: { months: 2, kits: 2, members } })),
  };
  for (const [what, cases] of Object.entries(series)) {
    const times = cases.map(({ sizes }) => spent(sizes));
    const told = cases.map(({ size }, i) => `${size}: ${times[i].toFixed(2)} s`).join(", ");
    const slope = Math.log(times[2] / times[0]) / Math.log(cases[2].size / cases[0].size);
    console.log(`${what.padEnd(8)} ${told}; slope ${slope.toFixed(2)} (1 is linear)`);
  }
}

function economy() {
  console.log("\nusual against every hour at 0.005 K, samples every 10 min, water every minute; one winter");
  const study = read({ members: 6 });
  const count = study.departures.length;
  for (const kit of [1, 2, 6, 8]) {
    const usual = runPiece(study, { kit, year: 0 });
    const exact = runPiece(study, { kit, year: 0 }, { exact: { tolerance: 0.005 } });
    usual.habits.forEach((one, h) => {
      const other = exact.habits[h];
      const mean = (list) => list.slice(1).reduce((sum, n) => sum + n, 0) / (list.length - 1);
      const rate = (result) => (100 * mean(result.ready)) / count;
      const most = (list) => Math.max(...list.map((value, d) => Math.abs(value - other[list.key][d])));
      const off = (key) => most(Object.assign([...one[key]], { key }));
      console.log(
        `${study.kits[kit].name.padEnd(34)}${["always on", "clock 3 h", "planned"][h].padEnd(11)}ready ${rate(one).toFixed(1)} % (${rate(other).toFixed(1)})  energy ${(100 * (one.energy[0] / other.energy[0] - 1)).toFixed(2)} %  surface ${off("hottestSurface").toFixed(1)} K  film ${off("hottestFilm").toFixed(1)} K  wet ${(one.wetTime / HOUR).toFixed(0)} h (${(other.wetTime / HOUR).toFixed(0)})`,
      );
    });
  }
}

/** The table's lead beside that of a whole plan on the same night, forecast issued five hours before its plug-in. */
function leads() {
  console.log("\nlead by the table beside that of a whole plan on the real night's course, h");
  const study = read();
  const { weather } = study.years[0];
  const differences = [];
  for (const kit of [1, 2, 6]) {
    const choice = study.kits[kit];
    const table = leadTableOf(study, kit, 0.9);
    for (const departure of study.departures.filter((_, i) => i % 9 === 4)) {
      const begin = departure - 36 * HOUR;
      const cut = cutSeries(weather, begin, departure + 2 * HOUR);
      if (!cut.ok) continue;
      const series = { ...cut.series, issued: departure - 8 * HOUR };
      const covers = choice.kit.covers.map(({ id }) => id);
      const plan = planPreheat({
        scenario: {
          ...{
            installation: study.installation,
            kit: choice.kit,
            start: begin,
            duration: 38 * HOUR,
            weather: series,
          },
          site: study.site,
          initial: {
            configuration: { place: "ramp", heatersOn: new Set(), coversOn: new Set(covers) },
            temps: new Map(),
            tempOthers: weatherAt(weather, begin).tempAir,
            sd: 2,
          },
          events: [],
        },
        wish: { departure: 36 * HOUR, chance: 0.9, unplugBefore: 900, coverOffBefore: 600, pulledOut: false },
        heaters: choice.kit.heaters.map(({ id }) => id),
        criteria: allCriteria(study.installation, choice.kit),
        draws: drawEnsemble({ members: 100, seed: 1, weather: series }),
      });
      const { tempAir, windSpeed } = meanBefore(weather, departure);
      const { lead, chance } = table.at(tempAir, windSpeed);
      const planned = plan.plugIn === undefined ? 0 : (plan.departure - plan.plugIn) / HOUR;
      console.log(
        `${choice.name.padEnd(34)}${(tempAir - 273.15).toFixed(1).padStart(6)} °C ${windSpeed.toFixed(1)} m/s  table ${(lead / HOUR).toFixed(2)} (${(100 * chance).toFixed(0)} %)  plan ${planned.toFixed(2)} (${(100 * plan.chance).toFixed(0)} %, ${plan.status})`,
      );
      if (plan.status === "ready" && chance >= 0.85) differences.push(lead / HOUR - planned);
    }
  }
  const mean = differences.reduce((sum, d) => sum + d, 0) / differences.length;
  const sd = Math.sqrt(differences.reduce((sum, d) => sum + (d - mean) ** 2, 0) / differences.length);
  console.log(
    `table less plan, where both reach it: mean ${mean.toFixed(2)} h, sd ${sd.toFixed(2)} h over ${differences.length}`,
  );
}
