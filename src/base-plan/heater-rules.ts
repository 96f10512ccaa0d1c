import type { Heater } from "../aircraft/index.js";
import { REST } from "../planning/index.js";
import type { Block } from "../response/index.js";
import type { Scenario } from "../simulation/index.js";
import { SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import type { Course } from "./candidate.js";

/** What heaters that are used together allow; times [s]. The strictest of them counts. */
export interface HeaterRules {
  /** One of them burns fuel, or may else not run inside. */
  readonly outdoors: boolean;
  /** Somebody must stay beside one of them. */
  readonly attended: boolean;
  /** Longest in one go. */
  readonly longest: number;
  /** Shortest in one go: hot air that is cut short has warmed the skin only. */
  readonly leastAtOnce: number;
  /** Shortest in all. */
  readonly leastInAll: number;
  /** Between the end of heating and the start, for the heat to spread and for the checks. */
  readonly pause: number;
}

export function rulesOf(heaters: readonly Heater[]): HeaterRules {
  const blown = heaters.filter((h) => h.duct !== undefined);
  const most = (values: readonly number[]) => Math.max(0, ...values);
  return {
    outdoors: heaters.some((h) => h.runs === "outdoors"),
    attended: heaters.some((h) => h.attended),
    longest: SECONDS_OF_HOUR * Math.min(...heaters.map((h) => h.longest_on_h)),
    leastAtOnce: SECONDS_OF_HOUR * most(blown.map((h) => h.least_on_h)),
    leastInAll: SECONDS_OF_HOUR * most(heaters.map((h) => h.least_on_h)),
    pause: SECONDS_OF_MINUTE * most(heaters.map((h) => h.procedure?.pause_min ?? 0)),
  };
}

/**
 * [s] that heaters have been on when a scenario starts; undefined where they are off. What has been on for nobody knows how
 * long counts as on too long.
 */
export function onBefore({ initial }: Scenario): number | undefined {
  if (initial.configuration.heatersOn.size === 0) return undefined;
  return initial.heatedFor ?? Number.POSITIVE_INFINITY;
}

/** Where a course stands and when it is wanted. */
export interface RuledCourse {
  readonly course: Pick<Course, "blocks" | "stay">;
  /** [s] */
  readonly departure: number;
  /** [s] that its heaters have been on at the start; undefined where they are off. */
  readonly onFor: number | undefined;
  /** [s] to move it into or out of the hangar. */
  readonly moveTime: number;
}

/** Whether the heaters of a course are on, at every time, only as long and where they may be. */
export function keepsRules(rules: HeaterRules, { course, departure, onFor, moveTime }: RuledCourse): boolean {
  const { blocks, stay } = course;
  const last = blocks.at(-1);
  if (last === undefined) return true;
  // What is on at the start has been on: the shortest times are no reason to leave it on.
  const before = blocks[0].from === 0 ? onFor : undefined;
  const length = ({ from, to }: Block, i: number) => to - from + (i === 0 ? (before ?? 0) : 0);
  const within = (block: Block, i: number) =>
    length(block, i) <= rules.longest &&
    (length(block, i) >= rules.leastAtOnce || (before !== undefined && i === 0));
  const inAll = blocks.reduce((sum, block, i) => sum + length(block, i), 0);
  const inside = (block: Block) =>
    stay !== undefined && block.to > (stay.from ?? 0) && block.from < stay.to + moveTime;
  const [first] = blocks;
  const isTooSoon = first.from > 0 && first.from < REST && (onFor ?? 0) + last.to > rules.longest;
  return (
    !(onFor !== undefined && isTooSoon) &&
    blocks.every(within) &&
    (inAll >= rules.leastInAll || before !== undefined) &&
    departure - last.to >= rules.pause &&
    !(rules.outdoors && blocks.some(inside))
  );
}
