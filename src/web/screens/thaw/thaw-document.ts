import type { ThawDocument } from "../../../documents/index.js";
import { isoOf } from "../../units/times.js";
import type { WeatherView } from "../../worker/protocol.js";

export const SNOW = ["new", "settled", "wet", "ice", "none"] as const;
export const FALLING = ["nothing", "snow", "rain"] as const;
/** [°C] limits of what can be entered. */
export const COLDEST = -60;
export const WARMEST = { aircraft: 40, hangar: 40, outside: 50 };

/** What the thaw screen asks of the user; all temperatures [°C]. */
export interface ThawForm {
  snow: (typeof SNOW)[number];
  depthMm: number;
  brushed: boolean;
  wiped: boolean;
  aircraftC: number;
  areaM2: number;
  hangarC: number;
  heaterKw: number;
  unflued: boolean;
  fan: boolean;
  swept: boolean;
  outsideC: number;
  falling: (typeof FALLING)[number];
  /** [ms] when it is to leave. */
  leaves: number;
}

/** [m/s] over the aircraft, a floor fan a few metres off: project judgement. */
const FAN_MPS = 2;
const HOUR = 3_600_000;
/** [h] looked ahead. */
const LOOK_AHEAD = 24;
/** A closed, insulated hangar for one light aircraft: project judgement, said on the screen. */
const HANGAR = { length_m: 14, width_m: 12, height_m: 4, insulated: true, air_changes_per_h: 1 };

/** Whose question it is, when and where, and the forecast there. */
export interface ThawPlace {
  readonly name: string;
  readonly zone: string;
  readonly now: number;
  readonly weather: WeatherView | undefined;
}

/** The question as a document, rolled in now. */
export function thawDocument(form: ThawForm, { name, zone, now, weather }: ThawPlace): ThawDocument {
  const leavesIn = (form.leaves - now) / HOUR;
  const forecast = weather && forecastFrom(weather, now);
  return {
    soakline: 2,
    kind: "thaw",
    name,
    start: isoOf(now),
    zone,
    hours: LOOK_AHEAD,
    panel: "aluminium-painted",
    aircraft: { area_m2: form.areaM2, temp_c: form.aircraftC },
    ...(form.snow === "none"
      ? {}
      : { snow: { kind: form.snow, depth_mm: form.depthMm, brushed: form.brushed && form.snow !== "ice" } }),
    film: form.wiped ? "wiped" : "dripping",
    hangar: {
      ...HANGAR,
      set_c: form.hangarC,
      heater_kw: form.heaterKw,
      unflued_burner: form.unflued,
      fan_mps: form.fan ? FAN_MPS : 0,
      floor_swept: form.swept,
    },
    outside: { air_c: form.outsideC },
    ...(forecast === undefined ? {} : { weather: forecast }),
    ...(leavesIn > 0 && leavesIn < LOOK_AHEAD
      ? { roll_out: { at_h: leavesIn, falling: form.falling, air_c: form.outsideC } }
      : {}),
    ensemble: { members: 40, seed: 1 },
  };
}

/** The forecast by the hour from `now` on; undefined where it does not reach over the look ahead. */
function forecastFrom(weather: WeatherView, now: number): ThawDocument["weather"] {
  const first = weather.time.findLastIndex((time) => time <= now);
  const last = weather.time[weather.time.length - 1];
  if (first < 0 || last < now + LOOK_AHEAD * HOUR) return undefined;
  return {
    points: weather.time.slice(first).map((time, i) => ({
      at_h: (time - now) / HOUR,
      air_c: weather.airC[first + i],
      wind_mps: weather.windMps[first + i],
      dew_point_c: Math.min(weather.airC[first + i], weather.dewPointC[first + i]),
      cloud_fraction: weather.cloud[first + i],
    })),
  };
}
