import { type ScenarioOptions, scenarioOf } from "../base/index.js";
import type { PlanDocument } from "../documents/index.js";
import { finding } from "../findings/index.js";
import type { BaseState, WantedDeparture } from "../logbook/index.js";
import { planFor } from "./plan.js";
import { completed, type Outcome, refusedFor, type Watched } from "./question.js";

export type PlanOptions = Watched &
  Pick<ScenarioOptions, "now" | "estimate" | "members"> & {
    readonly departure?: WantedDeparture | undefined;
  };

export type BasePlanned = Outcome<{ readonly plan: PlanDocument; readonly departure: WantedDeparture }>;

/** The plan of one aircraft for a departure wanted, by default the soonest ahead. */
export function planOf(
  state: BaseState,
  aircraftId: string,
  { onProgress, ...options }: PlanOptions,
): BasePlanned {
  const found = scenarioOf(state, aircraftId, { ...options, from: "now" });
  if (!found.ok) return refusedFor(found.reason);
  const { departure } = found;
  if (departure === undefined) return refusedFor(finding("no-departure-wanted", {}));
  const outcome = planFor(found.aircraft, { onProgress });
  return outcome.status === "completed" ? completed({ plan: outcome.result, departure }) : outcome;
}

/** The plans of all aircraft of a base that are wanted; those that cannot be planned say why. */
export function plansFor(
  state: BaseState,
  {
    estimates,
    ...options
  }: Omit<PlanOptions, "departure" | "estimate"> & {
    readonly estimates?: ReadonlyMap<string, NonNullable<PlanOptions["estimate"]>>;
  },
): ReadonlyMap<string, BasePlanned> {
  const wanted = [...state.aircraft.values()].filter(({ departures }) =>
    departures.some(({ departure }) => departure > options.now),
  );
  return new Map(
    wanted.map(({ setUp: { id } }) => [id, planOf(state, id, { ...options, estimate: estimates?.get(id) })]),
  );
}
