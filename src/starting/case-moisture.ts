import {
  CaseBalance,
  type CaseMoisture,
  type CaseWater,
  type OutsideAir,
  type PartCourse,
} from "./case-balance.js";
import type { CaseGeometry } from "./case-geometry.js";

/** What the wet hours can tell and what not. */
export const WET_TIME_LIMITS =
  "ISO 9223 counts hours above 80 % humidity and 0 °C for open-air sheet; frost counts here too, for it becomes water at the " +
  "start. Inside a case, under oil films and acid traces, the count only ranks one habit against another. Areas, breather and " +
  "oil are estimates: take the water as good to a factor of three.";

/** [kg/kg] water in oil after short winter flights, mostly emulsion; makers' texts say 150 °F leaves it in; project judgement. */
export const WATER_IN_OIL_WINTER = 1000e-6;

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
  const balance = new CaseBalance(geometry, course, outside, start, member);
  for (let s = 1; s < time.length; s++) {
    const width = time[s]! - time[s - 1]!;
    const steps = Math.max(1, Math.ceil(width / longestStep));
    for (let k = 0; k < steps; k++) balance.advance(s - 1, (k + 0.5) / steps, width / steps);
    balance.record(s);
  }
  return balance.outcome();
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
