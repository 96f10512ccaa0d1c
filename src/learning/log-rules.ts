import { isElementPart, PART_NAMES } from "../aircraft/index.js";
import type { ProbePlace } from "./log.js";

/**
 * Thresholds by which doubtful readings of a log are found. All of them are project judgement unless a source stands
 * beside them: wide enough for everything heaters and weather do, narrow enough for what loggers and probes do wrong.
 */

/** Names a probe's place may have besides the parts of a network: both heads, the barrels, the one heater's surface. */
export const PROBE_PARTS: readonly string[] = [...PART_NAMES, "heads", "cylinders", "heater_surface"];

/** [°C] Readings outside are no temperature of anything here: below all weather, above all pads and heads. */
export const BELIEVABLE: readonly [number, number] = [-90, 400];

/** [°C] At and below this, displays and batteries of common loggers give up (common knowledge: most are specified to -20 °C). */
export const COLD = -20;

/**
 * [°C] What common digital sensors and their libraries show instead of a temperature (common knowledge): the bottom of
 * the sensor's range, and the library's word for "no sensor".
 */
export const NO_VALUE_NUMBERS = [-55, -127] as const;
/** [°C] What the same sensors show after power-on before they have measured (common knowledge). It may also be true: */
export const POWER_ON = 85;
/** [K] it is believed where a neighbouring reading is nearer than this. */
export const POWER_ON_JUMP = 10;

/** [s] A pause longer than this, and than five usual intervals, is listed as a gap. */
export const GAP = 900;
export const GAP_INTERVALS = 5;

/** What may be hoped of a place: parts inside the cowl, heater elements, and air, skin and hub, which the wind moves at once. */
export type PlaceKind = "mass" | "exposed" | "element";

/**
 * [K/s] fastest true change up and down. Elements: a 220 W pad of 200 J/K warms by 1 K/s. Parts and oil: 0.05 K/s is
 * ten times a good preheat; downward a head just shut down loses about 0.06 K/s only where it is 150 K too warm, and
 * never right after an equally quick rise. Exposed: doors, ducts, covers, gusts.
 */
export const FASTEST: Readonly<Record<PlaceKind, { readonly up: number; readonly down: number }>> = {
  mass: { up: 0.05, down: 0.02 },
  exposed: { up: 0.5, down: 0.5 },
  element: { up: 1, down: 1 },
};
/** [K] A spike stands out by more than this on both sides, ... */
export const SPIKE = 3;
/** ... by more than this many standard deviations of the column's noise, ... */
export const SPIKE_DEVIATIONS = 6;
/** ... and is over within this many readings. */
export const SPIKE_READINGS = 3;

/** Equal readings in a row that count as stuck: so many, for so long [s], ... */
export const STUCK_READINGS = 20;
export const STUCK_TIME = 1800;
/** ... while another probe moves by so much [K]. */
export const STUCK_OTHERS_MOVE = 5;
/** They are left out only where the column is this fine [K] and this share of the readings around them differed. */
export const STUCK_RESOLUTION = 0.25;
export const STUCK_LIVELY = 0.6;

/**
 * A part's probe has fallen out when this share of its excess over the air around is gone within ten minutes. A bare probe
 * of 1-5 min loses 0.86 or more of it; in the catalogue, open in 12 m/s of wind, the quickest part but the hub loses 0.67
 * in the quickest of a hundred draws (test/learning/log-fell-out.test.ts).
 */
export const FALL_SHARE = 0.75;
/** [s] */
export const FALL_TIME = 600;
/** [s] Readings further apart tell nothing: by then a part may have cooled. */
export const FALL_LONGEST = 1800;
/** [K] No less excess than this tells. */
export const FALL_EXCESS = 10;
/** [K] and [s]: a probe colder than the air is judged only by staying so near to the air for so long. */
export const FOLLOW_WITHIN = 2;
export const FOLLOW_TIME = 1800;

const EXPOSED_PARTS = ["cowl_air", "cowl_skin", "hub"];

export function placeKind(place: ProbePlace): PlaceKind {
  if (typeof place === "string" || EXPOSED_PARTS.includes(place.part)) return "exposed";
  return place.part === "heater_surface" || isElementPart(place.part) ? "element" : "mass";
}
