import {
  densityOil,
  heatCapacityOil,
  type Oil,
  waltherFit,
  waltherViscosity,
} from "../../src/properties/index.js";
import { calibration, relative, type ValidationCase, type ValidationGroup } from "./case.js";
import { ENGINE_OIL_TABLE } from "./engine-oil-table.js";

const INCROPERA = "Incropera, Fundamentals of Heat and Mass Transfer, Table A.5";

/** A line through the table's 310 and 370 K. */
const LINE_TABLE = () => waltherFit(310, 288e-6, 370, 22e-6);
/** The table's oil, its density read at 15 °C between 280 and 290 K. */
const TABLE_OIL: Oil = {
  id: "incropera",
  name: "engine oil, unused",
  hotGrade: "50",
  nu40: 222e-6,
  nu100: 20.7e-6,
  density15: 890.98,
  pourPoint: 255,
  origin: INCROPERA,
};

export const OIL_TABLE_VALIDATION: ValidationGroup = {
  title: "engine oil table",
  part: "physics",
  cases: [
    ...ENGINE_OIL_TABLE.flatMap(({ temp, density, heatCapacity }) => [
      table(`density at ${temp} K`, "kg/m3", density, 0.006, "constant expansion 0.70e-3 from 15 °C", () =>
        densityOil(TABLE_OIL, temp),
      ),
      calibration(
        table(
          `heat capacity at ${temp} K`,
          "J/(kg K)",
          heatCapacity,
          0.005,
          "straight line through the table",
          () => heatCapacityOil(temp),
        ),
      ),
    ]),
    ...ENGINE_OIL_TABLE.filter(({ temp }) => temp >= 290 && temp <= 400 && temp !== 310 && temp !== 370).map(
      ({ temp, nu }) =>
        table(
          `viscosity at ${temp} K on a line through 310 and 370 K`,
          "m2/s",
          nu,
          0.08,
          "the table's own scatter about a line",
          () => waltherViscosity(LINE_TABLE(), temp),
        ),
    ),
    table(
      "viscosity at 273 K on a line through 310 and 370 K",
      "m2/s",
      4280e-6,
      0.4,
      "the table leaves the line below 290 K",
      () => waltherViscosity(LINE_TABLE(), 273),
    ),
  ],
};

function table(
  name: string,
  unit: string,
  expected: number,
  fraction: number,
  toleranceReason: string,
  got: () => number,
): ValidationCase {
  const tolerance = relative(expected, fraction);
  return {
    name: `engine oil: ${name}`,
    source: INCROPERA,
    mark: "published",
    unit,
    expected,
    tolerance,
    toleranceReason,
    got,
  };
}
