import { type AircraftCourse, type BaseLimits, manualTasksOf, timeOf } from "../base-plan/index.js";
import { type BasePlanDocument, rounded } from "../documents/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import type { Telling } from "./base-plan-telling.js";

/** What people have to do, in the order of time. */
export function taskRows({ plan, limits, stamp }: Telling): BasePlanDocument["tasks"] {
  const all = plan.aircraft.flatMap((one) =>
    manualTasksOf(one.course, one.holder, limits, plan.grid).map((task) => ({ one, task })),
  );
  return all
    .sort((a, b) => a.task.at - b.task.at)
    .map(({ one, task }) => ({
      ...stamp(task.at),
      do: task.do.replace("-", "_") as BasePlanDocument["tasks"][number]["do"],
      aircraft: one.aircraft.id,
      where: whereOf(one, task.do, limits),
      by: task.byPilot ? "crew" : "base",
    }));
}

/** Load of a circuit, constant between its times. */
export function circuitRow(index: number, { plan, limits }: Telling): BasePlanDocument["circuits"][number] {
  const { grid } = plan;
  const circuit = limits.circuits[index];
  const amps = new Float64Array(grid.steps);
  const outlets = new Float64Array(grid.steps);
  for (const { resource, from, to, amount } of plan.aircraft.flatMap((one) => one.demands)) {
    if (resource.index !== index) continue;
    const row = resource.of === "current" ? amps : resource.of === "outlet" ? outlets : undefined;
    for (let k = from; k < to && row !== undefined; k++) row[k] += amount;
  }
  const kept = [...amps.keys()].filter(
    (k) => k === 0 || amps[k] !== amps[k - 1] || outlets[k] !== outlets[k - 1],
  );
  return {
    id: circuit.id,
    name: circuit.name,
    breaker_a: circuit.breaker,
    limit_a: rounded(circuit.currentMost, 3),
    outlets: circuit.outlets,
    generator: circuit.generator,
    time_h: kept.map((k) => rounded(timeOf(grid, k) / SECONDS_OF_HOUR, 4)),
    load_a: kept.map((k) => rounded(amps[k], 2)),
    outlets_used: kept.map((k) => outlets[k]),
    most_a: rounded(Math.max(...amps), 2),
  };
}

function whereOf({ course, holder }: AircraftCourse, task: string, limits: BaseLimits): string {
  if (task.startsWith("move")) return "hangar";
  if (course.cart !== undefined) return limits.carts[course.cart].id;
  const circuit = course.circuit ?? holder.connected;
  return circuit === undefined ? course.heaters.join(", ") : limits.circuits[circuit].name;
}
