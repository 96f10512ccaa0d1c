import { cautionsBelong, startCautionsBelong } from "./caution-rules.js";
import type { Advice } from "./heat-spans.js";
import {
  heatersWithinLimits,
  hotAirAsMakersAsk,
  nothingLeftOn,
  remediesWithinLimits,
  shownWithinLimits,
} from "./heater-rules.js";
import {
  coveredWindowIsReady,
  lookFirstBeforeGreen,
  noNeedlessHeat,
  nothingFlatters,
  startWithinTheWindow,
  ticksAreEarned,
  windowIsReady,
} from "./ready-rules.js";

/** Every rule by its name; each gives what breaks it. */
export const RULES: Readonly<Record<string, (advice: Advice) => string[]>> = {
  heatersWithinLimits,
  shownWithinLimits,
  remediesWithinLimits,
  hotAirAsMakersAsk,
  nothingLeftOn,
  windowIsReady,
  coveredWindowIsReady,
  startWithinTheWindow,
  ticksAreEarned,
  nothingFlatters,
  lookFirstBeforeGreen,
  noNeedlessHeat,
  cautionsBelong,
  startCautionsBelong,
};

/** All that is broken, each with its rule. */
export function brokenRules(advice: Advice): string[] {
  return Object.entries(RULES).flatMap(([name, rule]) => rule(advice).map((text) => `${name}: ${text}`));
}
