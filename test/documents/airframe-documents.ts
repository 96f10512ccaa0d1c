import {
  type FrostDocument,
  readFrostDocument,
  readThawDocument,
  type ThawDocument,
} from "../../src/documents/index.js";
import type { Outcome } from "../../src/questions/index.js";

/** A night at a strip that has everything it needs; tests change what they are about. */
export const NIGHT: FrostDocument = {
  soakline: 2,
  kind: "frost",
  name: "Example",
  start: "2026-01-14T18:00+01:00",
  zone: "Europe/Oslo",
  hours: 12,
  weather: {
    points: [0, 3, 6, 9, 12].map((at_h) => ({
      at_h,
      air_c: -5,
      wind_mps: 1.5,
      dew_point_c: -7,
      cloud_fraction: 0,
    })),
  },
  panel: "aluminium-painted",
  fuel: { depth_mm: 100, temp_c: -4, full: false },
  skin_c: -5,
  site: { roughness_m: 0.005, wing_height_m: 1.5, open_sky_fraction: 0.9, elevation_m: 0 },
  ensemble: { members: 20, seed: 1 },
};

/** A stay with everything it needs. */
export const STAY: ThawDocument = {
  soakline: 2,
  kind: "thaw",
  name: "Example",
  start: "2026-01-14T16:00+01:00",
  zone: "Europe/Oslo",
  hours: 12,
  panel: "aluminium-painted",
  aircraft: { area_m2: 25, temp_c: -12 },
  fuel: { depth_mm: 60, temp_c: -12, full: false },
  snow: { kind: "new", depth_mm: 20 },
  film: "wiped",
  gap: { depth_mm: 5, width_mm: 0.5, filled_fraction: 0.2, length_m: 12 },
  hangar: {
    length_m: 14,
    width_m: 12,
    height_m: 4,
    insulated: true,
    set_c: 18,
    heater_kw: 30,
    unflued_burner: false,
    air_changes_per_h: 1,
    fan_mps: 2,
    floor_swept: true,
    humidity_percent: 40,
  },
  outside: { air_c: -12, dew_point_c: -15 },
  site: { roughness_m: 0.005, wing_height_m: 1.5, open_sky_fraction: 1, elevation_m: 200 },
  roll_out: {
    at_h: 6,
    outside_min: 20,
    falling: "snow",
    wind_mps: 2,
    cloud_fraction: 0.5,
    cruise_m: 1500,
    climb_mps: 3,
    airspeed_mps: 50,
  },
  ensemble: { members: 20, seed: 1 },
};

type Changes<Document> = Partial<Record<keyof Document, unknown>>;

export function readNight(changes: Changes<FrostDocument> = {}) {
  const reading = readFrostDocument(without({ ...NIGHT, ...changes }));
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

export function readStay(changes: Changes<ThawDocument> = {}) {
  const reading = readThawDocument(without({ ...STAY, ...changes }));
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

/** Keys set to undefined are left out. */
function without(document: object): object {
  return Object.fromEntries(Object.entries(document).filter(([, value]) => value !== undefined));
}

export function completed<T>(outcome: Outcome<T>): T {
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}
