import { requireInside } from "../units/index.js";
import { requireMoistAir } from "./argument.js";

/** A closed hangar as one well-mixed volume of air in a shell that stores heat. */
export interface Hangar {
  /** [m3] and [m2] of walls, roof and floor together. */
  readonly volume: number;
  readonly innerArea: number;
  /** [1/s] air changed with the outside. */
  readonly airChangeRate: number;
  /** [W/K] from the shell to the outside. */
  readonly conductance: number;
  /** [J/K] of floor and shell that follows within hours. */
  readonly heatCapacity: number;
  /** [K] and [W]: thermostat and largest heat; 0 W is an unheated hangar that starts at `tempSet`. */
  readonly tempSet: number;
  readonly heaterPower: number;
  /** [kg/J] water that the heater puts into the air: 0, or COMBUSTION_VAPOUR of a burner without a flue. */
  readonly heaterVapour: number;
  /** [m2] and [-] of the coldest inner surfaces (door, glass, frames): area and temperature factor (T_si - T_e)/(T_i - T_e). */
  readonly coldArea: number;
  readonly coldFactor: number;
  /** [m/s] of a fan over the aircraft; 0 for none. */
  readonly fanSpeed: number;
  /** Whether melt water is swept out instead of left on the floor. */
  readonly floorSwept: boolean;
}

/**
 * [kg/J] water from burning propane without a flue: 1.63 kg of water and 46.4 MJ (lower) per kg, 0.126 kg/kWh. Stoichiometry of
 * C3H8; heating value from memory.
 */
export const COMBUSTION_VAPOUR = (4 * 18.015) / 44.097 / 46.4e6;

/** [1/s] air change of hangars, 0.6 to 2 per hour measured (Ashley and Lagus, ASTM STP 904, 1986); 0.3 to 0.5 in two tight ones. */
export const AIR_CHANGE_USUAL = 1 / 3600;

export interface BoxHangar {
  /** [m] inside. */
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly insulated: boolean;
  readonly tempSet: number;
  readonly heaterPower: number;
}

/** [W/(m2 K)] of shell (walls and roof) with 80 to 100 mm of insulation or as bare sheet. From memory of building practice. */
const U_INSULATED = 0.5;
const U_BARE = 5;
/** [J/(m2 K)] top 0.1 m of a concrete floor; the shell itself adds little. From memory: 2300 kg/m3, 900 J/(kg K). */
const FLOOR_CAPACITY = 0.1 * 2300 * 900;
/** [-] of the shell that is door and glass, and temperature factors of such: project judgement (ISO 13788 asks 0.7 or so of a good wall). */
const COLD_SHARE = 0.15;
const COLD_FACTOR = { insulated: 0.6, bare: 0.4 } as const;

/** A hangar from its inner size, one air change an hour, no fan, floor not swept; spread `{ ...boxHangar(...), fanSpeed: 2 }` to change. */
export function boxHangar(box: BoxHangar): Hangar {
  const { length, width, height, insulated, tempSet, heaterPower } = box;
  const floor = length * width;
  const shell = floor + 2 * (length + width) * height;
  return {
    volume: floor * height,
    innerArea: shell + floor,
    airChangeRate: AIR_CHANGE_USUAL,
    conductance: shell * (insulated ? U_INSULATED : U_BARE),
    heatCapacity: floor * FLOOR_CAPACITY,
    tempSet,
    heaterPower,
    heaterVapour: 0,
    coldArea: COLD_SHARE * shell,
    coldFactor: insulated ? COLD_FACTOR.insulated : COLD_FACTOR.bare,
    fanSpeed: 0,
    floorSwept: false,
  };
}

/** Air outside the hangar, constant. */
export interface OutsideAir {
  readonly tempAir: number;
  readonly tempDewPoint: number;
}

export function requireHangar(hangar: Hangar, outside: OutsideAir): void {
  requireMoistAir("outside", outside.tempAir, outside.tempDewPoint);
  requireInside("hangar.volume", hangar.volume, 10, 1e6, "m3");
  requireInside("hangar.innerArea", hangar.innerArea, 10, 1e6, "m2");
  requireInside("hangar.airChangeRate", hangar.airChangeRate, 0, 0.1, "1/s");
  requireInside("hangar.conductance", hangar.conductance, 0, 1e6, "W/K");
  requireInside("hangar.heatCapacity", hangar.heatCapacity, 1e3, 1e11, "J/K");
  requireInside("hangar.tempSet", hangar.tempSet, 243.15, 313.15, "K");
  requireInside("hangar.heaterPower", hangar.heaterPower, 0, 1e6, "W");
  requireInside("hangar.heaterVapour", hangar.heaterVapour, 0, 1e-7, "kg/J");
  requireInside("hangar.coldArea", hangar.coldArea, 0, hangar.innerArea, "m2");
  requireInside("hangar.coldFactor", hangar.coldFactor, 0, 1, "");
  requireInside("hangar.fanSpeed", hangar.fanSpeed, 0, 15, "m/s");
}
