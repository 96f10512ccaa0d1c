import {
  AIR_CHANGE_USUAL,
  boxHangar,
  COMBUSTION_VAPOUR,
  type Gap,
  type Hangar,
  HINGE_GAP,
  type OutsideAir,
} from "../airframe/index.js";
import { finding } from "../findings/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { ASSUMED_DEPRESSION } from "../weather/index.js";
import { kelvinOf } from "./airframe-reading.js";
import { fault, type Notes } from "./reading.js";
import type { ThawDocument } from "./thaw-schema.js";

const WATT_OF_KILOWATT = 1000;

export function hangarOf(given: ThawDocument["hangar"], { assumptions }: Notes): Hangar {
  const { air_changes_per_h, fan_mps, floor_swept, unflued_burner } = given;
  const hangar = boxHangar({
    length: given.length_m,
    width: given.width_m,
    height: given.height_m,
    insulated: given.insulated,
    tempSet: kelvinOf(given.set_c),
    heaterPower: given.heater_kw * WATT_OF_KILOWATT,
  });
  if (air_changes_per_h === undefined) {
    assumptions.push(finding("air-changes-taken", { per_h: AIR_CHANGE_USUAL * SECONDS_OF_HOUR }));
  }
  if (given.heater_kw > 0 && unflued_burner === undefined) {
    assumptions.push(finding("heater-with-flue", {}));
  }
  return {
    ...hangar,
    ...(air_changes_per_h === undefined ? {} : { airChangeRate: air_changes_per_h / SECONDS_OF_HOUR }),
    ...(unflued_burner ? { heaterVapour: COMBUSTION_VAPOUR } : {}),
    fanSpeed: fan_mps ?? hangar.fanSpeed,
    floorSwept: floor_swept ?? hangar.floorSwept,
  };
}

/** The usual control hinge with what the document knows better. */
export function gapOf(given: ThawDocument["gap"] = {}): Gap {
  const { depth_mm, width_mm, filled_fraction, length_m } = given;
  if (Object.keys(given).length === 0) return HINGE_GAP;
  return {
    ...HINGE_GAP,
    ...(depth_mm === undefined ? {} : { depth: depth_mm / 1000 }),
    ...(width_mm === undefined ? {} : { width: width_mm / 1000 }),
    ...(filled_fraction === undefined ? {} : { fill: filled_fraction }),
    ...(length_m === undefined ? {} : { length: length_m }),
    origin: `${Object.keys(given).join(", ")} from the document, the rest: ${HINGE_GAP.origin}`,
  };
}

type AirSection = { readonly air_c: number; readonly dew_point_c?: number };

/** Air with its dew point; without one it is taken as nearly saturated, which dries slowest. */
export function outsideAirOf(
  { air_c, dew_point_c }: AirSection,
  section: "outside" | "roll_out",
  notes: Notes,
): OutsideAir {
  if (dew_point_c !== undefined && dew_point_c > air_c) {
    const expected = `${air_c} or less: a dew point is never above the air`;
    fault(notes, [section, "dew_point_c"], expected, dew_point_c);
  }
  if (dew_point_c === undefined) {
    notes.assumptions.push(finding("dew-point-taken", { where: section, below_k: ASSUMED_DEPRESSION }));
  }
  const tempAir = kelvinOf(air_c);
  const lowest = kelvinOf(LOWEST_DEW_POINT);
  return {
    tempAir,
    tempDewPoint: Math.max(
      lowest,
      dew_point_c === undefined ? tempAir - ASSUMED_DEPRESSION : kelvinOf(dew_point_c),
    ),
  };
}

/** [°C] the airframe's models know. */
const LOWEST_DEW_POINT = -60;
