import type { Installation, PartName } from "../aircraft/index.js";
import { kelvinFromCelsius, requireInside } from "../units/index.js";
import { requireOutsideAir } from "./outside-air.js";

/**
 * Rise over outside air as a share of the oil's [1], after descent and taxi; project judgement, sump and crankcase as
 * measured cool-downs of a light twin leave the oil in the first minutes.
 */
const SHARE_OF_OIL = {
  sump: 0.9,
  crankcase: 0.87,
  crankshaft: 1,
  accessories: 0.6,
  cowl_air: 0.45,
  cowl_skin: 0.15,
  hub: 0.3,
} as const satisfies Partial<Record<PartName, number>>;
const SHARE_BATTERY = { firewall: 0.2, aft: 0.05 } as const;

/** What was read at shut-down [K]. */
export interface ReadAtShutDown {
  readonly oil?: number;
  readonly heads?: number;
}

/**
 * [K] of every part when the engine is shut down after cruise, descent and taxi in outside air of `tempAir` [K]: the state
 * from which "landed at a strip two hours ago" starts. The description's rises where nothing was read, the oil no hotter
 * than its thermostat or cooler leaves it. Known to about 15 K.
 * @example shutDownTemps(installationById("four-carburettor-160"), 260.93).get("oil") // 327.9: 55 °C at 10 °F outside
 */
export function shutDownTemps(
  installation: Installation,
  tempAir: number,
  read: ReadAtShutDown = {},
): Map<PartName, number> {
  requireOutsideAir(tempAir);
  const { shut_down, battery } = installation;
  const usualOil = Math.min(tempAir + shut_down.oil_rise_k, kelvinFromCelsius(shut_down.oil_most_c));
  const oil = read.oil ?? Math.max(tempAir, usualOil);
  const coolant = shut_down.coolant_c === undefined ? 0 : kelvinFromCelsius(shut_down.coolant_c);
  const heads = read.heads ?? Math.max(tempAir + shut_down.heads_rise_k, coolant);
  const barrels = (shut_down.barrels_rise_k / shut_down.heads_rise_k) * (heads - tempAir);
  const temps = new Map<PartName, number>([
    ["oil", oil],
    ["heads_front", heads],
    ["heads_rear", heads],
    ["barrels", tempAir + barrels],
    ["battery", tempAir + SHARE_BATTERY[battery.place] * (oil - tempAir)],
  ]);
  for (const [part, share] of Object.entries(SHARE_OF_OIL)) {
    temps.set(part as PartName, tempAir + share * (oil - tempAir));
  }
  if (coolant > 0) temps.set("coolant", coolant);
  return temps;
}

/**
 * Where idling at 1000 to 1200 rpm leads [K over outside air] and how fast [s]; common practice, no published source:
 * heads some 60 K up after five minutes, oil off the peg after ten.
 */
const IDLING = {
  heads_front: { rise: 100, time: 300 },
  heads_rear: { rise: 100, time: 300 },
  barrels: { rise: 65, time: 360 },
  oil: { rise: 55, time: 1200 },
  sump: { rise: 50, time: 1200 },
  crankcase: { rise: 45, time: 1000 },
  crankshaft: { rise: 55, time: 800 },
  coolant: { rise: 80, time: 400 },
} as const satisfies Partial<Record<PartName, { rise: number; time: number }>>;

/** The parts a ground run warms, where an engine has them. */
export const GROUND_RUN_PARTS = Object.keys(IDLING) as readonly PartName[];

/**
 * `duration` [s] of idling from `temps` [K] in outside air of `tempAir` [K]: each part moves exponentially towards its idling
 * temperature and is never cooled by it; parts not named stay as they are. [K] by part.
 */
export function groundRun(
  temps: ReadonlyMap<PartName, number>,
  tempAir: number,
  duration: number,
): Map<PartName, number> {
  requireOutsideAir(tempAir);
  requireInside("duration", duration, 0, 7200, "s");
  const after = new Map(temps);
  for (const [name, { rise, time }] of Object.entries(IDLING)) {
    const part = name as PartName;
    const before = temps.get(part);
    if (before === undefined) continue;
    const gained = Math.max(0, tempAir + rise - before) * -Math.expm1(-duration / time);
    after.set(part, before + gained);
  }
  return after;
}
