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
/** [K] above it no wall is wet. */
const TEMP_BOILING = 373.15;

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

/** A wall of the case under way, and what was written down of it at each sample. */
interface Wall {
  readonly part: PartName;
  /** [m2] */
  readonly area: number;
  readonly row: number;
  /** [kg] */
  water: number;
  /** [s] */
  wet: number;
  frosted: number;
  readonly onSurface: Float64Array;
  readonly wetTime: Float64Array;
  readonly frostTime: Float64Array;
}

/** The water in a case between oil, air, walls and breather, as it goes on along a course. */
export class CaseBalance {
  private readonly walls: readonly Wall[];
  private readonly oilRow: number;
  private readonly vapourPressure: Float64Array;
  private readonly inOil: Float64Array;
  private water: number;
  private pressure: number;
  private condensedMost: number;
  private vented = 0;
  private breatherFrost = 0;
  private tempCase: number;
  /** [kg/Pa] of the case's air. */
  private capacity: number;

  constructor(
    private readonly geometry: CaseGeometry,
    private readonly course: PartCourse,
    private readonly outside: OutsideAir,
    start: CaseWater,
    private readonly member: number,
  ) {
    const samples = course.time.length;
    this.walls = geometry.surfaces.map(({ part, area }) => ({
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
    this.oilRow = rowOf(course, "oil");
    this.vapourPressure = new Float64Array(samples);
    this.inOil = new Float64Array(samples);
    this.water = start.inOil;
    this.pressure = vapourPressureFromDewPoint(outside.tempDewPoint[0]!);
    this.condensedMost = start.onSurfaces;
    this.tempCase = this.meanTemp(0, 0);
    this.capacity = geometry.airVolume / (GAS_CONSTANT_VAPOUR * this.tempCase);
    this.record(0);
  }

  /** Goes on by `dt` [s] with what is held at the share `w` of the way from sample s to the next. */
  advance(s: number, w: number, dt: number): void {
    const temp = this.meanTemp(s, w);
    const airing = this.breathe(temp, dt);
    const tempWalls = this.walls.map(({ row }) => this.tempAt(row, s, w));
    const exchanges = this.exchanges(airing, temp, tempWalls, s, w);
    const step = settle(this.pressure, this.capacity, exchanges, dt);
    this.pressure = step.end;
    this.vented -= step.given[0]!;
    this.water -= step.given[1]!;
    this.walls.forEach((wall, i) => {
      wall.water = Math.max(0, wall.water - step.given[i + 2]!);
      countWet(wall, tempWalls[i]!, Math.min(1, step.mean / exchanges[i + 2]!.pressure), dt);
    });
    const air = between(this.outside.tempAir, s, w);
    if (air < KELVIN_OF_ZERO_CELSIUS) {
      this.breatherFrost += airing * Math.max(0, step.mean - saturationPressureOverIce(air)) * dt;
    }
    this.condensedMost = Math.max(
      this.condensedMost,
      this.walls.reduce((sum, wall) => sum + wall.water, 0),
    );
  }

  /** Writes down how it stands at a sample. */
  record(s: number): void {
    this.vapourPressure[s] = this.pressure;
    this.inOil[s] = this.water;
    for (const wall of this.walls) {
      wall.onSurface[s] = wall.water;
      wall.wetTime[s] = wall.wet;
      wall.frostTime[s] = wall.frosted;
    }
  }

  outcome(): CaseMoisture {
    const { walls, vapourPressure, inOil, condensedMost, vented, breatherFrost } = this;
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
  }

  /** Lets expansion push air out and contraction draw it in. Returns how the case airs [kg/(s Pa)]. */
  private breathe(temp: number, dt: number): number {
    const { airVolume, breatherTime } = this.geometry;
    const changed = airVolume / (GAS_CONSTANT_VAPOUR * temp);
    this.vented += (this.capacity - changed) * this.pressure;
    const inhaled = Math.max(0, this.tempCase / temp - 1) / dt;
    this.capacity = changed;
    this.tempCase = temp;
    return changed * (1 / breatherTime + inhaled);
  }

  /** Of the case's air with the air outside, with the oil, and with each wall. */
  private exchanges(
    airing: number,
    temp: number,
    tempWalls: readonly number[],
    s: number,
    w: number,
  ): Exchange[] {
    const { geometry, outside, pressure, water, walls } = this;
    const tempOil = this.tempAt(this.oilRow, s, w);
    const overOil = saturationPressureOverLiquid(tempOil);
    return [
      {
        conductance: airing,
        pressure: vapourPressureFromDewPoint(between(outside.tempDewPoint, s, w)),
        available: Number.POSITIVE_INFINITY,
        open: true,
      },
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
  }

  /** [K] of the case's air: the mean of its walls. */
  private meanTemp(s: number, w: number): number {
    let sum = 0;
    for (const { row } of this.walls) sum += this.tempAt(row, s, w);
    return sum / this.walls.length;
  }

  private tempAt(row: number, s: number, w: number): number {
    const { parts, members, temps } = this.course;
    const at = (s * parts.length + row) * members + this.member;
    const temp = w === 0 ? temps[at]! : (1 - w) * temps[at]! + w * temps[at + parts.length * members]!;
    return Math.min(temp, HOTTEST);
  }
}

/** Counts a step in which a wall carries water or its air is humid. */
function countWet(wall: Wall, temp: number, humidity: number, dt: number): void {
  if (wall.water === 0 && !isHumid(temp, humidity)) return;
  wall.wet += dt;
  if (temp <= KELVIN_OF_ZERO_CELSIUS) wall.frosted += dt;
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
