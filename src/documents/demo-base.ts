import { createRandom } from "../numerics/index.js";
import { rounded } from "./result-header.js";
import type { ScenarioDocument } from "./scenario-schema.js";

/** An invented base for showing the program: nothing of it exists, its weather is drawn from a seed. */
export interface DemoBase {
  readonly name: string;
  /** Said wherever the base is shown. */
  readonly notice: string;
  readonly scenarios: readonly ScenarioDocument[];
}

/** Four aircraft of one strip through one winter night; the same seed gives the same night. */
export function demoBase(seed = DEMO_SEED): DemoBase {
  const weather = { issued: START, points: demoPoints(seed, { hours: HOURS, hourOfDay: 18 }) };
  return {
    name: "Ravnholt Strip",
    notice: `Invented: strip, aircraft and weather do not exist; the weather is drawn from seed ${seed}.`,
    scenarios: AIRCRAFT.map((aircraft) => ({ ...COMMON, ...aircraft, weather })),
  };
}

export const DEMO_SEED = 14;
const START = "2026-01-14T18:00:00+01:00";
const HOURS = 24;

const COMMON: Omit<ScenarioDocument, AircraftKeys | "weather"> = {
  soakline: 2,
  note: "invented aircraft of the demo base",
  start: START,
  zone: "CET",
  hours: HOURS,
  hangar: { air_c: 6 },
  site: { roughness_m: 0.005 },
  ensemble: { members: 300, seed: 1 },
};

type AircraftKeys = "name" | "aircraft" | "kit" | "place" | "fitted" | "initial" | "want";

const WANT = { chance: 0.9, unplug_before_min: 15, cover_off_before_min: 10, pulled_out: false };

const AIRCRAFT: readonly Pick<ScenarioDocument, AircraftKeys>[] = [
  {
    name: "Lynx",
    aircraft: "four-carburettor-160",
    place: "ramp",
    kit: { heaters: ["whole-engine-4", "battery-blanket-60"], covers: ["insulated-cover"] },
    fitted: { covers: ["insulated-cover"] },
    initial: { oil_c: -16, all_c: -18, uncertainty_k: 2 },
    want: { ...WANT, departure: "10:00", heaters: ["whole-engine-4", "battery-blanket-60"] },
  },
  {
    name: "Heron",
    aircraft: "six-injected-300",
    place: "ramp",
    kit: {
      heaters: ["whole-engine-6", "battery-blanket-60"],
      covers: ["insulated-cover", "propeller-cover"],
    },
    fitted: { covers: ["insulated-cover", "propeller-cover"] },
    initial: { all_c: -18, uncertainty_k: 2 },
    want: { ...WANT, departure: "11:30", heaters: ["whole-engine-6", "battery-blanket-60"] },
  },
  {
    name: "Marten",
    aircraft: "liquid-light-100",
    kit: { heaters: ["sump-pad-100"], covers: ["inlet-plugs"] },
    fitted: { covers: ["inlet-plugs"] },
    place: "hangar",
    initial: { all_c: 6, uncertainty_k: 1 },
    want: { ...WANT, departure: "09:00", pulled_out: true },
  },
  {
    name: "Wren",
    aircraft: "two-light-60",
    place: "ramp",
    kit: { heaters: ["sump-pad-100"], covers: ["improvised-quilt"] },
    fitted: { covers: ["improvised-quilt"] },
    initial: { all_c: -18, uncertainty_k: 2 },
    want: { ...WANT, departure: "12:00" },
  },
];

/**
 * Clear, cold weather over snow: a smooth daily course with a slow random swell on it. Shapes are project judgement.
 * @param hourOfDay [h] local time at which the points begin, so that it is coldest at six in the morning
 */
export function demoPoints(
  seed: number,
  { hours, hourOfDay }: { readonly hours: number; readonly hourOfDay: number },
): NonNullable<ScenarioDocument["weather"]["points"]> {
  const random = createRandom(seed).stream("demo weather");
  const swell = { air: 0, wind: 0 };
  return Array.from({ length: hours + 1 }, (_, hour) => {
    swell.air = 0.85 * swell.air + 0.5 * random.normal();
    swell.wind = 0.8 * swell.wind + 0.6 * random.normal();
    const air = -21 - 3 * Math.sin((2 * Math.PI * (hour + hourOfDay - 24)) / 24) + swell.air;
    const wind = Math.max(0.5, 2.5 + swell.wind);
    return {
      at_h: hour,
      air_c: rounded(air, 1),
      wind_mps: rounded(wind, 1),
      dew_point_c: rounded(air - 2.5, 1),
      cloud_fraction: rounded(Math.min(1, Math.max(0, 0.15 + 0.1 * random.normal())), 2),
    };
  });
}
