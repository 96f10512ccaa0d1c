import { UniformTable } from "../numerics/index.js";
import { dynamicViscosityOil, type Oil } from "../properties/index.js";
import { kelvinFromCelsius } from "../units/index.js";

/** [K] of engine parts that are handled; colder and warmer ones count as the end. */
const TEMP_COLDEST_PART = kelvinFromCelsius(-60);
const TEMP_WARMEST_PART = kelvinFromCelsius(200);

const tables = new WeakMap<Oil, UniformTable>();

/** ln of the dynamic viscosity [ln Pa s] against temperature [K], for hot loops; 0.1 % of the viscosity itself. */
export function logViscosityTable(oil: Oil): UniformTable {
  const known = tables.get(oil);
  if (known !== undefined) return known;
  const table = new UniformTable(
    (temp) => Math.log(dynamicViscosityOil(oil, temp)),
    TEMP_COLDEST_PART,
    TEMP_WARMEST_PART,
    260,
  );
  tables.set(oil, table);
  return table;
}

/** [K] within the range of the tables. */
export function clampedPart(temp: number): number {
  return Math.min(TEMP_WARMEST_PART, Math.max(TEMP_COLDEST_PART, temp));
}
