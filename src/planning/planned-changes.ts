import { configurationAt, type Scenario, type TimedChange, timelineOf } from "../simulation/index.js";
import type { Plan } from "./plan.js";
import type { Wish } from "./request.js";

/** What a plan adds to what happens anyway, with that, in the order it was decided. */
export function plannedChanges(
  plan: Pick<Plan, "barred" | "heating" | "plugIn" | "unplug" | "coverOff">,
  { wish, heaters }: { readonly wish: Wish; readonly heaters: readonly string[] },
  { initial: { configuration }, events }: Scenario,
): TimedChange[] {
  const changes: TimedChange[] = [];
  const changed = (at: number, change: TimedChange["change"]) => changes.push({ at, change });
  if (plan.heating?.staysOn === false) {
    changed(0, { do: "unplug", heaters: plan.heating.heaters.map(({ id }) => id) });
  }
  changes.push(...events);
  const barred = plan.barred.map(({ heater }) => heater.id);
  const used = heaters.filter((id) => !barred.includes(id));
  if (plan.plugIn !== undefined) changed(plan.plugIn, { do: "plug-in", heaters: used });
  const on = configurationAt(timelineOf(configuration, changes), plan.unplug).heatersOn;
  if (on.size > 0) changed(plan.unplug, { do: "unplug", heaters: [...on] });
  const covers = [...configurationAt(timelineOf(configuration, events), plan.coverOff).coversOn];
  if (covers.length > 0) changed(plan.coverOff, { do: "cover-off", covers });
  if (wish.pulledOut) changed(plan.coverOff, { do: "move", to: "ramp" });
  return changes;
}
