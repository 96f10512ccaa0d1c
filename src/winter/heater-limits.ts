import { CAUTIONS, type Kit, originOf } from "../aircraft/index.js";
import type { KitRuleDocument, ReadWinter } from "../documents/index.js";
import { finding, findingOf } from "../findings/index.js";
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
    const { name, runs, displacement_least_l, origins } = heater;
    if (runs === "outdoors" && place === "hangar") {
      const text = finding("rule-outdoors-only", { heater: name });
      return [{ rule: "outdoors-only", heater: name, text, source: CAUTIONS.carbonMonoxide.source }];
    }
    if (displacement_least_l === undefined || !isTooSmall(installation, heater)) return [];
    const values = { heater: name, least_l: displacement_least_l, engine_l: installation.displacement_l };
    const text = finding("rule-engine-too-small", values);
    const source = originOf(origins, "displacement_least_l");
    return [{ rule: "engine-too-small", heater: name, text, source }];
  });
}

/** Why a kit is compared and never recommended: makers reject one of its heaters. */
export function rejectionsOf({ heaters }: Kit): KitRuleDocument[] {
  return heaters.flatMap(({ name, rejected }): KitRuleDocument[] =>
    rejected === undefined
      ? []
      : [{ rule: "rejected", heater: name, text: findingOf(rejected), source: rejected.source }],
  );
}

/** A habit that keeps a heater on longer than its record allows. @param on [s] longest in one go */
export function overLongest({ heaters }: Kit, on: number): KitRuleDocument[] {
  return heaters
    .filter((heater) => on > heater.longest_on_h * SECONDS_OF_HOUR + 1)
    .map((heater) => ({
      rule: "longest-on",
      heater: heater.name,
      text: finding("rule-longest-on", {
        heater: heater.name,
        on_h: Math.round(on / SECONDS_OF_HOUR),
        longest_on_h: heater.longest_on_h,
      }),
      source: originOf(heater.origins, "longest_on_h"),
    }));
}

/** Nothing ends always on: one flight that falls away, and any heater is over its longest time. */
export const ALWAYS_ON: KitRuleDocument = {
  rule: "always-on",
  heater: "",
  text: finding("rule-always-on", {}),
  source: "project judgement",
};
