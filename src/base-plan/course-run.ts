import type { Heater, Kit } from "../aircraft/index.js";
import type { PlanRequest } from "../planning/index.js";
import { temperatureCriteria } from "../readiness/index.js";
import type { Scenario, TimedChange } from "../simulation/index.js";
import type { Course } from "./candidate.js";
import type { BaseLimits } from "./limits.js";
import type { BaseAircraft } from "./request.js";

/** The aircraft's request with a cart's heater in its kit and used beside its own. */
export function withCart({ plan }: BaseAircraft, limits: BaseLimits, cart: number | undefined): PlanRequest {
  if (cart === undefined) return plan;
  const { heater } = limits.carts[cart];
  const { kit, installation } = plan.scenario;
  const heaters = withoutOtherDucts(kit, plan.heaters, heater);
  const surfaces = temperatureCriteria(installation, { heaters: [heater], covers: [] }).filter(
    (c) => c.judged === "while-heating",
  );
  const own = kit.heaters.filter(
    (h) => h.id !== heater.id && (h.duct === undefined || heater.duct === undefined),
  );
  return {
    ...plan,
    criteria: [...plan.criteria.filter((c) => !surfaces.some((s) => s.id === c.id)), ...surfaces],
    heaters,
    scenario: { ...plan.scenario, kit: { ...kit, heaters: [...own, heater] } },
  };
}

/** Heaters that go with a cart's: the network joins one duct to the cowl, so a cart's takes the place of the aircraft's own. */
export function withoutOtherDucts(kit: Kit, used: readonly string[], cart: Heater): string[] {
  const own = kit.heaters.filter(
    (h) => h.id !== cart.id && (h.duct === undefined || cart.duct === undefined),
  );
  return [...used.filter((id) => own.some((h) => h.id === id)), cart.id];
}

/** All changes of a course, in no order: the scenario's own, the plan's, and making ready to start. */
export function changesOf(
  { scenario, wish }: PlanRequest,
  { blocks, heaters, stay }: Pick<Course, "blocks" | "heaters" | "stay">,
  limits: BaseLimits,
): TimedChange[] {
  const changes: TimedChange[] = [...scenario.events];
  const atStart = [...scenario.initial.configuration.heatersOn];
  if (atStart.length > 0) changes.push({ at: 0, change: { do: "unplug", heaters: atStart } });
  for (const { from, to } of blocks) {
    changes.push({ at: from, change: { do: "plug-in", heaters } });
    changes.push({ at: to, change: { do: "unplug", heaters } });
  }
  if (stay !== undefined) {
    const moveTime = limits.hangar?.moveTime ?? 0;
    // On the way it is counted as outside: the colder of the two.
    if (stay.from !== undefined)
      changes.push({ at: stay.from + moveTime, change: { do: "move", to: "hangar" } });
    changes.push({ at: stay.to, change: { do: "move", to: "ramp" } });
  }
  const covers = scenario.kit.covers.map((c) => c.id);
  changes.push({ at: wish.departure - wish.coverOffBefore, change: { do: "cover-off", covers } });
  return changes;
}

/** A scenario with everything a course does among its events, so that it can be played or judged as it stands. */
export function playedScenario(plan: PlanRequest, course: Course, limits: BaseLimits): Scenario {
  return { ...plan.scenario, events: changesOf(plan, course, limits) };
}
