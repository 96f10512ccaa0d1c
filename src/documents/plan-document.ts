import { elementPart, type Heater, heaterBasis } from "../aircraft/index.js";
import { type Band, bandOf } from "../numerics/index.js";
import type { ChanceAt, HeatingImpact, Plan, ReadyWindow, StayWarm } from "../planning/index.js";
import type { AircraftScenario, DrawnScenario, WishWithHeaters } from "../scenario/index.js";
import { heatersUsed } from "../scenario/index.js";
import { configurationAt, partTemps, type TimedChange, timelineOf } from "../simulation/index.js";
import type { StartBriefing } from "../starting/index.js";
import { celsiusFromKelvin, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { answerDocument, kwh } from "./answer-document.js";
import { courseDocument } from "./course-document.js";
import { firstCautions } from "./first-cautions.js";
import { happeningsOf, headerOf, rounded, stampOf } from "./result-header.js";
import type { PlanDocument, StampDocument } from "./result-schema.js";
import { startDocument } from "./start-document.js";

/** What goes with a plan: all that is done, and what to know at the start. */
export interface BesidePlan {
  readonly changes: readonly TimedChange[];
  readonly briefing: StartBriefing;
}

/** A plan as it is stored, exchanged and shown. */
export function planDocument(
  plan: Plan,
  want: WishWithHeaters,
  context: DrawnScenario,
  { changes, briefing: found }: BesidePlan,
): PlanDocument {
  const { read } = context;
  const at = (t: number) => stampOf(read, t);
  const { kit } = read.scenario;
  const listed = listedHeaters(plan, want);
  const used = kit.heaters.filter((h) => listed.includes(h.id));
  const running = runningHeaters(plan, want, read);
  const heaters = used.map((heater) => heaterDocument(heater, plan));
  const briefing = startDocument(found);
  const { coversOn } = configurationAt(
    timelineOf(read.scenario.initial.configuration, read.scenario.events),
    plan.coverOff,
  );
  return {
    ...headerOf(context, running),
    kind: "plan",
    ...answerDocument(plan, want.wish.chance, read),
    heaters,
    first_cautions: firstCautions(
      kit.heaters.filter((h) => running.includes(h.id)),
      heaters,
      briefing,
      coversOn.size > 0,
    ),
    start_within_min: startWithin(plan),
    start_briefing: briefing,
    window: windowDocument(plan.window, at),
    covered_window: windowDocument(plan.coveredWindow, at),
    quarter_more:
      plan.quarterMore === undefined
        ? null
        : { chance: plan.quarterMore.chance, warm_chance: plan.quarterMore.warmChance },
    stay_warm: { covered: stay(plan.stayWarm.covered), uncovered: stay(plan.stayWarm.uncovered) },
    curve: plan.curve.map((entry) => chanceAt(entry, at)),
    late: plan.late.map((entry) => ({ late_by_h: entry.lateBy / SECONDS_OF_HOUR, ...chanceAt(entry, at) })),
    habits: plan.habits.map((entry) => ({
      lead_h: entry.lead / SECONDS_OF_HOUR,
      ...chanceAt(entry, at),
      energy_kwh: kwh(entry.energy),
    })),
    toll:
      plan.toll === undefined
        ? null
        : { planned: tollDocument(plan.toll.planned, read), left_on: tollDocument(plan.toll.leftOn, read) },
    remedies: plan.remedies.map(({ text, attended, chance, plugIn }) => ({
      text,
      attended,
      chance,
      plug_in: plugIn === undefined ? null : at(plugIn),
    })),
    happenings: happeningsOf(read, changes),
    course: courseDocument(plan.course, context),
  };
}

/** Heaters that the plan may use, and those it leaves on. */
function listedHeaters({ barred, heating }: Plan, { heaters }: WishWithHeaters): string[] {
  const kept = heating?.staysOn ? heating.heaters.map(({ id }) => id) : [];
  return [...heaters.filter((id) => !barred.some(({ heater }) => heater.id === id)), ...kept];
}

/** Heaters that are on at some time: by the plan or by what it leaves to choose, now, or by the scenario's own events. */
function runningHeaters(plan: Plan, want: WishWithHeaters, { scenario }: AircraftScenario): string[] {
  const { lines } = plan;
  const isPluggedIn = [plan, lines.least, lines.warmThrough].some(({ plugIn }) => plugIn !== undefined);
  const now = plan.heating?.heaters.map(({ id }) => id) ?? [];
  return [...(isPluggedIn ? listedHeaters(plan, want) : []), ...now, ...heatersUsed(scenario)];
}

function heaterDocument(heater: Heater, plan: Plan): PlanDocument["heaters"][number] {
  const { id, name, attended, least_on_h, longest_on_h, procedure } = heater;
  return {
    id,
    name,
    basis: heaterBasis(heater),
    attended,
    least_on_h,
    longest_on_h,
    procedure: procedure === undefined ? null : { ...procedure, steps: [...procedure.steps] },
    surfaces: heater.elements.map((element) => ({
      name: element.name,
      ...hottest(plan, elementPart(id, element.name)),
      limit_c: element.surface_max_c,
    })),
  };
}

/** Hottest that a part gets while it is heated, over the course. */
function hottest({ course }: Plan, part: string): { p50_c: number; p95_c: number } {
  const bands = Array.from(course.time.keys(), (s) => bandOf(partTemps(course, part, s)));
  const most = (pick: (band: Band) => number) => rounded(celsiusFromKelvin(Math.max(...bands.map(pick))), 0);
  return { p50_c: most((band) => band.mid), p95_c: most((band) => band.high) };
}

/** [min] from covers off to the end of the time in which it may be started; null where there is none. */
function startWithin({ window, coverOff }: Plan): number | null {
  if (window === undefined) return null;
  return Math.floor((window.closes.sure - coverOff) / SECONDS_OF_MINUTE);
}

function windowDocument(window: ReadyWindow | undefined, at: (t: number) => StampDocument) {
  if (window === undefined) return null;
  const { opens, closes } = window;
  // To the whole minute inside: a minute is not given away at either end.
  const up = (t: number) => at(SECONDS_OF_MINUTE * Math.ceil(t / SECONDS_OF_MINUTE));
  const down = (t: number) => at(SECONDS_OF_MINUTE * Math.floor(t / SECONDS_OF_MINUTE));
  return {
    opens: { sure: up(opens.sure), half: up(opens.half) },
    closes: { sure: down(closes.sure), half: down(closes.half) },
  };
}

function chanceAt({ plugIn, chance, warmChance }: ChanceAt, at: (t: number) => StampDocument) {
  return { plug_in: at(plugIn), chance, warm_chance: warmChance };
}

function tollDocument(
  toll: HeatingImpact,
  read: AircraftScenario,
): NonNullable<PlanDocument["toll"]>["planned"] {
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
