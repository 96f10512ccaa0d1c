import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { heaterById, installationNetwork } from "../../src/aircraft/index.js";
import { readWinterDocument } from "../../src/documents/index.js";
import { GENERIC_OILS } from "../../src/properties/index.js";
import { allCriteria, isGating, marginOf } from "../../src/readiness/index.js";
import { centralDraws, createForcing } from "../../src/simulation/index.js";
import { shutDownTemps } from "../../src/starting/index.js";
import { weatherAt } from "../../src/weather/index.js";
import { type PieceResult, runPiece } from "../../src/winter/index.js";
import { winterDocument } from "../winter/small-winter.js";
import { type Description, describeProblem } from "./cases.mjs";
import { pythonWithScipy } from "./python.js";

// A winter month of one kit by its clock, the middle aircraft, integrated by scipy's BDF from return to departure through
// every hour of the weather at tight tolerance, and its totals added up here: heat, film, who is ready. The heater has a
// thermostat in the air under the cowl, so that its energy hangs on the temperatures.

const HOUR = 3600;
const SAMPLE = 600;
const LEAD = 8 * HOUR;
const FLIGHT = 1.5 * HOUR;
const python = pythonWithScipy();
if (python === undefined)
  console.warn("no python3 with scipy (Debian: python3-scipy), so a winter month was not checked against it");

// The catalogue's own is rejected by makers and has to be attended: as an owner would describe one that is not.
const { rejected: _, ...inCowl } = heaterById("in-cowl-400");
const THERMOSTAT_IN_COWL = { ...inCowl, attended: false, longest_on_h: 12 };

const reading = readWinterDocument(
  winterDocument({
    weather: { place: "kvitrimvatn", years: 1 },
    kits: [
      {
        name: "in the cowl",
        heaters: [THERMOSTAT_IN_COWL],
        covers: ["insulated-cover"],
        switching: "local_network",
      },
    ],
    habits: [{ do: "clock", lead_h: LEAD / HOUR }],
  }),
);
if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
const read = reading;
const { installation, start, end, departures, unplugBefore, coverOffBefore } = read;
const { kit } = read.kits[0]!;
const { weather } = read.years[0]!;
const [heater] = kit.heaters;
const { limiter, power_w } = heater!.elements[0]!;

test.skipIf(python === undefined && process.env.CI === undefined)(
  "a winter month's heat, film and readiness against scipy",
  async () => {
    if (python === undefined) throw new Error("no python3 with scipy; it may not be skipped in CI");
    const exact = runPiece(read, { kit: 0, year: 0 }, { exact: { tolerance: 0.005 } })!;
    const usual = runPiece(read, { kit: 0, year: 0 })!;
    // All flights of the middle aircraft take place, so that every stretch on the ground begins as just shut down.
    expect(exact.habits[0]!.ready[0]).toBe(departures.length);
    const stretches = groundStretches();
    const samples = await integrateByScipy(python, stretches);
    const totals = totalsOf(stretches, samples);
    const near = (result: PieceResult, share: number, kelvins: number) => {
      const [one] = result.habits;
      expect(one!.ready[0]).toBe(totals.ready);
      expect(Math.abs(one!.energy[0]! / totals.energy - 1)).toBeLessThan(share);
      expect(Math.abs(one!.hottestFilm[0]! - totals.film)).toBeLessThan(kelvins);
      expect(Math.abs(one!.hottestSurface[0]! - totals.surface)).toBeLessThan(kelvins);
    };
    // What is left at tight tolerance is the trapezoid of the thermostat's first minutes, sampled alike.
    near(exact, 0.002, 0.1);
    near(usual, 0.01, 1);
  },
  600_000,
);

interface Stretch {
  readonly description: Description;
  readonly times: readonly number[];
  readonly on: number;
  readonly unplug: number;
}

function groundStretches(): Stretch[] {
  const { network, valuesIn } = installationNetwork(installation, kit);
  const forcing = createForcing(
    {
      ...{ installation, kit, weather, start, site: read.site, duration: end - start },
      initial: { configuration: configured(false, true), temps: new Map(), tempOthers: 260, sd: 0 },
      events: [],
    },
    centralDraws(weather),
  );
  const { nu40, nu100 } = GENERIC_OILS.find(({ id }) => id === installation.oil.oil_id)!;
  const known = new Map([false, true].map((on) => [on, configured(on, true)]));
  const bare = configured(false, false);
  return departures.map((departure, i) => {
    const from = i === 0 ? 0 : departures[i - 1]! + FLIGHT - start;
    const to = departure - start;
    const on = to - LEAD;
    const unplug = to - unplugBefore;
    const off = to - coverOffBefore;
    const edges = [from, ...forcing.knots.filter((t) => t > from && t < to), on, unplug, off, to];
    const grid = Array.from({ length: Math.ceil((to - from) / SAMPLE) }, (_, k) => from + k * SAMPLE);
    const times = [...new Set([...grid, on, unplug, off, to])].sort((a, b) => a - b);
    const air = weatherAt(weather, start + from).tempAir;
    const warm = shutDownTemps(installation, air);
    const initial = network.parts.map(({ name }) =>
      i === 0 ? weather.tempAir[0]! : ((warm as ReadonlyMap<string, number>).get(name) ?? air),
    );
    const description = describeProblem({
      name: `ground ${i}`,
      network,
      oil: { nu40, nu100 },
      valuesIn,
      writeInputs: forcing.write,
      configurationAt: (t: number) => (t >= off ? bare : known.get(t >= on && t < unplug)!),
      bounds: [...new Set(edges)].sort((a, b) => a - b),
      initial,
      sampleTimes: times,
    });
    return { description, times, on, unplug };
  });
}

function configured(on: boolean, covered: boolean) {
  return {
    place: "ramp" as const,
    heatersOn: new Set(on ? kit.heaters.map(({ id }) => id) : []),
    coversOn: new Set(covered ? kit.covers.map(({ id }) => id) : []),
  };
}

function totalsOf(stretches: readonly Stretch[], samples: readonly number[][][]) {
  const criteria = allCriteria(installation, kit, read.limits).filter(isGating);
  let energy = 0;
  let ready = 0;
  let film = 0;
  let surface = 0;
  stretches.forEach(({ description, times, on, unplug }, i) => {
    const parts = description.parts.map(({ name }) => name);
    const row = (name: string) => parts.indexOf(name);
    const sensed = limiter!.senses === "element" ? row("heater:in-cowl-400:heater") : row(limiter!.senses);
    const taken = (temps: readonly number[]) =>
      power_w / (1 + Math.exp((temps[sensed]! - (limiter!.set_c + 273.15)) / limiter!.width_k));
    times.forEach((t, s) => {
      const temps = samples[i]![s]!;
      if (s > 0 && times[s - 1]! >= on && t <= unplug)
        energy += 0.5 * (taken(samples[i]![s - 1]!) + taken(temps)) * (t - times[s - 1]!);
      if (t <= on || t > unplug) return;
      film = Math.max(film, temps[row("sump")]!);
      surface = Math.max(surface, temps[row("heater:in-cowl-400:heater")]!);
    });
    const value = new Float64Array(1);
    const state = { temps: Float64Array.from(samples[i]!.at(-1)!), parts, members: 1 };
    const holds = criteria.every((criterion) => {
      criterion.values(state, value);
      return marginOf(criterion, value[0]!) >= 0;
    });
    if (holds) ready++;
  });
  return { energy, ready, film, surface };
}

function integrateByScipy(command: string, stretches: readonly Stretch[]): Promise<number[][][]> {
  const script = fileURLToPath(new URL("integrate.py", import.meta.url));
  return new Promise((resolve, reject) => {
    const child = spawn(command, [script], { stdio: ["pipe", "pipe", "inherit"] });
    const out: Buffer[] = [];
    child.stdout.on("data", (chunk: Buffer) => out.push(chunk));
    child.on("error", reject);
    child.on("close", (code) => {
      if (code === 0) resolve(JSON.parse(Buffer.concat(out).toString()));
      else reject(new Error(`integrate.py ended with ${code}`));
    });
    child.stdin.end(JSON.stringify(stretches.map(({ description }) => description)));
  });
}
