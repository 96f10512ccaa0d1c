import {
  type AircraftCourse,
  type BaseLimits,
  type Course,
  connectionsOf,
  currentOf,
} from "../base-plan/index.js";
import { type BasePlanDocument, rounded } from "../documents/index.js";
import { SECONDS_OF_MINUTE } from "../units/index.js";
import { heatedHours, hours, kwh, type Telling } from "./base-plan-telling.js";
import { explanationOf } from "./explanation.js";

type AircraftRow = BasePlanDocument["aircraft"][number];

/** What is done for one aircraft, with what chance, and why. */
export function aircraftRow(one: AircraftCourse, telling: Telling): AircraftRow {
  const { plan, limits, stamp, moment } = telling;
  const { aircraft, course, played, holder, alone } = one;
  const isHeated = course.blocks.length > 0;
  const used = isHeated ? course.heaters.flatMap((id) => holder.heaters.get(id) ?? []) : [];
  return {
    id: aircraft.id,
    name: aircraft.name,
    status: one.missed ? "missed" : "ready",
    ...readiness(one, telling),
    somebody_stays: used.some((h) => h.attended),
    too_hot: isHeated ? played.verdict.tooHot.map((v) => v.criterion.title) : [],
    ...heatEnds(course, telling),
    heat: course.blocks.map(({ from, to }) => ({ from: stamp(from), to: stamp(to) })),
    heaters: isHeated ? [...course.heaters] : [],
    ...placesOf(course, limits),
    connected: connectionsOf(course, holder, limits, plan.grid).map(({ from, to }) => ({
      from: stamp(from),
      to: stamp(to),
    })),
    current_a: rounded(currentOf(course, holder, limits), 2),
    hangar: hangarStay(course, telling),
    energy_kwh: {
      p05: kwh(played.energy.low),
      p50: kwh(played.energy.mid),
      p95: kwh(played.energy.high),
    },
    heater_h: heatedHours(course),
    wet_h: hours(one.wetTime),
    explanation: explanationOf(plan, one, limits, moment),
    cause: causes(one, telling),
    alone: { ...heatEnds(alone, telling), hangar: hangarStay(alone, telling), chance: alone.chance },
    told: told(one, telling),
  };
}

/** When it is to be ready, and with what chance it is. */
function readiness({ aircraft, played, missesWarm }: AircraftCourse, { stamp }: Telling) {
  const { wish } = aircraft.plan;
  const { chance, ready, startWithin } = played;
  const { weakest, warm } = played.verdict;
  return {
    departure: stamp(wish.departure),
    wanted_chance: wish.chance,
    chance,
    chance_error: rounded(Math.sqrt((chance * (1 - chance)) / ready.least.length), 4),
    aim: missesWarm ? "least" : "warm-through",
    warm_chance: warm.chance,
    weakest: weakest.criterion.title,
    weakest_chance: weakest.chance,
    warm_weakest: warm.weakest.criterion.title,
    cover_off: stamp(wish.departure - wish.coverOffBefore),
    start_within_min:
      startWithin === undefined ? null : Math.round((startWithin + wish.coverOffBefore) / SECONDS_OF_MINUTE),
  } satisfies Partial<AircraftRow>;
}

function placesOf({ circuit, cart }: Course, limits: BaseLimits) {
  return {
    circuit: circuit === undefined ? null : limits.circuits[circuit].id,
    cart: cart === undefined ? null : limits.carts[cart].id,
  };
}

function heatEnds({ blocks }: Course, { stamp }: Telling) {
  const last = blocks.at(-1);
  return {
    plug_in: blocks[0] === undefined ? null : stamp(blocks[0].from),
    unplug: last === undefined ? null : stamp(last.to),
  };
}

function hangarStay({ stay }: Course, { stamp }: Telling) {
  if (stay === undefined) return null;
  return { in: stay.from === undefined ? null : stamp(stay.from), out: stamp(stay.to) };
}

/** The limits that kept the wanted course from being taken, and who holds them. */
function causes({ cause }: AircraftCourse, { plan, limits, stamp }: Telling): AircraftRow["cause"] {
  return (cause?.limits ?? []).map((o) => ({
    limit: o.resource.of,
    where: placeOf(o.resource.of, o.resource.index, limits),
    from: stamp(o.from),
    to: stamp(o.to),
    capacity: rounded(Math.min(o.capacity, 1e6), 2),
    wanted: rounded(o.wanted, 2),
    held_by: [...o.holders.map((i) => plan.aircraft[i].aircraft.id), ...o.parked.map((p) => p.id)],
  }));
}

/** What a later plan is held to. */
function told({ aircraft, course }: AircraftCourse, telling: Telling): AircraftRow["told"] {
  const { stamp, limits } = telling;
  const stay = hangarStay(course, telling);
  return {
    id: aircraft.id,
    ...placesOf(course, limits),
    heat: course.blocks.map(({ from, to }) => ({ from: stamp(from).time, to: stamp(to).time })),
    hangar: stay === null ? null : { in: stay.in?.time ?? null, out: stay.out.time },
  };
}

function placeOf(of: string, index: number, limits: BaseLimits): string {
  if (of === "current" || of === "outlet") return limits.circuits[index].id;
  if (of === "cart") return limits.carts[index].id;
  return of === "bay" ? "hangar" : "people";
}
