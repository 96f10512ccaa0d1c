import type { ThawDocument } from "../../../documents/index.js";
import { isoOf } from "../../units/times.js";

/** What the thaw screen asks of the user; all temperatures [°C]. */
export interface ThawForm {
  readonly snow: "new" | "settled" | "wet" | "ice" | "none";
  readonly depthMm: number;
  readonly brushed: boolean;
  readonly film: "dripping" | "wiped";
  readonly aircraftC: number;
  readonly areaM2: number;
  readonly hangarC: number;
  readonly heaterKw: number;
  readonly unflued: boolean;
  readonly fan: boolean;
  readonly swept: boolean;
  readonly outsideC: number;
  readonly falling: "nothing" | "snow" | "rain";
  /** [ms] when it is to leave. */
  readonly leaves: number;
}

/** [m/s] over the aircraft, a floor fan a few metres off: project judgement. */
const FAN_MPS = 2;
/** [h] looked ahead. */
const LOOK_AHEAD = 24;
/** A closed, insulated hangar for one light aircraft: project judgement, said on the screen. */
const HANGAR = { length_m: 14, width_m: 12, height_m: 4, insulated: true, air_changes_per_h: 1 };

/** The question as a document, rolled in now. */
export function thawDocument(form: ThawForm, name: string, zone: string, now: number): ThawDocument {
  const leavesIn = (form.leaves - now) / 3_600_000;
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
    film: form.film,
    hangar: {
      ...HANGAR,
      set_c: form.hangarC,
      heater_kw: form.heaterKw,
      unflued_burner: form.unflued,
      fan_mps: form.fan ? FAN_MPS : 0,
      floor_swept: form.swept,
    },
    outside: { air_c: form.outsideC },
    ...(leavesIn > 0 && leavesIn < LOOK_AHEAD
      ? { roll_out: { at_h: leavesIn, falling: form.falling, air_c: form.outsideC } }
      : {}),
    ensemble: { members: 40, seed: 1 },
  };
}
