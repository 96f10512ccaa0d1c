import { type Heater, heaterBasis } from "./kit.js";
import type { LinkRule, SourceRule } from "./link-rule.js";

/**
 * How unsure the heat is that a heater brings, beside its power and its contact: standard deviation of ln(multiplier), one
 * draw for each aircraft, none where its kind was measured. Both tails count: the lower plugs in earlier, the upper makes
 * surfaces hotter. Project judgement: before any calibration the oil of the eight measured heat-ups rose 0.5 to 1.9 times
 * as far as the model said (0.45), part of which is the engine's and the night's.
 */
export const HEAT_SPREADS = {
  scaled: { name: "heat_scaled", logSd: 0.1 },
  estimated: { name: "heat_estimated", logSd: 0.2 },
} as const;

/** Whether a multiplier of this name is one that a fit leaves out: a log tells heat by the heater's power. */
export function isHeatSpread(name: string): boolean {
  return Object.values(HEAT_SPREADS).some((spread) => spread.name === name);
}

/** What the heater's power multiplies, what its numbers rest on multiplies too. */
function parametersOf(parameters: readonly string[], heater: Heater): readonly string[] {
  const { kind } = heaterBasis(heater);
  if (kind === "measured" || !parameters.includes("heater_power")) return parameters;
  return [...parameters, HEAT_SPREADS[kind].name];
}

export function linkWithSpread(rule: LinkRule, heater: Heater): LinkRule {
  return { ...rule, link: { ...rule.link, parameters: parametersOf(rule.link.parameters, heater) } };
}

export function sourceWithSpread(rule: SourceRule, heater: Heater): SourceRule {
  return { ...rule, source: { ...rule.source, parameters: parametersOf(rule.source.parameters, heater) } };
}
