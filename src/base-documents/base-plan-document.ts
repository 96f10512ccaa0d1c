import type { Caution } from "../aircraft/index.js";
import type { AircraftCourse, BasePlan } from "../base-plan/index.js";
import {
  type BaseLimits,
  type Course,
  connectionsOf,
  currentOf,
  manualTasksOf,
  timeOf,
} from "../base-plan/index.js";
import { type BasePlanDocument, rounded } from "../documents/index.js";
import { eachOnce, finding } from "../findings/index.js";
import { JOULE_OF_KILOWATT_HOUR, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { localText } from "../weather/index.js";
import type { ReadBase } from "./base-reading.js";
import { BASE_CAUTIONS } from "./cautions.js";
import { explanationOf, liftsOf, type MomentOf } from "./explanation.js";

/** A base plan as it is stored, exchanged and shown. */
export function basePlanDocument(plan: BasePlan, base: ReadBase): BasePlanDocument {
  const { limits, zone, start } = base;
  const stamp = (t: number) => ({ at_h: rounded(t / SECONDS_OF_HOUR, 4), time: localText(start + t, zone) });
  const moment = momentOf(base);
  const missed = plan.aircraft.filter((one) => one.missed);
  const rows = plan.aircraft.map((one) => aircraftRow(one));
  const tasks = tasksOf();
  return {
    soakline: 2,
    kind: "base-plan",
    name: base.name,
    start: stamp(0),
    zone,
    hours: base.document.hours,
    members: base.ensemble.members,
    status: missed.length === 0 ? "all-ready" : "missed",
    message: messageOf(),
    joint_chance: plan.jointChance,
    aircraft: rows,
    circuits: limits.circuits.map((_, index) => circuitRow(index)),
    tasks,
    lifts: plan.lifts.map(({ changes, rescues }) => ({
      text: liftsOf(changes, limits),
      rescues: rescues.map(({ aircraft, chance, course }) => ({
        id: plan.aircraft[aircraft].aircraft.id,
        name: plan.aircraft[aircraft].aircraft.name,
        chance,
        plug_in: course.blocks[0] === undefined ? null : stamp(course.blocks[0].from),
      })),
    })),
    not_planned: [...base.parked.map((p) => p.name), ...base.notPlanned],
    totals: {
      missed: missed.length,
      heater_h: sum(rows.map((r) => r.heater_h)),
      wet_h: sum(rows.map((r) => r.wet_h)),
      energy_kwh: sum(rows.map((r) => r.energy_kwh.p50)),
      tasks: tasks.filter((t) => t.by === "base").length,
    },
    alone_totals: {
      missed: plan.aircraft.filter((one) => one.alone.missed).length,
      heater_h: sum(plan.aircraft.map((one) => hours(heatedTime(one.alone)))),
      energy_kwh: sum(plan.aircraft.map((one) => one.alone.energy / JOULE_OF_KILOWATT_HOUR)),
    },
    assumptions: [...base.assumptions],
    warnings: [...base.warnings],
    cautions: cautionsOf(plan, limits),
  };

  function messageOf(): BasePlanDocument["message"] {
    if (missed.length === 0) return null;
    return finding("base-unsure", {
      missed: missed.map(({ aircraft: { name, plan: own } }) => ({
        aircraft: name,
        at: moment(own.wish.departure),
      })),
    });
  }

  function aircraftRow(one: AircraftCourse): BasePlanDocument["aircraft"][number] {
    const { aircraft, course, played, holder, alone } = one;
    const { wish } = aircraft.plan;
    const { weakest, warm, tooHot } = played.verdict;
    const used =
      course.blocks.length === 0 ? [] : course.heaters.flatMap((id) => holder.heaters.get(id) ?? []);
    const circuit = course.circuit === undefined ? null : limits.circuits[course.circuit].id;
    const cart = course.cart === undefined ? null : limits.carts[course.cart].id;
    return {
      id: aircraft.id,
      name: aircraft.name,
      status: one.missed ? "missed" : "ready",
      departure: stamp(wish.departure),
      wanted_chance: wish.chance,
      chance: played.chance,
      chance_error: rounded(Math.sqrt((played.chance * (1 - played.chance)) / played.ready.least.length), 4),
      aim: one.missesWarm ? "least" : "warm-through",
      warm_chance: warm.chance,
      weakest: weakest.criterion.title,
      weakest_chance: weakest.chance,
      warm_weakest: warm.weakest.criterion.title,
      cover_off: stamp(wish.departure - wish.coverOffBefore),
      start_within_min:
        played.startWithin === undefined
          ? null
          : Math.round((played.startWithin + wish.coverOffBefore) / SECONDS_OF_MINUTE),
      somebody_stays: used.some((h) => h.attended),
      too_hot: course.blocks.length === 0 ? [] : tooHot.map((v) => v.criterion.title),
      ...heatEnds(course),
      heat: course.blocks.map(({ from, to }) => ({ from: stamp(from), to: stamp(to) })),
      heaters: course.blocks.length === 0 ? [] : [...course.heaters],
      circuit,
      cart,
      connected: connectionsOf(course, holder, limits, plan.grid).map(({ from, to }) => ({
        from: stamp(from),
        to: stamp(to),
      })),
      current_a: rounded(currentOf(course, holder, limits), 2),
      hangar: stayStamps(course),
      energy_kwh: {
        p05: kwh(played.energy.low),
        p50: kwh(played.energy.mid),
        p95: kwh(played.energy.high),
      },
      heater_h: hours(heatedTime(course)),
      wet_h: hours(one.wetTime),
      explanation: explanationOf(plan, one, limits, moment),
      cause: (one.cause?.limits ?? []).map((o) => ({
        limit: o.resource.of,
        where: placeOf(o.resource.of, o.resource.index, limits),
        from: stamp(o.from),
        to: stamp(o.to),
        capacity: rounded(Math.min(o.capacity, 1e6), 2),
        wanted: rounded(o.wanted, 2),
        held_by: [...o.holders.map((i) => plan.aircraft[i].aircraft.id), ...o.parked.map((p) => p.id)],
      })),
      alone: { ...heatEnds(alone), hangar: stayStamps(alone), chance: alone.chance },
      told: {
        id: aircraft.id,
        circuit,
        cart,
        heat: course.blocks.map(({ from, to }) => ({ from: stamp(from).time, to: stamp(to).time })),
        hangar:
          course.stay === undefined
            ? null
            : {
                in: course.stay.from === undefined ? null : stamp(course.stay.from).time,
                out: stamp(course.stay.to).time,
              },
      },
    };
  }

  function heatEnds({ blocks }: Course) {
    const last = blocks.at(-1);
    return {
      plug_in: blocks[0] === undefined ? null : stamp(blocks[0].from),
      unplug: last === undefined ? null : stamp(last.to),
    };
  }

  function stayStamps({ stay }: Course) {
    if (stay === undefined) return null;
    return { in: stay.from === undefined ? null : stamp(stay.from), out: stamp(stay.to) };
  }

  function tasksOf(): BasePlanDocument["tasks"] {
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

  /** Constant between its times. */
  function circuitRow(index: number): BasePlanDocument["circuits"][number] {
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
}

function momentOf({ start, zone, document }: ReadBase): MomentOf {
  return (t) => ({ time: localText(start + t, zone), within_day: document.hours <= 24 });
}

function whereOf({ course, holder }: AircraftCourse, task: string, limits: BaseLimits): string {
  if (task.startsWith("move")) return "hangar";
  if (course.cart !== undefined) return limits.carts[course.cart].id;
  const circuit = course.circuit ?? holder.connected;
  return circuit === undefined ? course.heaters.join(", ") : limits.circuits[circuit].name;
}

function placeOf(of: string, index: number, limits: BaseLimits): string {
  if (of === "current" || of === "outlet") return limits.circuits[index].id;
  if (of === "cart") return limits.carts[index].id;
  return of === "bay" ? "hangar" : "people";
}

/** What the heaters and covers in use ask for, and what sharing power, moving aircraft and generators do; each once. */
function cautionsOf({ aircraft }: BasePlan, limits: BaseLimits): Caution[] {
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

const sum = (values: readonly number[]) =>
  rounded(
    values.reduce((s, v) => s + v, 0),
    3,
  );
const hours = (seconds: number) => rounded(seconds / SECONDS_OF_HOUR, 3);
const kwh = (joules: number) => rounded(joules / JOULE_OF_KILOWATT_HOUR, 3);

function heatedTime({ blocks }: Course): number {
  return blocks.reduce((s, b) => s + b.to - b.from, 0);
}
