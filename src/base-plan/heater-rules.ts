import type { Heater } from "../aircraft/index.js";
import { SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import type { Block, Course } from "./candidate.js";

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

/** Where a course stands and when it is wanted. */
export interface RuledCourse {
  readonly course: Pick<Course, "blocks" | "stay">;
  /** [s] */
  readonly departure: number;
  /** Its heaters are on at the start: how long they have been is not known, so the shortest times do not hold for that. */
  readonly isOn: boolean;
  /** [s] to move it into or out of the hangar. */
  readonly moveTime: number;
}

/** Whether the heaters of a course are on, at every time, only as long and where they may be. */
export function keepsRules(rules: HeaterRules, { course, departure, isOn, moveTime }: RuledCourse): boolean {
  const { blocks, stay } = course;
  const last = blocks.at(-1);
  if (last === undefined) return true;
  const fromStart = isOn && blocks[0].from === 0;
  const length = ({ from, to }: Block) => to - from;
  const within = (block: Block, i: number) =>
    length(block) <= rules.longest && (length(block) >= rules.leastAtOnce || (fromStart && i === 0));
  const inAll = blocks.reduce((sum, block) => sum + length(block), 0);
  const inside = (block: Block) =>
    stay !== undefined && block.to > (stay.from ?? 0) && block.from < stay.to + moveTime;
  return (
    blocks.every(within) &&
    (inAll >= rules.leastInAll || fromStart) &&
    departure - last.to >= rules.pause &&
    !(rules.outdoors && blocks.some(inside))
  );
}
