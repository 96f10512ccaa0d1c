import { CAUTIONS, type Heater, type Installation, type Kit, originOf } from "../aircraft/index.js";
import type { KitRuleDocument, ReadWinter } from "../documents/index.js";
import { saidOf } from "../findings/index.js";
import { isTooSmall } from "../planning/index.js";
import { SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";

/** Where and on what a kit is used. */
export type KitSetting = Pick<ReadWinter, "installation" | "place">;

/** [s] the shortest time on that all of a kit's heaters may be planned for; 0 without any. */
export function leastOn({ heaters }: Kit): number {
  return SECONDS_OF_HOUR * Math.max(0, ...heaters.map((heater) => heater.least_on_h));
}

/** [s] the shortest of a kit's longest times on; infinite without any heater. */
export function longestOn({ heaters }: Kit): number {
  return SECONDS_OF_HOUR * Math.min(...heaters.map((heater) => heater.longest_on_h));
}

/** [s] between the end of heating and the start that the makers' procedures ask for. */
export function pauseOf({ heaters }: Kit): number {
  return SECONDS_OF_MINUTE * Math.max(0, ...heaters.map(({ procedure }) => procedure?.pause_min ?? 0));
}

/** [s] before the start at which heating ends: as wished, and no later than the makers' pause asks for. */
export function unplugBeforeOf(kit: Kit, wished: number): number {
  return Math.max(wished, pauseOf(kit));
}

export function isAttended({ heaters }: Kit): boolean {
  return heaters.some(({ attended }) => attended);
}

/** Why a kit may not be used here at all: it is shown, never worked out nor ranked. */
export function barsOf({ heaters }: Kit, { installation, place }: KitSetting): KitRuleDocument[] {
  return heaters.flatMap((heater): KitRuleDocument[] => {
    if (heater.runs === "outdoors" && place === "hangar") return [ruleOf("outdoors-only", heater)];
    return isTooSmall(installation, heater) ? [ruleOf("engine-too-small", heater, installation)] : [];
  });
}

/** Why a kit is compared and never recommended: makers reject one of its heaters. */
export function rejectionsOf({ heaters }: Kit): KitRuleDocument[] {
  return heaters.flatMap(({ name, rejected }): KitRuleDocument[] =>
    rejected === undefined
      ? []
      : [{ rule: "rejected", heater: name, text: saidOf(rejected), source: rejected.source }],
  );
}

/** A habit that keeps a heater on longer than its record allows. @param on [s] longest in one go */
export function overLongest({ heaters }: Kit, on: number): KitRuleDocument[] {
  return heaters
    .filter((heater) => on > heater.longest_on_h * SECONDS_OF_HOUR + 1)
    .map((heater) => ({
      rule: "longest-on",
      heater: heater.name,
      text: `${heater.name}: ${Math.round(on / SECONDS_OF_HOUR)} h in one go, ${heater.longest_on_h} h allowed.`,
      source: originOf(heater.origins, "longest_on_h"),
    }));
}

/** Nothing ends always on: one flight that falls away, and any heater is over its longest time. */
export const ALWAYS_ON: KitRuleDocument = {
  rule: "always-on",
  heater: "",
  text: "Always on has no end: a flight that falls away leaves it on beyond its longest time, and a heater that nobody watches must go off.",
  source: "project judgement",
};

function ruleOf(
  rule: "outdoors-only" | "engine-too-small",
  heater: Heater,
  installation?: Installation,
): KitRuleDocument {
  const { name, displacement_least_l, origins } = heater;
  if (rule === "outdoors-only") {
    return {
      ...{ rule, heater: name },
      text: `${name}: a burner never runs in a hangar (carbon monoxide, fire).`,
      source: CAUTIONS.carbonMonoxide.source,
    };
  }
  return {
    ...{ rule, heater: name },
    text: `${name}: for engines of ${displacement_least_l} l or more, this one has ${installation?.displacement_l} l.`,
    source: originOf(origins, "displacement_least_l"),
  };
}
