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
import { type Criterion, type CriterionMaker, named, rowOf } from "./criterion.js";

// Always advisory: the limit is what an index comes to when all parts are just at the maker's preheat limit, so that no
// limit is invented.

export const bearingClearance: CriterionMaker = ({ installation }) => {
  const { bearing } = installation.clearances;
  const maker = kelvinFromCelsius(installation.limits.no_preheat_c);
  const limit = bearingIndex(installation, maker, maker);
  if (bearing === undefined || limit === undefined) return [];
  const share = shares(bearing, bearing.clearance_mm / 1000, TEMP_REFERENCE_LENGTH);
  return [
    index("bearing-clearance", limit, installation, (state, out) => {
      const { temps, members } = state;
      const outer = rowOf(state, "crankcase") * members;
      const inner = rowOf(state, "crankshaft") * members;
      for (let m = 0; m < members; m++) out[m] = share(temps[outer + m], temps[inner + m]);
    }),
  ];
};

export const pistonClearance: CriterionMaker = ({ installation }) => {
  const { piston } = installation.clearances;
  const limit = pistonIndex(installation, kelvinFromCelsius(installation.limits.no_preheat_c));
  if (limit === undefined) return [];
  const usual = clearanceOf(piston, TEMP_REFERENCE_LENGTH, TEMP_PISTON_FIRST_MINUTES);
  const share = shares(piston, usual, TEMP_PISTON_FIRST_MINUTES);
  return [
    index("piston-clearance", limit, installation, (state, out) => {
      const { temps, members } = state;
      const outer = rowOf(state, "barrels") * members;
      for (let m = 0; m < members; m++) out[m] = share(temps[outer + m], TEMP_PISTON_FIRST_MINUTES);
    }),
  ];
};

function index(
  id: "bearing-clearance" | "piston-clearance",
  limit: number,
  { origins }: Installation,
  values: Criterion["values"],
): Criterion {
  return {
    ...named(id, {}),
    quantity: "index",
    direction: "at-least",
    judged: "at-start",
    limit,
    advisory: true,
    source: `${CLEARANCE_LIMITS} Parts: ${originOf(origins, "clearances")}`,
    values,
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
