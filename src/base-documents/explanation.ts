import type {
  AircraftCourse,
  BaseLimits,
  BasePlan,
  Cause,
  LimitChange,
  Obstacle,
} from "../base-plan/index.js";
import { odds } from "../units/index.js";

/** How times [s since the start] are shown. */
export type ClockText = (t: number) => string;

/** Why an aircraft does what it does, in sentences. */
export function explanationOf(
  plan: BasePlan,
  one: AircraftCourse,
  limits: BaseLimits,
  clock: ClockText,
): string[] {
  const { cause, missed } = one;
  const lines: string[] = [];
  if (missed) lines.push(...missedText(plan, one, limits, clock));
  else if (cause !== undefined) {
    lines.push(`${doingOf(one, clock)} ${causeText(plan, cause, limits, clock)}.`);
  } else lines.push(contentText(one, clock));
  return lines;
}

function causeText(plan: BasePlan, cause: Cause, limits: BaseLimits, clock: ClockText): string {
  return cause.limits.map((o) => obstacleText(plan, o, limits, clock)).join(", and ");
}

/** Chances that are apart by less are told as one. */
const ALIKE = 0.05;

/** The true reason: what it could do with the base to itself, and what of that others take. */
function missedText(
  plan: BasePlan,
  { aircraft, alone, cause, played, course }: AircraftCourse,
  limits: BaseLimits,
  clock: ClockText,
): string[] {
  const { name, plan: own } = aircraft;
  const at = clock(own.wish.departure);
  const hot = played.verdict.tooHot[0];
  if (course.blocks.length > 0 && hot !== undefined) {
    return [`${name} is not ready for ${at}: ${hot.criterion.title} would get too hot.`];
  }
  if (!alone.missed && cause !== undefined) {
    return [`${name} is not ready for ${at} ${causeText(plan, cause, limits, clock)}.`];
  }
  const weakest = played.verdict.weakest.criterion.title;
  const why =
    own.heaters.length === 0
      ? `${name} is not ready for ${at}: it has no heater to use.`
      : `${name} is not ready for ${at}: its own heat is not enough, even with the base to itself: at best ${odds(alone.chance)}. Weakest point: ${weakest}.`;
  if (cause === undefined || alone.chance - played.chance < ALIKE) return [why];
  const less = causeText(plan, cause, limits, clock);
  return [why, `Now ${odds(played.chance)}, ${less}.`];
}

/** Nothing better is to be had: because it has the best, or something as good as that. */
function contentText({ aircraft: { name }, course, alone }: AircraftCourse, clock: ClockText): string {
  const [first] = course.blocks;
  if (first === undefined) {
    return course.stay === undefined
      ? `${name}: heat is not required.`
      : `${name} is warm enough in the hangar, without its heater.`;
  }
  const same =
    course.blocks.length === alone.blocks.length &&
    course.blocks.every((b, i) => b.from === alone.blocks[i].from && b.to === alone.blocks[i].to);
  return same
    ? `${name} does what it would do with the base to itself; nobody is in its way.`
    : `${name} is heated from ${clock(first.from)}, which costs it no more than what it would do with the base to itself.`;
}

/** "Wren waits until 04:10", ...: what differs from what it would do. */
function doingOf({ aircraft, course, alone }: AircraftCourse, clock: ClockText): string {
  const { name } = aircraft;
  const first = course.blocks[0]?.from;
  const ideal = alone.blocks[0]?.from;
  if (course.stay !== undefined && course.stay.from !== undefined) {
    return `${name} goes into the hangar at ${clock(course.stay.from)}`;
  }
  if (course.stay !== undefined && course.stay.to < (alone.stay?.to ?? 0)) {
    return `${name} leaves the hangar at ${clock(course.stay.to)}`;
  }
  if (course.blocks.length > 1) return `${name} is heated in turns`;
  if (first === undefined) return `${name} stays as it is`;
  const last = course.blocks[course.blocks.length - 1].to;
  if (ideal === undefined) return `${name} is heated from ${clock(first)}`;
  if (first > ideal) return `${name} waits until ${clock(first)}`;
  if (first < ideal) {
    const until = last < (alone.blocks.at(-1)?.to ?? last) ? `, until ${clock(last)},` : "";
    return `${name} is heated already from ${clock(first)}${until}`;
  }
  return `${name} is heated from ${clock(first)} to ${clock(last)}`;
}

function obstacleText(
  { aircraft }: BasePlan,
  { resource, from, to, capacity, wanted, holders, parked }: Obstacle,
  limits: BaseLimits,
  clock: ClockText,
): string {
  const names = [...holders.map((i) => aircraft[i].aircraft.name), ...parked.map((p) => p.name)];
  const who = listed(names);
  const has = names.length === 1 ? "has" : "have";
  const span = `from ${clock(from)} to ${clock(to)}`;
  switch (resource.of) {
    case "outlet": {
      const { name, outlets } = limits.circuits[resource.index];
      const what = outlets === 1 ? `the outlet of ${name}` : `the ${outlets} outlets of ${name}`;
      return names.length === 0 ? `because ${name} has no outlet` : `because ${who} ${has} ${what} ${span}`;
    }
    case "current": {
      const { name } = limits.circuits[resource.index];
      if (capacity === 0) return `because ${name} does not run ${span}`;
      const beside = names.length === 0 ? "" : ` with ${who}`;
      return `because ${name} would carry ${wanted.toFixed(1)} A${beside} ${span}, where ${capacity.toFixed(1)} A may be planned`;
    }
    case "bay":
      return names.length === 0
        ? "because there is no bay"
        : `because ${who} ${has} the ${limits.hangar?.bays === 1 ? "bay" : "bays"} ${span}`;
    case "cart":
      return `because ${who} ${has} ${limits.carts[resource.index].id} ${span}`;
    case "people":
      if (capacity === 0) return `because nobody is there ${span}`;
      return names.length === 0
        ? `because it takes ${wanted} people ${span}, where ${capacity} ${capacity === 1 ? "is" : "are"} there`
        : `because ${who} ${names.length === 1 ? "takes" : "take"} who is there ${span}`;
  }
}

/** What was lifted: "a third outlet on Ramp". */
export function liftText(change: LimitChange, limits: BaseLimits): string {
  switch (change.of) {
    case "outlet":
      return `outlet number ${change.to} on ${limits.circuits[change.circuit].name}`;
    case "breaker":
      return `${change.to} A on ${limits.circuits[change.circuit].name} (an electrician decides whether its wiring bears that)`;
    case "generator-hours":
      return `${limits.circuits[change.circuit].name} running all the time`;
    case "bay":
      return `bay number ${change.to} in the hangar`;
    case "cart":
      return `another ${limits.carts[change.cart].heater.name}`;
    case "people":
      return "somebody there at all hours";
  }
}

function listed(names: readonly string[]): string {
  return names.length < 2
    ? names.join("")
    : `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;
}
