import { type Installation, oilById, type PartName } from "../aircraft/index.js";
import { densityOil, type Oil } from "../properties/index.js";
import { kelvinFromCelsius } from "../units/index.js";

/** The inside of a crankcase as its moisture sees it. */
export interface CaseGeometry {
  /** [m3] of air. */
  readonly airVolume: number;
  /** Walls that water can settle on. */
  readonly surfaces: readonly { readonly part: PartName /** [m2] */; readonly area: number }[];
  readonly oil: Oil;
  /** [kg] */
  readonly oilMass: number;
  /** [m2] of oil that faces the air of the case. */
  readonly oilArea: number;
  /** [s] in which breather, rings and open valves change the air of the case once. */
  readonly breatherTime: number;
}

/** Sizes at 5.5 l of swept volume; areas go with volume^2/3. All project judgement. */
const BASE_DISPLACEMENT = 5.5;
/** [1] air in the case over the swept volume. */
const AIR_PER_DISPLACEMENT = 2;
/** [m2] walls and webs; shaft, cam, followers and rods; bores and piston undersides. */
const BASE_AREAS = { crankcase: 0.6, crankshaft: 0.35, barrels: 0.45 } as const;
/** [m2] free surface of a sump, and what faces the case of a tank's oil. */
const BASE_OIL_AREA = { "wet-sump": 0.1, "dry-tank": 0.005 } as const;
/** [s] six hours; a factor of three either way. */
const BREATHER_TIME = 6 * 3600;

export function caseGeometry({ displacement_l, lubrication, oil }: Installation): CaseGeometry {
  const scale = (displacement_l / BASE_DISPLACEMENT) ** (2 / 3);
  const installed = oilById(oil.oil_id);
  return {
    airVolume: (AIR_PER_DISPLACEMENT * displacement_l) / 1000,
    surfaces: (["crankcase", "crankshaft", "barrels"] as const).map((part) => ({
      part,
      area: scale * BASE_AREAS[part],
    })),
    oil: installed,
    oilMass: (oil.quantity_l / 1000) * densityOil(installed, kelvinFromCelsius(15)),
    oilArea: scale * BASE_OIL_AREA[lubrication],
    breatherTime: BREATHER_TIME,
  };
}
