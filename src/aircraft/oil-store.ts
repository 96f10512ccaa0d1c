import { UniformTable } from "../numerics/index.js";
import {
  densityOil,
  GENERIC_OILS,
  heatCapacityOil,
  kinematicViscosityOil,
  type Oil,
} from "../properties/index.js";
import type { FilmFactor, Part } from "../thermal/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import type { Installation } from "./description.js";

const WARM = kelvinFromCelsius(50);
const FREEZING = kelvinFromCelsius(0);

/**
 * How the oil-side conductance falls as the oil thickens: laminar free convection at a heated wall goes as Ra^1/4, so
 * φ(T) = (ν(50 °C)/ν(T))^1/4. Below about -40 °C the viscosity itself is an extrapolation, so φ is too.
 */
export function oilFilmFactor(oilId: string): FilmFactor {
  const cached = filmFactors.get(oilId);
  if (cached !== undefined) return cached;
  const oil = oilById(oilId);
  const warm = kinematicViscosityOil(oil, WARM);
  const table = new UniformTable(
    (temp) => (warm / kinematicViscosityOil(oil, temp)) ** 0.25,
    kelvinFromCelsius(-70),
    kelvinFromCelsius(250),
    160,
  );
  filmFactors.set(oilId, table);
  return table;
}

const filmFactors = new Map<string, FilmFactor>();

/** Heat store of the oil: mass at 15 °C times c_p(T) = c_p0 + slope (T - 273.15 K). */
export function oilHeatCapacity(oil: Installation["oil"]): Pick<Part, "heatCapacity" | "heatCapacitySlope"> {
  const litres = oil.quantity_l;
  const mass = (litres / 1000) * densityOil(oilById(oil.oil_id), kelvinFromCelsius(15));
  const at0 = heatCapacityOil(FREEZING);
  return { heatCapacity: mass * at0, heatCapacitySlope: (mass * (heatCapacityOil(WARM) - at0)) / 50 };
}

export function oilById(id: string): Oil {
  const oil = GENERIC_OILS.find((o) => o.id === id);
  if (oil === undefined) {
    throw new RangeError(`unknown oil: ${id} (expected one of ${GENERIC_OILS.map((o) => o.id).join(", ")})`);
  }
  return oil;
}
