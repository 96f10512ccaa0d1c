import type { Caution } from "../aircraft/index.js";
import type { BaseLimits, BasePlan } from "../base-plan/index.js";
import { eachOnce } from "../findings/index.js";
import { BASE_CAUTIONS } from "./cautions.js";

/** What the heaters and covers in use ask for, and what sharing power, moving aircraft and generators do; each once. */
export function cautionsOf({ aircraft }: BasePlan, limits: BaseLimits): Caution[] {
  const used = aircraft.flatMap(({ course, holder }) =>
    (course.blocks.length === 0 ? [] : course.heaters).flatMap((id) => holder.heaters.get(id) ?? []),
  );
  const watched = used.filter((h) => h.attended);
  const covers = aircraft.flatMap(({ aircraft: { plan } }) =>
    plan.scenario.kit.covers.filter((c) => plan.scenario.initial.configuration.coversOn.has(c.id)),
  );
  const onGenerator = aircraft.some(
    ({ course }) => course.circuit !== undefined && limits.circuits[course.circuit].generator,
  );
  // What can kill comes first: the first screen shows two or three.
  const all = [
    ...watched.flatMap((h) => h.cautions),
    ...(onGenerator ? [BASE_CAUTIONS.generator] : []),
    ...(aircraft.some(({ course }) => course.stay !== undefined) ? [BASE_CAUTIONS.moving] : []),
    ...(used.length > 0 ? [BASE_CAUTIONS.circuit] : []),
    ...used.flatMap((h) => [...(h.rejected === undefined ? [] : [h.rejected]), ...h.cautions]),
    ...covers.flatMap((c) => c.cautions),
  ];
  return eachOnce(all);
}
