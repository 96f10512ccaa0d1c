import { type Finding, finding, sourced } from "../findings/index.js";
import { RELATIVE_HUMIDITY_WET } from "../properties/index.js";
import { AIRFRAME_CAUTIONS, type Caution } from "./caution.js";
import type { ThawRequest, ThawResult } from "./thaw.js";

/** [K] below its setting at which the hangar is called too cold. */
const HEATER_SHORT = 2;

/** [kg/m2] of snow worth a broom. Project judgement. */
export const WORTH_BRUSHING = 0.5;

/** Cautions for a stay: those that always stand, and those its course calls for. */
export function thawCautions(
  { hangar, brushable = 0 }: ThawRequest,
  course: Pick<ThawResult, "mostHumid" | "series">,
): Caution[] {
  const mostHumid = course.mostHumid.middle;
  const tempEnd = course.series.tempHangar.middle.at(-1)!;
  const c = AIRFRAME_CAUTIONS;
  return [
    c.dryBeforeOut,
    c.hinges,
    c.gentleHeat,
    c.hangarVapour,
    c.inspect,
    ...(brushable > WORTH_BRUSHING ? [c.brushFirst] : []),
    ...(hangar.heaterVapour > 0 ? [c.carbonMonoxide] : []),
    ...(tempEnd < hangar.tempSet - HEATER_SHORT ? [sourced("heater-too-small", {}, "this calculation")] : []),
    ...(mostHumid > RELATIVE_HUMIDITY_WET
      ? [sourced("damp-hangar", { humidity: mostHumid }, "wet above 80 %: ISO 9223 time of wetness")]
      : []),
  ];
}

/** What the calculation took for granted. */
export function thawAssumptions(request: ThawRequest): Finding[] {
  const { panel, gap, hangar, tempInside, relativeHumidity } = request;
  return [
    finding("panel-taken", { name: panel.name, origin: panel.origin }),
    finding("gap-taken", { name: gap.name, origin: gap.origin }),
    finding("outside-constant-door-shut", {}),
    ...(tempInside === undefined ? [finding("inside-as-skin", {})] : []),
    ...(relativeHumidity === undefined ? [finding("hangar-damp-as-outside", {})] : []),
    ...(hangar.fanSpeed > 0 ? [] : [finding("no-fan", {})]),
    finding(hangar.floorSwept ? "melt-water-swept" : "melt-water-stays", {}),
  ];
}
