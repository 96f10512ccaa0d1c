import type { AircraftCourse, BaseLimits, BasePlan, LimitChange, Obstacle } from "../base-plan/index.js";
import { type BaseMoment, type Finding, finding } from "../findings/index.js";

/** A time [s since the start] as findings carry it. */
export type MomentOf = (t: number) => BaseMoment;

/** Why an aircraft does what it does. */
export function explanationOf(
  plan: BasePlan,
  one: AircraftCourse,
  limits: BaseLimits,
  moment: MomentOf,
): Finding[] {
  const causes = (one.cause?.limits ?? []).map((o) => obstacle(plan, o, limits, moment));
  if (one.missed) return missedBy(one, causes, moment);
  if (one.cause === undefined) return [content(one, moment)];
  return [finding("base-does", { doing: doingOf(one, moment), causes })];
}

/** Chances that are apart by less are told as one. */
const ALIKE = 0.05;

/** The true reason: what it could do with the base to itself, and what of that others take. */
function missedBy(
  { aircraft: { name: aircraft, plan: own }, alone, cause, played, course }: AircraftCourse,
  causes: readonly Finding[],
  moment: MomentOf,
): Finding[] {
  const at = moment(own.wish.departure);
  const hot = played.verdict.tooHot[0];
  if (course.blocks.length > 0 && hot !== undefined) {
    return [finding("base-too-hot", { aircraft, at, criterion: hot.criterion.title })];
  }
  if (!alone.missed && cause !== undefined) return [finding("base-held-off", { aircraft, at, causes })];
  const criterion = played.verdict.weakest.criterion.title;
  const why =
    own.heaters.length === 0
      ? finding("base-no-heater", { aircraft, at })
      : finding("base-short", { aircraft, at, chance: alone.chance, criterion });
  if (cause === undefined || alone.chance - played.chance < ALIKE) return [why];
  return [why, finding("base-even-less", { chance: played.chance, causes })];
}

/** Nothing better is to be had: because it has the best, or something as good as that. */
function content({ aircraft: { name: aircraft }, course, alone }: AircraftCourse, moment: MomentOf): Finding {
  const [first] = course.blocks;
  if (first === undefined) {
    return finding(course.stay === undefined ? "base-not-required" : "base-hangar-warm", { aircraft });
  }
  const same =
    course.blocks.length === alone.blocks.length &&
    course.blocks.every((b, i) => b.from === alone.blocks[i].from && b.to === alone.blocks[i].to);
  return same
    ? finding("base-unhindered", { aircraft })
    : finding("base-no-dearer", { aircraft, from: moment(first.from) });
}

/** What differs from what it would do. */
function doingOf({ aircraft: { name: aircraft }, course, alone }: AircraftCourse, moment: MomentOf): Finding {
  const first = course.blocks[0]?.from;
  const ideal = alone.blocks[0]?.from;
  if (course.stay?.from !== undefined) {
    return finding("does-go-in", { aircraft, at: moment(course.stay.from) });
  }
  if (course.stay !== undefined && course.stay.to < (alone.stay?.to ?? 0)) {
    return finding("does-come-out", { aircraft, at: moment(course.stay.to) });
  }
  if (course.blocks.length > 1) return finding("does-turns", { aircraft });
  if (first === undefined) return finding("does-nothing", { aircraft });
  const last = course.blocks[course.blocks.length - 1].to;
  const from = moment(first);
  if (ideal === undefined) return finding("does-heat-from", { aircraft, from });
  if (first > ideal) return finding("does-wait", { aircraft, until: from });
  if (first < ideal) {
    const until = last < (alone.blocks.at(-1)?.to ?? last) ? moment(last) : null;
    return finding("does-heat-early", { aircraft, from, until });
  }
  return finding("does-heat", { aircraft, from, to: moment(last) });
}

function obstacle(
  { aircraft }: BasePlan,
  { resource, capacity, wanted, ...held }: Obstacle,
  limits: BaseLimits,
  moment: MomentOf,
): Finding {
  const holders = [...held.holders.map((i) => aircraft[i].aircraft.name), ...held.parked.map((p) => p.name)];
  const who = { holders, from: moment(held.from), to: moment(held.to) };
  switch (resource.of) {
    case "outlet": {
      const { name, outlets } = limits.circuits[resource.index];
      return finding("because-outlet", { ...who, circuit: name, outlets });
    }
    case "current": {
      const { name } = limits.circuits[resource.index];
      return finding("because-current", {
        ...who,
        circuit: name,
        wanted_a: wanted,
        capacity_a: Math.min(capacity, 1e6),
      });
    }
    case "bay":
      return finding("because-bay", { ...who, bays: limits.hangar?.bays ?? 0 });
    case "cart":
      return finding("because-cart", { ...who, cart: limits.carts[resource.index].id });
    case "people":
      return finding("because-people", { ...who, wanted, capacity: Math.min(capacity, 1e6) });
  }
}

/** What was lifted. */
export function liftsOf(changes: readonly LimitChange[], limits: BaseLimits): Finding {
  const lifts = changes.map((change) => liftOf(change, limits));
  return lifts.length === 1 ? lifts[0] : finding("lift-all", { lifts });
}

function liftOf(change: LimitChange, limits: BaseLimits): Finding {
  switch (change.of) {
    case "outlet":
      return finding("lift-outlet", { circuit: limits.circuits[change.circuit].name, number: change.to });
    case "breaker":
      return finding("lift-breaker", { circuit: limits.circuits[change.circuit].name, current_a: change.to });
    case "generator-hours":
      return finding("lift-generator", { circuit: limits.circuits[change.circuit].name });
    case "bay":
      return finding("lift-bay", { number: change.to });
    case "cart":
      return finding("lift-cart", { heater: limits.carts[change.cart].heater.name });
    case "people":
      return finding("lift-people", {});
  }
}
