import type { Climb, RollOut, Sounding } from "../airframe/index.js";
import { finding } from "../findings/index.js";
import { METRES_OF_FOOT, METRES_PER_SECOND_OF_KNOT, SECONDS_OF_MINUTE } from "../units/index.js";
import { ASSUMED_CLOUD, ASSUMED_WIND } from "../weather/index.js";
import { kelvinOf } from "./airframe-reading.js";
import { type Clock, epochOfMoment } from "./clock.js";
import { outsideAirOf } from "./hangar-reading.js";
import type { Path } from "./issue.js";
import { fault, type Notes } from "./reading.js";
import type { ThawDocument } from "./thaw-schema.js";

type RollOutSection = NonNullable<ThawDocument["roll_out"]>;

/** [min] from roll-out to take-off, [m/s] of climb and of flight of a light aircraft. Project judgement. */
const USUAL_OUTSIDE = 20;
const USUAL_CLIMB = 2.5;
const USUAL_AIRSPEED = 45;

export function rollOutOf(
  given: RollOutSection,
  outside: ThawDocument["outside"],
  elevation: number,
  clock: Clock | undefined,
  notes: Notes,
): RollOut | undefined {
  const { outside_min, falling, wind_mps, cloud_fraction } = given;
  if ([outside_min, wind_mps, cloud_fraction].includes(undefined)) {
    notes.assumptions.push(
      finding("roll-out-taken", {
        ...(outside_min === undefined ? { minutes: USUAL_OUTSIDE } : {}),
        ...(wind_mps === undefined ? { wind_mps: ASSUMED_WIND } : {}),
        isClear: cloud_fraction === undefined,
      }),
    );
  }
  const air = outsideAirOf(airAtRollOut(given, outside), "roll_out", notes);
  const climb = climbOf(given, elevation, notes);
  const at = clock && leavingTime(given, clock, notes);
  if (at === undefined) return undefined;
  return {
    at,
    outside: {
      ...air,
      windSpeed: wind_mps ?? ASSUMED_WIND,
      cloudCover: cloud_fraction ?? ASSUMED_CLOUD,
    },
    falling,
    timeOutside: (outside_min ?? USUAL_OUTSIDE) * SECONDS_OF_MINUTE,
    ...(climb === undefined ? {} : { climb }),
  };
}

/** The air outside as it was, unless the document has another for the roll-out. */
function airAtRollOut({ air_c, dew_point_c }: RollOutSection, outside: ThawDocument["outside"]) {
  const dewPoint = dew_point_c ?? (air_c === undefined ? outside.dew_point_c : undefined);
  return { air_c: air_c ?? outside.air_c, ...(dewPoint === undefined ? {} : { dew_point_c: dewPoint }) };
}

function leavingTime(given: RollOutSection, clock: Clock, notes: Notes): number | undefined {
  const epoch = epochOfMoment(given, ["roll_out"], clock, notes);
  if (epoch === undefined) return undefined;
  if (epoch >= clock.start && epoch <= clock.end) return epoch - clock.start;
  return fault(notes, ["roll_out"], "a time within the document's hours", given.time ?? `at_h ${given.at_h}`);
}

function climbOf(given: RollOutSection, elevation: number, notes: Notes): Climb | undefined {
  const place: Path = ["roll_out"];
  const cruise = either(given, place, { cruise_m: 1, cruise_ft: METRES_OF_FOOT }, notes);
  const rate = either(given, place, { climb_mps: 1, climb_fpm: METRES_OF_FOOT / SECONDS_OF_MINUTE }, notes);
  const airspeed = either(given, place, { airspeed_mps: 1, airspeed_kt: METRES_PER_SECOND_OF_KNOT }, notes);
  const sounding = given.sounding && soundingOf(given.sounding, notes);
  if (cruise === undefined) {
    const named = given.cruise_m !== undefined || given.cruise_ft !== undefined;
    const climbs = rate !== undefined || airspeed !== undefined || sounding !== undefined;
    if (climbs && !named)
      fault(notes, place, "cruise_m or cruise_ft beside what tells of the climb", "neither");
    return undefined;
  }
  if (cruise < elevation) {
    const key = given.cruise_m === undefined ? "cruise_ft" : "cruise_m";
    fault(notes, [...place, key], `the aerodrome's elevation, ${elevation} m, or more`, given[key]);
  }
  if (rate === undefined || airspeed === undefined) {
    notes.assumptions.push(
      finding("climb-taken", {
        ...(rate === undefined ? { climb_fpm: feetPerMinute(USUAL_CLIMB) } : {}),
        ...(airspeed === undefined ? { airspeed_mps: USUAL_AIRSPEED } : {}),
      }),
    );
  }
  return {
    elevation,
    cruiseAltitude: cruise,
    rate: rate ?? USUAL_CLIMB,
    airspeed: airspeed ?? USUAL_AIRSPEED,
    ...(sounding === undefined ? {} : { sounding }),
  };
}

function soundingOf(given: NonNullable<RollOutSection["sounding"]>, notes: Notes): Sounding {
  const path: Path = ["roll_out", "sounding"];
  const altitude = given.map((point, i) => {
    const units = { altitude_m: 1, altitude_ft: METRES_OF_FOOT };
    const metres = either(point, [...path, i], units, notes);
    if (metres === undefined && point.altitude_m === undefined) {
      fault(notes, [...path, i], "altitude_m or altitude_ft", "neither");
    }
    return metres ?? Number.NaN;
  });
  altitude.forEach((here, i) => {
    if (!(here <= altitude[i - 1])) return;
    fault(notes, [...path, i], "an altitude above that of the point before", given[i]);
  });
  return { altitude, tempAir: given.map(({ air_c }) => kelvinOf(air_c)) };
}

/** The one of two keys that is given, in SI; both are a fault. */
function either<K extends string>(
  section: Readonly<Partial<Record<NoInfer<K>, unknown>>>,
  path: Path,
  factors: Readonly<Record<K, number>>,
  notes: Notes,
): number | undefined {
  const keys = (Object.keys(factors) as K[]).filter((key) => section[key] !== undefined);
  if (keys.length > 1) return fault(notes, path, `either ${keys.join(" or ")}`, "both");
  const [key] = keys;
  return key === undefined ? undefined : Number(section[key]) * factors[key];
}

/** A rate of climb [m/s] as pilots say it, to ten feet a minute. */
function feetPerMinute(rate: number): number {
  return 10 * Math.round(((rate / METRES_OF_FOOT) * SECONDS_OF_MINUTE) / 10);
}
