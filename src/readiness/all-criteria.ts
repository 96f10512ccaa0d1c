import type { Installation, Kit } from "../aircraft/index.js";
import { battery, batteryCharge } from "./battery.js";
import { bearingClearance, pistonClearance } from "./clearances.js";
import { crankingSpeed, tries } from "./cranking.js";
import type { Criterion, CriterionMaker, StricterLimits } from "./criterion.js";
import { fuelOffered, fuelVapour, plugs } from "./fuel.js";
import { oilCrank, oilPump } from "./oil-flow.js";
import { barrels, bearings, crankcase, evenness, heads, hub, oil, oilCooler, warmThrough } from "./parts.js";
import { oilFilm, oilMaximum, surfaces } from "./while-heating.js";

/** Those that temperatures alone decide. A criterion is a maker in a file of its kind, its words, and a line here. */
const OF_TEMPERATURE: readonly CriterionMaker[] = [
  oil,
  bearings,
  crankcase,
  barrels,
  heads,
  oilCooler,
  warmThrough,
  evenness,
  oilMaximum,
  oilFilm,
  hub,
  surfaces,
];

/**
 * What a start needs beyond warm parts: oil that flows and lets itself be cranked, a starter that spins the engine, a
 * battery that is not frozen, fuel that gives a mixture. Rules of thumb and indices among them are advisory.
 */
const OF_A_START: readonly CriterionMaker[] = [
  oilPump,
  oilCrank,
  crankingSpeed,
  tries,
  battery,
  batteryCharge,
  fuelVapour,
  fuelOffered,
  plugs,
  bearingClearance,
  pistonClearance,
];

/** Everything that must hold for a start. */
export function allCriteria(
  installation: Installation,
  kit: Kit,
  stricter: StricterLimits = {},
  { charge }: { readonly charge?: number } = {},
): Criterion[] {
  const setting = { installation, kit, stricter, charge };
  return [...OF_TEMPERATURE, ...OF_A_START].flatMap((made) => made(setting));
}

/** The criteria that temperatures alone decide, for one installation and its kit. */
export function temperatureCriteria(
  installation: Installation,
  kit: Kit,
  stricter: StricterLimits = {},
): Criterion[] {
  return OF_TEMPERATURE.flatMap((made) => made({ installation, kit, stricter }));
}
