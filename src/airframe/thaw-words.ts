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
  const damp: Caution = {
    text: `The hangar gets damp (up to ${Math.round(100 * mostHumid)} % relative humidity): other engines and tools in it can rust, and drying slows. Air it, heat it, or sweep the water out.`,
    source: "wet above 80 %: ISO 9223 time of wetness",
  };
  const cold: Caution = {
    text: "The heater does not hold the setting: the air ends colder, and everything takes longer.",
    source: "this calculation",
  };
  return [
    c.dryBeforeOut,
    c.hinges,
    c.gentleHeat,
    c.hangarVapour,
    c.inspect,
    ...(brushable > WORTH_BRUSHING ? [c.brushFirst] : []),
    ...(hangar.heaterVapour > 0 ? [c.carbonMonoxide] : []),
    ...(tempEnd < hangar.tempSet - HEATER_SHORT ? [cold] : []),
    ...(mostHumid > RELATIVE_HUMIDITY_WET ? [damp] : []),
  ];
}

/** What the calculation took for granted, in words. */
export function thawAssumptions(request: ThawRequest): string[] {
  const { panel, gap, hangar, tempInside, relativeHumidity } = request;
  return [
    `panel: ${panel.name} (${panel.origin})`,
    `gap: ${gap.name} (${gap.origin})`,
    "air outside constant; hangar air well mixed; door shut after roll-in",
    ...(tempInside === undefined ? ["inside of the wing as cold as the skin when it comes in"] : []),
    ...(relativeHumidity === undefined ? ["hangar air holds the outside's moisture at the start"] : []),
    ...(hangar.fanSpeed > 0 ? [] : ["no fan: draughts of 0.1 m/s"]),
    hangar.floorSwept ? "melt water swept out at once" : "melt water stays on the floor and evaporates",
  ];
}
