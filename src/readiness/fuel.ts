import { originOf, type PartName } from "../aircraft/index.js";
import { UniformTable } from "../numerics/index.js";
import {
  FLAMMABILITY_GASOLINE,
  fuelVapourFraction,
  fuelVapourPressureAp42,
  PRESSURE_STANDARD,
  RANGE_TEMP_FUEL_AP42,
} from "../properties/index.js";
import { clampedFuel, fuelVolatility, OFFERED_MOST, TEMP_WARM_START } from "../starting/index.js";
import { kelvinFromCelsius } from "../units/index.js";
import { type Criterion, type CriterionMaker, extreme, lowest, named } from "./criterion.js";

const HEADS: readonly PartName[] = ["heads_front", "heads_rear"];
const INTERVALS = 240;

/** A function of the coldest head's temperature [K], tabulated. */
function atColdestHead(f: (temp: number) => number): Criterion["values"] {
  const table = new UniformTable(f, RANGE_TEMP_FUEL_AP42.min, RANGE_TEMP_FUEL_AP42.max, INTERVALS);
  return (state, out) => {
    extreme(state, HEADS, Math.min, out);
    for (let m = 0; m < out.length; m++) out[m] = table.value(clampedFuel(out[m]));
  };
}

export const fuelVapour: CriterionMaker = ({ installation: { fuel, origins } }) => {
  const volatility = fuelVolatility(fuel);
  return [
    {
      ...named("fuel-vapour", {}),
      quantity: "fraction",
      direction: "at-least",
      judged: "at-start",
      limit: FLAMMABILITY_GASOLINE.lean,
      source: `AP-42 chapter 7.1; lean limit IEC 60079-20-1; fuel: ${originOf(origins, "fuel")}`,
      values: atColdestHead((temp) => fuelVapourFraction(volatility, temp, PRESSURE_STANDARD)),
    },
  ];
};

export const fuelOffered: CriterionMaker = ({ installation: { fuel, origins } }) => {
  const volatility = fuelVolatility(fuel);
  const warm = fuelVapourPressureAp42(volatility, TEMP_WARM_START);
  const ratios = atColdestHead((temp) => warm / fuelVapourPressureAp42(volatility, temp));
  return [
    {
      ...named("fuel-offered", {}),
      quantity: "ratio",
      direction: "at-most",
      judged: "at-start",
      limit: OFFERED_MOST,
      advisory: true,
      source: `warm: 15 °C; share that evaporates taken as vapour pressure, AP-42; limit from handbooks' strokes, project judgement; fuel: ${originOf(origins, "fuel")}`,
      values(state, out) {
        ratios(state, out);
        for (let m = 0; m < out.length; m++) out[m] = Math.max(1, out[m]);
      },
    },
  ];
};

export const plugs: CriterionMaker = () => [
  {
    ...lowest(named("plugs", {}), HEADS, kelvinFromCelsius(0), "Cessna 172S NAV III POH Supplement 8"),
    advisory: true,
  },
];
