import {
  densityAir,
  GAS_CONSTANT_VAPOUR,
  heatCapacityAir,
  vapourPressureFromDewPoint,
} from "../properties/index.js";
import type { FilmConditions } from "./air-film.js";
import { vapourPerHeatTransfer } from "./evaporation.js";
import type { Hangar, OutsideAir } from "./hangar.js";
import { saturationPressureAtSurface } from "./saturation.js";
import { LATENT_HEAT_VAPORISATION } from "./wet-layer.js";

/** Rows of the hangar's state after `first`. */
export const HANGAR_ROW = {
  /** [K] */
  tempAir: 0,
  tempShell: 1,
  /** [kg] in the air, on the floor, run down cold surfaces, brought in by air change and burner, swept out. */
  vapour: 2,
  puddle: 3,
  condensed: 4,
  broughtIn: 5,
  swept: 6,
  /** [J] from the heater. */
  heat: 7,
} as const;
const HANGAR_ROWS = 8;
/** Rows that nothing depends on. */
export const HANGAR_SUMS = [HANGAR_ROW.condensed, HANGAR_ROW.broughtIn, HANGAR_ROW.swept, HANGAR_ROW.heat];

/** [m/s] draughts in a closed hangar. Project judgement. */
const DRAUGHT = 0.1;
/** [W/(m2 K)] air to inner surfaces, mean of ISO 6946 for walls, roof and floor (2.5, 5 and 0.7, from memory). */
const INNER_COEFFICIENT = 3;
/** [K] below the setting at which the heater gives all it has. */
const THERMOSTAT_BAND = 1;
/** [kg/m2] of puddle below which its area shrinks. Project judgement. */
const THIN_PUDDLE = 0.05;

/** What the aircraft gives the hangar at one moment. */
export interface AircraftToHangar {
  /** [W] convection and radiation from aircraft to air and to shell (negative while it is cold). */
  readonly convection: number;
  readonly radiation: number;
  /** [kg/s] vapour off the aircraft, water off it. */
  readonly vapour: number;
  readonly runOff: number;
}

export interface HangarModel {
  /** [m/s] over the aircraft. */
  readonly airSpeed: number;
  /** Rows at the start; `relativeHumidity` [0..1], or the outside's moisture when undefined. */
  initial(relativeHumidity: number | undefined): Float64Array;
  /** [Pa] vapour pressure in the air of this state. */
  pressureVapour(y: ArrayLike<number>, first: number): number;
  writeRates(y: Float64Array, first: number, aircraft: AircraftToHangar, dydt: Float64Array): void;
}

export interface HangarSettings {
  readonly hangar: Hangar;
  readonly outside: OutsideAir;
  /** [m2] of floor that catches the melt water. */
  readonly puddleArea: number;
  readonly airChangeFactor: number;
  readonly conditions: FilmConditions;
  readonly evaporation: (convection: number, windSpeed: number) => number;
}

/** [-] more than the loss in the middle case: cold aircraft, draughty cases. Project judgement. */
const HEAT_RESERVE = 1.3;

/** [W] that holds `hangar` at `temp` [K] in air `outside` of `pressure` [Pa], with a reserve: shell and air change. */
export function powerToHold(hangar: Hangar, outside: OutsideAir, temp: number, pressure: number): number {
  const inner = INNER_COEFFICIENT * hangar.innerArea;
  const shell = (inner * hangar.conductance) / (inner + hangar.conductance);
  const air = hangar.airChangeRate * hangar.volume * densityAir(temp, pressure) * heatCapacityAir(temp);
  return HEAT_RESERVE * (shell + air) * Math.max(0, temp - outside.tempAir);
}

export function hangarModel(settings: HangarSettings): HangarModel {
  const { hangar, outside, puddleArea, airChangeFactor, conditions, evaporation } = settings;
  const heatCapacityAirPart =
    hangar.volume *
    densityAir(conditions.tempFilm, conditions.pressure) *
    heatCapacityAir(conditions.tempFilm);
  const airChange = hangar.airChangeRate * airChangeFactor;
  const airSpeed = Math.max(DRAUGHT, hangar.fanSpeed);
  const inner = INNER_COEFFICIENT * hangar.innerArea;
  const fromPuddle = evaporation(INNER_COEFFICIENT, airSpeed);
  const ontoCold = vapourPerHeatTransfer(conditions) * INNER_COEFFICIENT * hangar.coldArea;
  const pressureOutside = vapourPressureFromDewPoint(outside.tempDewPoint);
  const row = HANGAR_ROW;
  const pressureVapour = (y: ArrayLike<number>, first: number) =>
    (y[first + row.vapour] * GAS_CONSTANT_VAPOUR * y[first + row.tempAir]) / hangar.volume;
  const vapourAt = (pressure: number, temp: number) =>
    (pressure * hangar.volume) / (GAS_CONSTANT_VAPOUR * temp);

  return {
    airSpeed,
    pressureVapour,
    initial(relativeHumidity) {
      const { tempSet, conductance, heaterPower } = hangar;
      const pressure =
        relativeHumidity === undefined
          ? Math.min(pressureOutside, saturationPressureAtSurface(tempSet))
          : relativeHumidity * saturationPressureAtSurface(tempSet);
      const y = new Float64Array(HANGAR_ROWS);
      y[row.tempAir] = tempSet;
      y[row.tempShell] =
        heaterPower > 0 ? (inner * tempSet + conductance * outside.tempAir) / (inner + conductance) : tempSet;
      y[row.vapour] = vapourAt(pressure, tempSet);
      return y;
    },
    writeRates(y, first, aircraft, dydt) {
      const tempAir = y[first + row.tempAir];
      const tempShell = y[first + row.tempShell];
      const puddle = Math.max(0, y[first + row.puddle]);
      const pressure = pressureVapour(y, first);

      const call = (hangar.tempSet - tempAir) / THERMOSTAT_BAND + 0.5;
      const power = hangar.heaterPower * Math.min(1, Math.max(0, call));
      const toShell = inner * (tempAir - tempShell);
      const change = airChange * heatCapacityAirPart * (outside.tempAir - tempAir);

      const area = (puddleArea * puddle) / (puddle + THIN_PUDDLE * puddleArea);
      const drying = fromPuddle * (saturationPressureAtSurface(tempShell) - pressure);
      const puddleVapour = drying > 0 ? drying * area : 0;
      const tempCold = outside.tempAir + hangar.coldFactor * (tempAir - outside.tempAir);
      const condensing = ontoCold * Math.max(0, pressure - saturationPressureAtSurface(tempCold));
      // Air that comes in keeps its share of vapour; inside it is warmer and so less dense.
      const exchanged = airChange * (vapourAt(pressureOutside, tempAir) - y[first + row.vapour]);
      const burnt = hangar.heaterVapour * power;
      const toSweep = hangar.floorSwept ? 1 : 0;

      dydt[first + row.tempAir] = (power - toShell + change + aircraft.convection) / heatCapacityAirPart;
      dydt[first + row.tempShell] =
        (toShell +
          hangar.conductance * (outside.tempAir - tempShell) +
          aircraft.radiation +
          LATENT_HEAT_VAPORISATION * (condensing - puddleVapour)) /
        hangar.heatCapacity;
      dydt[first + row.vapour] = aircraft.vapour + puddleVapour - condensing + exchanged + burnt;
      dydt[first + row.puddle] = (1 - toSweep) * aircraft.runOff - puddleVapour;
      dydt[first + row.condensed] = condensing;
      dydt[first + row.broughtIn] = exchanged + burnt;
      dydt[first + row.swept] = toSweep * aircraft.runOff;
      dydt[first + row.heat] = power;
    },
  };
}
