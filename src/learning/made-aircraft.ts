import { createRandom } from "../numerics/index.js";
import { createForcing, drawEnsemble, PRIOR, type Scenario, timelineOf } from "../simulation/index.js";
import { createBatch } from "./fit-members.js";
import { partOf } from "./fit-unknowns.js";
import type { TemperatureLog } from "./log.js";
import { followed, reachOf, type Sensor } from "./sensor.js";

/**
 * Invented aircraft whose truth is known, to prove the learning on. They are no mere draws of the model's parameters:
 * every single link and store also differs from its group, which the model cannot follow.
 */
export interface MadeFleet {
  readonly count: number;
  readonly seed: number;
  /** True multiplier of each parameter, per aircraft. */
  readonly multipliers: ReadonlyMap<string, Float64Array>;
  /** Further factors of every link and store, [row][aircraft]. */
  readonly linkFactors: Float64Array;
  readonly capacityFactors: Float64Array;
}

/** Standard deviation of the logarithm of what a single link or store differs from its group; project judgement. */
const STRUCTURE_LOG_SD = 0.15;
/** [K] by which each part of a parked aircraft may start off the common temperature; project judgement. */
const PART_SD = 0.7;

/**
 * Aircraft with parameters drawn from their priors; the scenario says of which installation and kit.
 */
export function madeFleet(
  scenario: Scenario,
  count: number,
  seed: number,
  structureLogSd = STRUCTURE_LOG_SD,
): MadeFleet {
  const { network } = createBatch({ scenario });
  const random = createRandom(seed).stream("fleet");
  const logNormals = (length: number, logSd: number) =>
    Float64Array.from({ length }, () => Math.exp(logSd * random.normal()));
  return {
    count,
    seed,
    multipliers: new Map(
      PRIOR.names.map((name, i) => {
        const sd = Math.hypot(...PRIOR.factor[i]);
        return [name, logNormals(count, sd).map((factor) => Math.exp(PRIOR.mean[i]) * factor)];
      }),
    ),
    linkFactors: logNormals(network.links.length * count, structureLogSd),
    capacityFactors: logNormals(network.parts.length * count, structureLogSd / 3),
  };
}

/** What truly happened to every aircraft of a fleet in one night. */
export interface MadeNight {
  /** [s] since the scenario's start. */
  readonly time: Float64Array;
  readonly parts: readonly string[];
  /** [K] sample s, part i, aircraft a at `[(s * parts + i) * count + a]`. */
  readonly temps: Float64Array;
  /** [K] outside air, `[s * count + a]`. */
  readonly air: Float64Array;
  readonly scenario: Scenario;
}

/**
 * A night as it was: the weather differs from the scenario's by that weather's own error, the start by the initial sd,
 * and the hangar is a kelvin off.
 */
export function madeNight(
  fleet: MadeFleet,
  scenario: Scenario,
  sampleTimes: ArrayLike<number>,
  seed: number,
): MadeNight {
  const { count } = fleet;
  const draws = drawEnsemble({ members: count, seed, weather: scenario.weather });
  const forcing = createForcing(scenario, draws);
  const batch = createBatch({ scenario, forcing: { forcing, members: count } });
  const random = createRandom(seed).stream("night");
  const { initial } = scenario;
  const state = new Float64Array(batch.parts.length * count);
  batch.parts.forEach((part, i) => {
    const central = initial.temps.get(part) ?? initial.tempOthers;
    for (let a = 0; a < count; a++) {
      state[i * count + a] = central + initial.sd * draws.initialOffset[a] + PART_SD * random.normal();
    }
  });
  const time = Float64Array.from(sampleTimes);
  const isIndoors = initial.configuration.place === "hangar";
  const result = batch.advance({
    members: count,
    ...{
      multipliers: fleet.multipliers,
      linkFactors: fleet.linkFactors,
      capacityFactors: fleet.capacityFactors,
    },
    airBias: Float64Array.from({ length: count }, () => (isIndoors ? random.normal() : 0)),
    timelines: [timelineOf(initial.configuration, scenario.events)],
    ...{ state, from: 0, to: time[time.length - 1], sampleTimes: time, tolerance: 0.01 },
  });
  if (result.status !== "completed") throw new Error(`${result.status}: ${result.remedy}`);
  const air = Float64Array.from({ length: time.length * count }, (_, k) =>
    forcing.tempAirAt(time[Math.floor(k / count)], k % count),
  );
  return { time, parts: batch.parts, temps: result.samples, air, scenario };
}

/**
 * True temperatures [K] of one part of one aircraft at the night's times.
 */
export function trueTemps(
  { time, parts, temps }: MadeNight,
  count: number,
  a: number,
  part: string,
): Float64Array {
  const reach = reachOf(part, parts);
  return time.map((_, s) =>
    reach.reduce((sum, row) => sum + temps[(s * parts.length + row) * count + a] / reach.length, 0),
  );
}

/**
 * The log that an aircraft's probes would have kept of a night, with lag, offset, noise and rounding to 0.1 K.
 */
export function madeLog(
  fleet: MadeFleet,
  night: MadeNight,
  a: number,
  sensors: readonly Sensor[],
): TemperatureLog {
  const random = createRandom(fleet.seed).stream(`log ${a}`);
  const probes = sensors.map((sensor) => {
    const offset = sensor.offset + sensor.offsetSd * random.normal();
    const lag = sensor.lag * Math.exp(sensor.lagLogSd * random.normal());
    const felt =
      sensor.place === "outside-air"
        ? night.time.map((_, s) => night.air[s * fleet.count + a])
        : trueTemps(night, fleet.count, a, partOf(sensor.place));
    const temps = followed(night.time, felt, lag).map(
      (temp) => Math.round((temp + offset + sensor.noise * random.normal()) * 10) / 10,
    );
    return { name: sensor.name, place: sensor.place, temps };
  });
  return {
    time: night.time.map((t) => t + night.scenario.start),
    probes,
    findings: [],
    origin: `made aircraft ${a} of seed ${fleet.seed}`,
  };
}
