import { type Fit, type Installation, originOf } from "../aircraft/index.js";
import { UniformTable } from "../numerics/index.js";
import { RANGE_THERMAL_EXPANSION, TEMP_REFERENCE_LENGTH } from "../properties/index.js";
import {
  bearingIndex,
  CLEARANCE_LIMITS,
  clearanceOf,
  pistonIndex,
  TEMP_PISTON_FIRST_MINUTES,
} from "../starting/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import { type Criterion, rowOf } from "./criterion.js";

const REASONS = {
  bearing: "an aluminium case closes in on a steel shaft as it cools, where the oil is thickest",
  piston: "pistons are hot within a minute and outgrow barrels that are still cold",
};

/**
 * Clearance indices, always advisory: their limit is what they come to when all parts are just at the maker's preheat
 * limit, so that no limit is invented.
 */
export function clearanceCriteria(installation: Installation): Criterion[] {
  const { limits, clearances, origins } = installation;
  const maker = kelvinFromCelsius(limits.no_preheat_c);
  const bearingLimit = bearingIndex(installation, maker, maker);
  const pistonLimit = pistonIndex(installation, maker);
  const criteria: Criterion[] = [];
  const source = `${CLEARANCE_LIMITS} Parts: ${originOf(origins, "clearances")}`;
  if (clearances.bearing !== undefined && bearingLimit !== undefined) {
    const share = shares(clearances.bearing, clearances.bearing.clearance_mm / 1000, TEMP_REFERENCE_LENGTH);
    criteria.push(
      index(
        "bearing-clearance",
        "main-bearing clearance",
        bearingLimit,
        REASONS.bearing,
        source,
        (state, out) => {
          const { temps, members } = state;
          const outer = rowOf(state, "crankcase") * members;
          const inner = rowOf(state, "crankshaft") * members;
          for (let m = 0; m < members; m++) out[m] = share(temps[outer + m], temps[inner + m]);
        },
      ),
    );
  }
  if (pistonLimit !== undefined) {
    const { piston } = clearances;
    const usual = clearanceOf(piston, TEMP_REFERENCE_LENGTH, TEMP_PISTON_FIRST_MINUTES);
    const share = shares(piston, usual, TEMP_PISTON_FIRST_MINUTES);
    criteria.push(
      index("piston-clearance", "room for hot pistons", pistonLimit, REASONS.piston, source, (state, out) => {
        const { temps, members } = state;
        const outer = rowOf(state, "barrels") * members;
        for (let m = 0; m < members; m++) out[m] = share(temps[outer + m], TEMP_PISTON_FIRST_MINUTES);
      }),
    );
  }
  return criteria;
}

function index(
  id: string,
  title: string,
  limit: number,
  reason: string,
  source: string,
  values: Criterion["values"],
): Criterion {
  return {
    ...{ id, limit, reason, source, values },
    title: `${title}, index`,
    quantity: "index",
    direction: "at-least",
    judged: "at-start",
    advisory: true,
  };
}

/** Tables every 5 K, with a node at 20 °C where the coefficients change. */
const INTERVALS = 72;

/** Index [0..100] from the two temperatures: bore and shaft each contribute on their own. */
function shares(
  fit: Fit,
  usual: number,
  tempInner: number,
): (tempOuter: number, tempInner: number) => number {
  const table = (f: (temp: number) => number) =>
    new UniformTable(f, RANGE_THERMAL_EXPANSION.min, RANGE_THERMAL_EXPANSION.max, INTERVALS);
  const bore = table((temp) => clearanceOf(fit, temp, tempInner));
  const shaft = table(
    (temp) =>
      clearanceOf(fit, TEMP_REFERENCE_LENGTH, temp) - clearanceOf(fit, TEMP_REFERENCE_LENGTH, tempInner),
  );
  return (outer, inner) =>
    Math.min(100, Math.max(0, (100 * (bore.value(outer) + shaft.value(inner))) / usual));
}
