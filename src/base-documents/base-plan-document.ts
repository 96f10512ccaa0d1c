import type { BasePlan } from "../base-plan/index.js";
import { type BasePlanDocument, rounded } from "../documents/index.js";
import { finding } from "../findings/index.js";
import { JOULE_OF_KILOWATT_HOUR } from "../units/index.js";
import { aircraftRow } from "./base-plan-aircraft.js";
import { cautionsOf } from "./base-plan-cautions.js";
import { heatedHours, type Telling, tellingOf } from "./base-plan-telling.js";
import { circuitRow, taskRows } from "./base-plan-use.js";
import type { ReadBase } from "./base-reading.js";
import { liftsOf } from "./explanation.js";

/** A base plan as it is stored, exchanged and shown. */
export function basePlanDocument(plan: BasePlan, base: ReadBase): BasePlanDocument {
  const { limits, zone } = base;
  const telling = tellingOf(plan, base);
  const missed = plan.aircraft.filter((one) => one.missed).length;
  const aircraft = plan.aircraft.map((one) => aircraftRow(one, telling));
  const tasks = taskRows(telling);
  return {
    soakline: 2,
    kind: "base-plan",
    name: base.name,
    start: telling.stamp(0),
    zone,
    hours: base.document.hours,
    members: base.ensemble.members,
    status: missed === 0 ? "all-ready" : "missed",
    message: messageOf(telling),
    joint_chance: plan.jointChance,
    aircraft,
    circuits: limits.circuits.map((_, index) => circuitRow(index, telling)),
    tasks,
    lifts: liftRows(telling),
    not_planned: [...base.parked.map((p) => p.name), ...base.notPlanned],
    totals: {
      missed,
      heater_h: sum(aircraft.map((r) => r.heater_h)),
      wet_h: sum(aircraft.map((r) => r.wet_h)),
      energy_kwh: sum(aircraft.map((r) => r.energy_kwh.p50)),
      tasks: tasks.filter((t) => t.by === "base").length,
    },
    alone_totals: {
      missed: plan.aircraft.filter(({ alone }) => alone.missed).length,
      heater_h: sum(plan.aircraft.map(({ alone }) => heatedHours(alone))),
      energy_kwh: sum(plan.aircraft.map(({ alone }) => alone.energy / JOULE_OF_KILOWATT_HOUR)),
    },
    assumptions: [...base.assumptions],
    warnings: [...base.warnings],
    cautions: cautionsOf(plan, limits),
  };
}

function messageOf({ plan, moment }: Telling): BasePlanDocument["message"] {
  const missed = plan.aircraft.filter((one) => one.missed);
  if (missed.length === 0) return null;
  return finding("base-unsure", {
    missed: missed.map(({ aircraft: { name, plan: own } }) => ({
      aircraft: name,
      at: moment(own.wish.departure),
    })),
  });
}

/** What would let more aircraft be ready. */
function liftRows({ plan, limits, stamp }: Telling): BasePlanDocument["lifts"] {
  return plan.lifts.map(({ changes, rescues }) => ({
    text: liftsOf(changes, limits),
    rescues: rescues.map(({ aircraft, chance, course }) => ({
      id: plan.aircraft[aircraft].aircraft.id,
      name: plan.aircraft[aircraft].aircraft.name,
      chance,
      plug_in: course.blocks[0] === undefined ? null : stamp(course.blocks[0].from),
    })),
  }));
}

const sum = (values: readonly number[]) =>
  rounded(
    values.reduce((s, v) => s + v, 0),
    3,
  );
