import type { PartName } from "../aircraft/index.js";
import {
  GAS_CONSTANT_VAPOUR,
  isWetIso9223,
  RELATIVE_HUMIDITY_WET,
  saturationPressureOverIce,
  saturationPressureOverLiquid,
  saturationPressureOverStablePhase,
  vapourPressureFromDewPoint,
} from "../properties/index.js";
import { KELVIN_OF_ZERO_CELSIUS } from "../units/index.js";
import type { CaseGeometry } from "./case-geometry.js";
import { oilConductance, wallConductance, waterActivityOil } from "./case-vapour.js";
import { type Exchange, settle } from "./vapour-step.js";

/** [K] end of the tables of water's vapour pressure; a wall beside a hot pad can pass it, long after it has dried. */
const HOTTEST = 473.15;

/** Temperatures over time: a simulated trajectory, or logged ones. */
export interface PartCourse {
  /** [s] ascending */
  readonly time: ArrayLike<number>;
  readonly parts: readonly string[];
  readonly members: number;
  /** [K] sample s, part i, member m at `[(s * parts + i) * members + m]` */
  readonly temps: ArrayLike<number>;
}

/** Air outside at the times of the course. */
export interface OutsideAir {
  /** [K] */
  readonly tempAir: ArrayLike<number>;
  /** [K] over liquid, as METAR has it. */
  readonly tempDewPoint: ArrayLike<number>;
}

/** [kg] of water in the case at the beginning. */
export interface CaseWater {
  readonly inOil: number;
  readonly onSurfaces: number;
}

/** What happened to the water in the case. Arrays have one value for each sample of the course. */
export interface CaseMoisture {
  /** [Pa] vapour in the case's air. */
  readonly vapourPressure: Float64Array;
  /** [kg] */
  readonly inOil: Float64Array;
  /** [kg] liquid or frost on each wall. */
  readonly onSurface: ReadonlyMap<PartName, Float64Array>;
  /**
   * [s] so far that each wall was wet or frosted: water or frost on it, or more than 80 % relative humidity at its own
   * temperature, below 0 °C over ice.
   */
  readonly wetTime: ReadonlyMap<PartName, Float64Array>;
  /** [s] so far of those at or below 0 °C. */
  readonly frostTime: ReadonlyMap<PartName, Float64Array>;
  /** [s] of the wall that was wet or frosted longest, and the part of it at or below 0 °C. */
  readonly wetTimeMost: number;
  readonly frostTimeMost: number;
  /** [kg] most that lay on all walls together at any time. */
  readonly condensedMost: number;
  /** [kg] net through the breather to the outside. */
  readonly vented: number;
  /** [kg] at most frozen in the breather: vapour above what air below 0 °C can carry away. */
  readonly breatherFrost: number;
}

/** What the wet hours can tell and what not. */
export const WET_TIME_LIMITS =
  "ISO 9223 counts hours above 80 % humidity and 0 °C for open-air sheet; frost counts here too, for it becomes water at the " +
  "start. Inside a case, under oil films and acid traces, the count only ranks one habit against another. Areas, breather and " +
  "oil are estimates: take the water as good to a factor of three.";

/** [kg/kg] water in oil after short winter flights, mostly emulsion; makers' texts say 150 °F leaves it in; project judgement. */
export const WATER_IN_OIL_WINTER = 1000e-6;

/** [K] above it no wall is wet. */
const TEMP_BOILING = 373.15;
/** [s] longest step of the balance. */
const STEP = 60;

/**
 * Vapour balance of the case's air between oil, walls and breather along a course of temperatures:
 * C dp/dt = k_oil (a p_sat(T_oil) - p) + sum k_i (p_sat(T_i) - p) + C (1/tau + inhaled) (p_out - p), C = V/(R_v T). A wall
 * takes part while water lies on it or while the air is above its saturation. Solved exactly over steps of a minute with
 * temperatures held; no water appears or gets lost.
 * @param member of the course
 * @param longestStep [s] of the balance; longer ones are quicker and coarser
 */
export function caseMoisture(
  geometry: CaseGeometry,
  course: PartCourse,
  outside: OutsideAir,
  start: CaseWater,
  member = 0,
  longestStep = STEP,
): CaseMoisture {
  check(course, outside, start);
  const { time } = course;
  const samples = time.length;
  const walls = geometry.surfaces.map(({ part, area }) => ({
    part,
    area,
    row: rowOf(course, part),
    water: (start.onSurfaces * area) / geometry.surfaces.reduce((sum, s) => sum + s.area, 0),
    wet: 0,
    frosted: 0,
    onSurface: new Float64Array(samples),
    wetTime: new Float64Array(samples),
    frostTime: new Float64Array(samples),
  }));
  const oilRow = rowOf(course, "oil");
  const vapourPressure = new Float64Array(samples);
  const inOil = new Float64Array(samples);
  let water = start.inOil;
  let pressure = vapourPressureFromDewPoint(outside.tempDewPoint[0]!);
  let condensedMost = start.onSurfaces;
  let vented = 0;
  let breatherFrost = 0;
  let tempCase = meanTemp(0, 0);
  let capacity = geometry.airVolume / (GAS_CONSTANT_VAPOUR * tempCase);
  record(0);

  for (let s = 1; s < samples; s++) {
    const width = time[s]! - time[s - 1]!;
    const steps = Math.max(1, Math.ceil(width / longestStep));
    for (let k = 0; k < steps; k++) advance(s - 1, (k + 0.5) / steps, width / steps);
    record(s);
  }
  const wettest = walls.reduce((most, wall) => (wall.wet > most.wet ? wall : most));
  return {
    vapourPressure,
    inOil,
    onSurface: new Map(walls.map((wall) => [wall.part, wall.onSurface])),
    wetTime: new Map(walls.map((wall) => [wall.part, wall.wetTime])),
    frostTime: new Map(walls.map((wall) => [wall.part, wall.frostTime])),
    wetTimeMost: wettest.wet,
    frostTimeMost: wettest.frosted,
    condensedMost,
    vented,
    breatherFrost,
  };

  function advance(s: number, w: number, dt: number): void {
    const temp = meanTemp(s, w);
    // The air that expansion pushes out and contraction draws in.
    const changed = geometry.airVolume / (GAS_CONSTANT_VAPOUR * temp);
    vented += (capacity - changed) * pressure;
    const inhaled = Math.max(0, tempCase / temp - 1) / dt;
    capacity = changed;
    tempCase = temp;

    const out = vapourPressureFromDewPoint(between(outside.tempDewPoint, s, w));
    const airing = capacity * (1 / geometry.breatherTime + inhaled);
    const tempOil = tempAt(oilRow, s, w);
    const overOil = saturationPressureOverLiquid(tempOil);
    const tempWalls = walls.map(({ row }) => tempAt(row, s, w));
    const exchanges: Exchange[] = [
      { conductance: airing, pressure: out, available: Number.POSITIVE_INFINITY, open: true },
      {
        conductance: oilConductance(geometry, tempOil, overOil, temp),
        pressure: waterActivityOil(water / geometry.oilMass, tempOil) * overOil,
        available: water,
        open: true,
      },
      ...walls.map((wall, i) => {
        const saturated = saturationPressureOverStablePhase(tempWalls[i]!);
        return {
          conductance: wallConductance(wall.area, temp),
          pressure: saturated,
          available: wall.water,
          open: wall.water > 0 || pressure > saturated,
        };
      }),
    ];
    const step = settle(pressure, capacity, exchanges, dt);
    pressure = step.end;
    vented -= step.given[0]!;
    water -= step.given[1]!;
    walls.forEach((wall, i) => {
      wall.water = Math.max(0, wall.water - step.given[i + 2]!);
      const tempWall = tempWalls[i]!;
      const humidity = Math.min(1, step.mean / exchanges[i + 2]!.pressure);
      if (wall.water === 0 && !isHumid(tempWall, humidity)) return;
      wall.wet += dt;
      if (tempWall <= KELVIN_OF_ZERO_CELSIUS) wall.frosted += dt;
    });
    const air = between(outside.tempAir, s, w);
    if (air < KELVIN_OF_ZERO_CELSIUS) {
      breatherFrost += airing * Math.max(0, step.mean - saturationPressureOverIce(air)) * dt;
    }
    condensedMost = Math.max(
      condensedMost,
      walls.reduce((sum, wall) => sum + wall.water, 0),
    );
  }

  function record(s: number): void {
    vapourPressure[s] = pressure;
    inOil[s] = water;
    for (const wall of walls) {
      wall.onSurface[s] = wall.water;
      wall.wetTime[s] = wall.wet;
      wall.frostTime[s] = wall.frosted;
    }
  }

  /** [K] of the case's air: the mean of its walls. */
  function meanTemp(s: number, w: number): number {
    let sum = 0;
    for (const { row } of walls) sum += tempAt(row, s, w);
    return sum / walls.length;
  }

  function tempAt(row: number, s: number, w: number): number {
    const { parts, members, temps } = course;
    const at = (s * parts.length + row) * members + member;
    const temp = w === 0 ? temps[at]! : (1 - w) * temps[at]! + w * temps[at + parts.length * members]!;
    return Math.min(temp, HOTTEST);
  }
}

/** ISO 9223's threshold, carried on below 0 °C over ice: else a colder night would look drier for being colder. */
function isHumid(tempWall: number, humidity: number): boolean {
  if (tempWall <= KELVIN_OF_ZERO_CELSIUS) return humidity > RELATIVE_HUMIDITY_WET;
  return isWetIso9223(Math.min(tempWall, TEMP_BOILING), humidity, "above");
}

function between(values: ArrayLike<number>, s: number, w: number): number {
  return (1 - w) * values[s]! + w * values[s + 1]!;
}

function rowOf({ parts }: PartCourse, part: string): number {
  const row = parts.indexOf(part);
  if (row < 0) throw new RangeError(`missing part: ${part} (expected among ${parts.join(", ")})`);
  return row;
}

function check({ time }: PartCourse, { tempAir, tempDewPoint }: OutsideAir, start: CaseWater): void {
  for (const [name, values] of [
    ["tempAir", tempAir],
    ["tempDewPoint", tempDewPoint],
  ] as const) {
    if (values.length !== time.length) {
      throw new RangeError(`invalid ${name}: ${values.length} values (expected ${time.length})`);
    }
  }
  for (let s = 0; s < time.length; s++) {
    if (s > 0 && !(time[s]! > time[s - 1]!)) {
      throw new RangeError(`invalid time: ${time[s]} s (expected more than ${time[s - 1]})`);
    }
    if (!(tempDewPoint[s]! <= tempAir[s]!)) {
      throw new RangeError(
        `invalid tempDewPoint: ${tempDewPoint[s]} (expected at most tempAir, ${tempAir[s]} K)`,
      );
    }
  }
  for (const name of ["inOil", "onSurfaces"] as const) {
    if (!(start[name] >= 0 && start[name] < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`invalid ${name}: ${start[name]} (expected 0 kg or more)`);
    }
  }
}
