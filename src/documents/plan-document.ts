import type { Band } from "../numerics/index.js";
import type { HabitToll, Plan, StayWarm } from "../planning/index.js";
import { configurationAt, type TimedChange, timelineOf } from "../simulation/index.js";
import { celsiusFromKelvin, JOULE_OF_KILOWATT_HOUR, SECONDS_OF_HOUR } from "../units/index.js";
import { courseDocument } from "./course-document.js";
import { criteriaDocument } from "./criterion-document.js";
import { happeningsOf, headerOf, type ResultContext, rounded, stampOf } from "./result-header.js";
import type { PlanDocument } from "./result-schema.js";
import type { ReadScenario } from "./scenario-reading.js";
import { startOfCourse } from "./start-document.js";
import type { WishWithHeaters } from "./wish-reading.js";

/** A plan as it is stored, exchanged and shown. */
export function planDocument(plan: Plan, want: WishWithHeaters, context: ResultContext): PlanDocument {
  const { read } = context;
  const at = (t: number) => stampOf(read, t);
  const stampBand = ({ low, mid, high }: Band) => ({ p05: at(low), p50: at(mid), p95: at(high) });
  const chanceAt = (entry: { readonly plugIn: number; readonly chance: number }) => ({
    plug_in: at(entry.plugIn),
    chance: entry.chance,
  });
  return {
    ...headerOf(context, want.heaters),
    kind: "plan",
    status: plan.status,
    message: plan.message,
    heat_needed: plan.heatNeeded,
    heaters: read.scenario.kit.heaters
      .filter((h) => want.heaters.includes(h.id))
      .map(({ id, name, attended, longest_on_h }) => ({ id, name, attended, longest_on_h })),
    plug_in: plan.plugIn === undefined ? null : at(plan.plugIn),
    unplug: at(plan.unplug),
    cover_off: at(plan.coverOff),
    departure: at(plan.departure),
    wanted_chance: want.wish.chance,
    chance: plan.chance,
    chance_error: rounded(plan.chanceError, 4),
    weakest: plan.verdict.weakest.criterion.id,
    criteria: criteriaDocument(plan.verdict),
    start_briefing: startOfCourse(plan.course, plan.departure, context),
    too_hot: plan.verdict.tooHot.map((v) => v.criterion.id),
    window:
      plan.window === undefined
        ? null
        : { opens: stampBand(plan.window.opens), closes: stampBand(plan.window.closes) },
    stay_warm: { covered: stay(plan.stayWarm.covered), uncovered: stay(plan.stayWarm.uncovered) },
    energy_kwh: { p05: kwh(plan.energy.low), p50: kwh(plan.energy.mid), p95: kwh(plan.energy.high) },
    curve: plan.curve.map(chanceAt),
    late: plan.late.map((entry) => ({ late_by_h: entry.lateBy / SECONDS_OF_HOUR, ...chanceAt(entry) })),
    habits: plan.habits.map((entry) => ({
      lead_h: entry.lead / SECONDS_OF_HOUR,
      ...chanceAt(entry),
      energy_kwh: kwh(entry.energy),
    })),
    toll:
      plan.toll === undefined
        ? null
        : { planned: tollDocument(plan.toll.planned, read), left_on: tollDocument(plan.toll.leftOn, read) },
    remedies: plan.remedies.map((entry) => ({ text: entry.text, ...chanceAt(entry) })),
    happenings: happeningsOf(read, plannedChanges(plan, want, read)),
    course: courseDocument(plan.course, context),
  };
}

/** What the plan adds to what happens anyway. */
export function plannedChanges(
  plan: Plan,
  { wish, heaters }: WishWithHeaters,
  { scenario }: ReadScenario,
): TimedChange[] {
  const before = configurationAt(timelineOf(scenario.initial.configuration, scenario.events), plan.coverOff);
  const covers = [...before.coversOn];
  const changes: TimedChange[] = [...scenario.events];
  if (plan.plugIn !== undefined) {
    changes.push({ at: plan.plugIn, change: { do: "plug-in", heaters } });
    changes.push({ at: plan.unplug, change: { do: "unplug", heaters } });
  }
  if (covers.length > 0) changes.push({ at: plan.coverOff, change: { do: "cover-off", covers } });
  if (wish.pulledOut) changes.push({ at: plan.coverOff, change: { do: "move", to: "ramp" } });
  return changes;
}

function tollDocument(toll: HabitToll, read: ReadScenario): NonNullable<PlanDocument["toll"]>["planned"] {
  return {
    plug_in: toll.plugIn === undefined ? null : stampOf(read, toll.plugIn),
    heater_h: rounded(toll.heaterTime / SECONDS_OF_HOUR, 3),
    energy_kwh: kwh(toll.energy),
    wet_h: rounded(toll.wetTime / SECONDS_OF_HOUR, 2),
    condensed_g: rounded(1000 * toll.condensed, 3),
    breather_frost_g: rounded(1000 * toll.breatherFrost, 3),
    hottest_surface_c:
      toll.hottestSurface === undefined ? null : rounded(celsiusFromKelvin(toll.hottestSurface), 1),
    hottest_film_c: rounded(celsiusFromKelvin(toll.hottestFilm), 1),
  };
}

function stay({ sure, median, horizon }: StayWarm) {
  const hours = (seconds: number) => rounded(seconds / SECONDS_OF_HOUR, 3);
  return { sure_h: hours(sure), median_h: hours(median), horizon_h: hours(horizon) };
}

function kwh(joules: number): number {
  return rounded(joules / JOULE_OF_KILOWATT_HOUR, 3);
}
