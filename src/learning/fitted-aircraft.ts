import { lowerCholesky } from "../numerics/index.js";
import { configurationAt, type MultiplierPosterior, PRIOR, timelineOf } from "../simulation/index.js";
import type { AircraftFit } from "./fit-aircraft.js";
import type { TemperatureLog } from "./log.js";
import type { Sensor } from "./sensor.js";

/** What logs taught of one aircraft, with the evidence. Leaving it out anywhere goes back to the catalogue's aircraft. */
export interface FittedAircraft {
  readonly version: 1;
  /** Id of the installation that the multipliers multiply. */
  readonly base: string;
  readonly multipliers: MultiplierPosterior;
  /** Oldest first. */
  readonly evidence: readonly Evidence[];
}

/** One log that an aircraft was fitted on. */
interface Evidence {
  /** Name of the other aircraft of the base that it was logged on; its own where left out. */
  readonly of?: string;
  readonly origin: string;
  /** Of times, probes and readings, so that the same log is known again. */
  readonly hash: string;
  /** Readings used. */
  readonly readings: number;
  /** [s] since 1970-01-01T00:00Z of the first and last of them. */
  readonly from: number;
  readonly to: number;
  readonly heaters: readonly string[];
  /** How the aircraft stood while readings were taken. */
  readonly settings: readonly ThermalSetting[];
  /** What the probes turned out to be, for as long as they stay where they are. */
  readonly probes: readonly Sensor[];
}

export interface ThermalSetting {
  readonly place: "ramp" | "hangar";
  /** Ids, sorted. */
  readonly covers: readonly string[];
}

/** A fit as a value to keep. `earlier` is the aircraft whose posterior the fit took up. */
export function fittedAircraft(
  fit: AircraftFit,
  log: TemperatureLog,
  earlier?: FittedAircraft,
): FittedAircraft {
  const { scenario, data, posterior } = fit;
  const base = scenario.installation.id;
  if (earlier !== undefined && earlier.base !== base) {
    throw new RangeError(`invalid earlier: fitted on ${earlier.base} (expected ${base})`);
  }
  const hash = hashOf(log);
  const again = earlier?.evidence.find((evidence) => evidence.hash === hash);
  if (again !== undefined) {
    throw new RangeError(`duplicate log: ${log.origin} (already fitted as ${again.origin})`);
  }
  const timeline = timelineOf(scenario.initial.configuration, scenario.events);
  const configurations = new Set(Array.from(data.time, (t) => configurationAt(timeline, t)));
  const settings = new Map<string, ThermalSetting>();
  for (const { place, coversOn } of configurations) {
    const setting = { place, covers: [...coversOn].sort() };
    settings.set(JSON.stringify(setting), setting);
  }
  const evidence: Evidence = {
    ...{ origin: log.origin, hash },
    readings: data.probes.reduce((sum, { rows }) => sum + rows.length, 0),
    from: scenario.start + data.time[0],
    to: scenario.start + data.time[data.time.length - 1],
    heaters: [...new Set([...configurations].flatMap(({ heatersOn }) => [...heatersOn]))].sort(),
    settings: [...settings.values()],
    probes: learnedSensors(fit),
  };
  return { version: 1, base, multipliers: posterior, evidence: [...(earlier?.evidence ?? []), evidence] };
}

/**
 * The probes with offsets, lags and noise as a fit found them.
 * @internal
 */
export function learnedSensors({ unknowns, z, covariance, scales }: AircraftFit): Sensor[] {
  const { list, physical, sensors } = unknowns;
  const sdLeft = (j: number) => list[j].priorSd * Math.sqrt(covariance[j * z.length + j]);
  return sensors.map((sensor, p) => ({
    ...sensor,
    ...unknowns.sensorAt(z, p),
    noise: sensor.noise * scales.noise[p],
    offsetSd: sdLeft(physical + p),
    lagLogSd: sdLeft(physical + sensors.length + p),
  }));
}

/** Probes as the newest log with a probe of the same name at the same place taught them; new ones as they are given. */
export function sensorsAsLearned(sensors: readonly Sensor[], { evidence }: FittedAircraft): Sensor[] {
  const isSame = (a: Sensor, b: Sensor) =>
    a.name === b.name && JSON.stringify(a.place) === JSON.stringify(b.place);
  return sensors.map(
    (sensor) => evidence.flatMap(({ probes }) => probes).findLast((probe) => isSame(probe, sensor)) ?? sensor,
  );
}

/**
 * What was learned with the live estimate's multipliers in place of those that logs taught: for plans that begin where the
 * estimate stands. Where covers or place changed on the way, losses count as unknown.
 */
export function learnedLive(
  base: string,
  multipliers: MultiplierPosterior,
  evidence: Omit<Evidence, "hash" | "probes">,
  before: FittedAircraft | undefined,
): FittedAircraft {
  const { settings } = evidence;
  const isOneSetting = settings.length === 1;
  return {
    version: 1,
    base,
    multipliers: isOneSetting ? multipliers : withPriors(multipliers, OF_SETTING),
    evidence: [...(before?.evidence ?? []), { ...evidence, hash: LIVE, probes: [] }],
  };
}

/** Marks what was learned live: it is no log that could be brought again. */
const LIVE = "live";

/** What describes covers and surroundings more than the aircraft, and what describes the heater. */
const OF_SETTING = ["cowl_skin_loss", "ventilation"];
const OF_HEATER = ["heater_contact", "heater_power"];

/**
 * What was learned as far as it holds for a use: how the aircraft stands while it is heated, and with which heaters.
 * Losses learned under other covers or at another place, and contacts of other heaters, go back to their priors.
 */
export function posteriorFor(
  { multipliers, evidence }: FittedAircraft,
  use: { readonly setting: ThermalSetting; readonly heaters: readonly string[] },
): MultiplierPosterior {
  const covers = [...use.setting.covers].sort().join();
  const isKnownSetting = evidence.some(({ settings }) =>
    settings.some((s) => s.place === use.setting.place && s.covers.join() === covers),
  );
  const areKnownHeaters = use.heaters.every((id) => evidence.some(({ heaters }) => heaters.includes(id)));
  return withPriors(multipliers, [
    ...(isKnownSetting ? [] : OF_SETTING),
    ...(areKnownHeaters ? [] : OF_HEATER),
  ]);
}

/**
 * The posterior with some parameters set back to their priors, free of all others.
 * @internal
 */
export function withPriors(posterior: MultiplierPosterior, reset: readonly string[]): MultiplierPosterior {
  const { names, mean, factor } = posterior;
  const back = names.map((name) => reset.includes(name));
  if (!back.includes(true)) return posterior;
  const n = names.length;
  const covariance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (back[i] || back[j]) continue;
      for (let k = 0; k < n; k++) covariance[i * n + j] += factor[i][k] * factor[j][k];
    }
    if (back[i]) covariance[i * n + i] = priorOf(names[i]).sd ** 2;
  }
  const root = lowerCholesky(covariance, n);
  return {
    names,
    mean: mean.map((m, i) => (back[i] ? priorOf(names[i]).mean : m)),
    factor: names.map((_, i) => Array.from(root.subarray(i * n, (i + 1) * n))),
  };
}

/** Mean and standard deviation of ln(multiplier) before anything is known of an aircraft. */
export function priorOf(name: string): { readonly mean: number; readonly sd: number } {
  const index = PRIOR.names.indexOf(name);
  if (index < 0) throw new RangeError(`unknown parameter: ${name}`);
  return { mean: PRIOR.mean[index], sd: Math.hypot(...PRIOR.factor[index]) };
}

/** Hash of a log's times, probes and readings: two FNV-1a sums of 32 bits with different starts, as 16 hex digits. */
export function hashOf(log: TemperatureLog): string {
  let a = 0x811c9dc5;
  let b = 0x84222325;
  const add = (text: string) => {
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      a = Math.imul(a ^ code, 0x01000193);
      b = Math.imul(b ^ (code + i), 0x01000193);
    }
  };
  for (const { name, place, temps } of log.probes) {
    add(`${name}\n${typeof place === "object" ? place.part : place}\n`);
    for (let k = 0; k < temps.length; k++) add(`${log.time[k]} ${temps[k]}\n`);
  }
  return [a, b].map((sum) => (sum >>> 0).toString(16).padStart(8, "0")).join("");
}
