import { CAUTIONS, type Caution, type Heater } from "../aircraft/index.js";
import { keyOf } from "../findings/index.js";
import { START_CAUTIONS } from "../starting/index.js";
import type { PlanDocument, StartDocument } from "./result-schema.js";

/** Most cautions of a first screen. */
const MOST = 3;

/** The two or three cautions that belong to this kit and this night, what kills first. */
export function firstCautions(
  used: readonly Heater[],
  heaters: PlanDocument["heaters"],
  briefing: StartDocument,
  isCovered: boolean,
): PlanDocument["first_cautions"] {
  const among = (cautions: readonly Caution[], caution: Caution) =>
    cautions.some((one) => keyOf(one) === keyOf(caution));
  const said = (caution: Caution) => briefing.notes.some((note) => among(note.cautions, caution));
  const heated = (caution: Caution) => used.some((h) => among(h.cautions, caution));
  const isTooHot = heaters.some((h) => h.surfaces.some((s) => s.p95_c > s.limit_c));
  const found: Caution[] = [
    ...used.flatMap((h) => h.rejected ?? []),
    ...(heated(CAUTIONS.carbonMonoxide) ? [CAUTIONS.carbonMonoxide] : []),
    ...(heated(CAUTIONS.unattended) ? [CAUTIONS.unattended] : []),
    ...(isTooHot ? [CAUTIONS.hotSurface] : []),
    ...(said(START_CAUTIONS.frozenBattery) ? [START_CAUTIONS.frozenBattery] : []),
    ...(heated(CAUTIONS.superficial) ? [CAUTIONS.superficial] : []),
    ...(heated(CAUTIONS.sumpOnly) ? [CAUTIONS.sumpOnly] : []),
    ...(said(START_CAUTIONS.propeller) ? [START_CAUTIONS.propeller] : []),
    ...(isCovered ? [CAUTIONS.removeBeforeStart] : []),
  ];
  return found.slice(0, MOST);
}
