import { expect, test } from "vitest";
import type { Caution } from "../../src/aircraft/index.js";
import { CAUTIONS, type Heater, heaterById } from "../../src/aircraft/index.js";
import type { PlanDocument, ScenarioDocument } from "../../src/documents/index.js";
import { finding } from "../../src/findings/index.js";
import { planPreheat } from "../../src/planning/index.js";
import { planResult } from "../../src/questions/index.js";
import { allCriteria } from "../../src/readiness/index.js";
import { drawEnsemble } from "../../src/simulation/index.js";
import { START_CAUTIONS } from "../../src/starting/index.js";
import { english } from "../../src/words/index.js";
import { adviceOf, airOf, night, wantIn } from "./example-night.js";
import type { Advice } from "./heat-spans.js";
import { answerWithinLimits } from "./heater-rules.js";
import { readOf } from "./replay.js";
import { brokenRules, RULES } from "./rules.js";

// Each rule is broken on purpose, and is seen to be broken: a checker that cannot fail proves nothing.

const usual = adviceOf(night());

const hotAir = adviceOf(
  night({
    aircraft: "six-injected-300",
    kit: { heaters: ["ducted-fuel-12000"], covers: ["insulated-cover"] },
    want: wantIn(8, { unplug_before_min: 0, cover_off_before_min: 0 }),
  }),
);

/** The plan with something put in its place. */
function withPlan({ read, plan }: Advice, change: Partial<PlanDocument>): Advice {
  return { read, plan: { ...plan, ...change } };
}

function stampAt(at_h: number) {
  return { at_h, time: "" };
}

/** The plan with one happening moved, or taken out where no time is given. */
function withHappening({ plan }: Advice, done: string, at_h?: number): Pick<PlanDocument, "happenings"> {
  const happenings = plan.happenings.flatMap((h) =>
    h.do !== done ? [h] : at_h === undefined ? [] : [{ ...h, at_h }],
  );
  return { happenings: happenings.sort((a, b) => a.at_h - b.at_h) };
}

const told = (rule: string, advice: Advice) => RULES[rule](advice).join("; ");

test("whole plans of the product break nothing", () => {
  expect(usual.plan.status).toBe("ready");
  expect(brokenRules(usual)).toEqual([]);
  expect(hotAir.plan.status).toBe("ready");
  expect(brokenRules(hotAir)).toEqual([]);
});

test("a burner whose limits are lifted is seen to run in the hangar, too short and too long", () => {
  const lifted = { ...heaterById("ducted-fuel-12000"), runs: "anywhere" as const, longest_on_h: 24 };
  const inside = plannedWith(
    lifted,
    night({
      ...{ aircraft: "six-injected-300", place: "hangar" },
      kit: { heaters: ["ducted-fuel-12000"], covers: ["insulated-cover"] },
    }),
  );
  expect(inside.plan.plug_in).not.toBeNull();
  expect(told("heatersWithinLimits", inside)).toMatch(/in the hangar/);
  expect(told("heatersWithinLimits", inside)).toMatch(/with other limits/);
  const { unplug } = hotAir.plan;
  for (const [hours, text] of [
    [0.25, /at least 0.5 h/],
    [2.5, /at most 2 h/],
  ] as const) {
    const from = unplug.at_h - hours;
    const plan = { plug_in: stampAt(from), ...withHappening(hotAir, "plug_in", from) };
    expect(told("heatersWithinLimits", withPlan(hotAir, plan))).toMatch(text);
    expect(told("shownWithinLimits", withPlan(hotAir, { late: [{ ...lateAt(from) }] }))).toMatch(text);
    const answer = withPlan(hotAir, { plug_in: stampAt(from) });
    expect(answerWithinLimits(answer, answer.plan).join()).toMatch(text);
  }
});

/** The plan that is made where a heater's record is another one than the catalogue's. */
function plannedWith(heater: Heater, document: ScenarioDocument): Advice {
  const read = readOf(document);
  const { scenario, want, limits, ensemble } = read;
  if (want === undefined) throw new Error("nothing is wanted");
  const draws = drawEnsemble({ ...ensemble, weather: scenario.weather });
  const kit = { ...scenario.kit, heaters: [heater] };
  const criteria = allCriteria(scenario.installation, kit, limits);
  const plan = planPreheat({ ...want, scenario: { ...scenario, kit }, criteria, draws });
  if (!("course" in plan)) throw new Error(english(plan.message));
  const other = { ...read, scenario: { ...scenario, kit } };
  return { read, plan: planResult(plan, want, { read: other, draws }) };
}

function lateAt(at_h: number): PlanDocument["late"][number] {
  return { late_by_h: 1, plug_in: stampAt(at_h), chance: 1, warm_chance: 1 };
}

test("a heater that may be left alone is not said to be, and one that may not is not hidden", () => {
  const heaters = hotAir.plan.heaters.map((h) => ({ ...h, attended: false }));
  expect(told("heatersWithinLimits", withPlan(hotAir, { heaters }))).toMatch(/not attended/);
  expect(told("heatersWithinLimits", withPlan(hotAir, { heaters: [] }))).toMatch(/not listed/);
});

test("what would help is seen to be rejected, unattended, inside or too short", () => {
  const remedy = (id: string, attended: boolean, at_h: number) => ({
    remedies: [
      {
        text: finding("help-heater", { heater: heaterById(id).name }),
        attended,
        chance: 1,
        plug_in: stampAt(at_h),
      },
    ],
  });
  const rule = (change: Partial<PlanDocument>, advice = usual) =>
    told("remediesWithinLimits", withPlan(advice, change));
  expect(rule(remedy("whole-engine-4", false, 6))).toBe("");
  expect(rule(remedy("in-cowl-400", true, 6))).toMatch(/makers reject/);
  expect(rule(remedy("ducted-electric-1500", false, 6))).toMatch(/attended is false/);
  expect(rule(remedy("ducted-electric-1500", true, 1))).toMatch(/at most 4 h/);
  expect(rule(remedy("ducted-electric-1500", true, 7.5))).toMatch(/at least 0.5 h/);
  expect(rule(remedy("whole-engine-6", false, 6))).toMatch(/does not fit/);
  const inside = adviceOf(night({ place: "hangar" }));
  expect(rule(remedy("ducted-fuel-12000", true, 6), inside)).toMatch(/in the hangar/);
  const small = adviceOf(
    night({ aircraft: "two-light-60", kit: { heaters: [], covers: ["insulated-cover"] } }),
  );
  expect(rule(remedy("ducted-fuel-12000", true, 6), small)).toMatch(/too small/);
});

test("hot air without its half hour, its pause or its procedure is seen", () => {
  const { departure, heaters } = hotAir.plan;
  const at_h = departure.at_h - 1 / 60;
  const late = withPlan(hotAir, { unplug: stampAt(at_h), ...withHappening(hotAir, "unplug", at_h) });
  expect(told("hotAirAsMakersAsk", late)).toMatch(/a pause of 1.0 min/);
  const from = hotAir.plan.unplug.at_h - 0.4;
  const short = { plug_in: stampAt(from), ...withHappening(hotAir, "plug_in", from) };
  expect(told("hotAirAsMakersAsk", withPlan(hotAir, short))).toMatch(/hot air for 24 min/);
  const bare = heaters.map((h) => ({ ...h, procedure: null }));
  expect(told("hotAirAsMakersAsk", withPlan(hotAir, { heaters: bare }))).toMatch(/without its procedure/);
});

test("a heater that nobody unplugs is seen", () => {
  expect(told("nothingLeftOn", withPlan(usual, withHappening(usual, "unplug")))).toMatch(/is on after/);
});

test("a window that holds only with covers left on is no window as planned", () => {
  // Pulled out of a warm hangar into wind: it is ready inside for long, and outside for minutes.
  const pulledOut = adviceOf(
    night({
      place: "hangar",
      hangar: { air_c: 10 },
      weather: airOf(-25, 10),
      want: wantIn(8, { pulled_out: true }),
    }),
  );
  expect(brokenRules(pulledOut)).toEqual([]);
  const { covered_window, window } = pulledOut.plan;
  expect(window).not.toBeNull();
  expect(told("windowIsReady", withPlan(pulledOut, { window: covered_window }))).toMatch(
    /are ready, not 0.8/,
  );
  expect(told("startWithinTheWindow", withPlan(pulledOut, { start_within_min: 600 }))).toMatch(/600 min/);
  expect(told("startWithinTheWindow", withPlan(pulledOut, { window: null }))).toMatch(/without a window/);
});

test("a window that opens before the engine is warm is seen, with covers left on too", () => {
  const { window, covered_window } = usual.plan;
  if (window === null || covered_window === null) throw new Error("no window");
  const early = { opens: { sure: stampAt(2), half: stampAt(2) }, closes: window.closes };
  expect(told("windowIsReady", withPlan(usual, { window: early }))).toMatch(/at 2.000 h 0 are ready/);
  expect(told("windowIsReady", withPlan(usual, { window: early }))).toMatch(/before the covers are off/);
  const covered = { ...covered_window, opens: early.opens };
  expect(told("coveredWindowIsReady", withPlan(usual, { covered_window: covered }))).toMatch(
    /covered, at 2.000/,
  );
});

test("a tick below the wanted chance is seen, on each line", () => {
  const { lines } = usual.plan;
  expect(told("ticksAreEarned", withPlan(usual, { chance: 0.75 }))).toMatch(/ready with a chance of 0.75/);
  const least = { ...lines.least, chance: 0.7 };
  expect(told("ticksAreEarned", withPlan(usual, { lines: { ...lines, least } }))).toMatch(/line least/);
  expect(told("ticksAreEarned", withPlan(usual, { warm_chance: 0.5 }))).toMatch(/warm through with 0.5/);
  expect(told("ticksAreEarned", withPlan(usual, { too_hot: ["oil"] }))).toMatch(/too hot/);
  expect(told("windowIsReady", withPlan(usual, { chance: usual.plan.chance - 0.2 }))).toMatch(/said is/);
});

test("an engine taken as warmer than the air, and an unknown that nobody says, are seen", () => {
  const { course } = usual.plan;
  const oil = { ...course.parts.oil, p50_c: course.parts.oil.p50_c.map((t) => t + 3) };
  const warm = { course: { ...course, parts: { ...course.parts, oil } } };
  expect(told("nothingFlatters", withPlan(usual, warm))).toMatch(/oil begins at/);
  expect(told("nothingFlatters", withPlan(usual, { assumptions: [] }))).toMatch(/nobody says/);
  const heated = adviceOf(night({ plugged_in: ["whole-engine-4"] }));
  expect(told("nothingFlatters", heated)).toBe("");
  expect(told("nothingFlatters", withPlan(heated, { assumptions: [] }))).toMatch(
    /time plugged in is unknown/,
  );
});

test("a green headline over no battery is seen, and a note that is left out", () => {
  const empty = adviceOf(night({ battery: { fitted: false } }));
  expect(empty.plan.status).toBe("look-first");
  expect(told("lookFirstBeforeGreen", empty)).toBe("");
  expect(told("lookFirstBeforeGreen", withPlan(empty, { status: "ready" }))).toMatch(
    /in spite of no-battery/,
  );
  expect(told("lookFirstBeforeGreen", withPlan(empty, { look_first: [] }))).toMatch(/is not said/);
  expect(told("lookFirstBeforeGreen", withPlan(usual, { status: "look-first" }))).toMatch(/without a reason/);
});

test("heat that is not needed, or said not to be, is seen", () => {
  expect(told("noNeedlessHeat", withPlan(usual, { status: "not-required" }))).toMatch(/by the heat of/);
  const { lines } = usual.plan;
  const later = { ...lines.warm_through, plug_in: stampAt(7.4) };
  expect(told("noNeedlessHeat", withPlan(usual, { lines: { ...lines, warm_through: later } }))).toMatch(
    /earlier/,
  );
  const mild = adviceOf(night({ weather: airOf(8) }));
  expect(mild.plan).toMatchObject({ status: "not-required", plug_in: null });
  const plug_in = stampAt(7.25);
  const event = { ...plug_in, do: "plug_in", what: "whole-engine-4" };
  const happenings = [...mild.plan.happenings, event];
  const needless = withPlan(mild, { status: "ready", plug_in, happenings });
  expect(told("noNeedlessHeat", needless)).toMatch(/the least holds without/);
  expect(told("noNeedlessHeat", needless)).toMatch(/1 are ready without/);
});

test("a caution that is missing or stands without cause is seen", () => {
  const without = (text: string) => ({ cautions: hotAir.plan.cautions.filter((c) => english(c) !== text) });
  const rule = (advice: Advice) => told("cautionsBelong", advice);
  expect(rule(withPlan(hotAir, without(english(CAUTIONS.carbonMonoxide))))).toMatch(
    /missing: carbon monoxide/,
  );
  expect(rule(withPlan(hotAir, without(english(CAUTIONS.unattended))))).toMatch(/missing: fire/);
  expect(rule(withPlan(hotAir, without(english(CAUTIONS.superficial))))).toMatch(/missing: half-warm/);
  expect(rule(withPlan(hotAir, without(english(CAUTIONS.removeBeforeStart))))).toMatch(/missing: covers/);
  const more = { cautions: [...usual.plan.cautions, { ...CAUTIONS.carbonMonoxide }] };
  expect(rule(withPlan(usual, more))).toMatch(/without cause: carbon monoxide/);
});

test("a caution of the start that is missing or stands without cause is seen", () => {
  const frozen = adviceOf(night({ weather: airOf(-20) }));
  const briefing = (advice: Advice, keep: (text: string) => boolean, more: readonly Caution[] = []) =>
    withPlan(advice, {
      start_briefing: {
        ...advice.plan.start_briefing,
        notes: advice.plan.start_briefing.notes.map((note) => ({
          ...note,
          cautions: [...note.cautions.filter((one) => keep(english(one))), ...more],
        })),
      },
    });
  const { frozenBattery, propeller } = START_CAUTIONS;
  const rule = (advice: Advice) => told("startCautionsBelong", advice);
  expect(rule(briefing(frozen, (text) => text !== english(frozenBattery)))).toMatch(/missing: the battery/);
  expect(rule(briefing(frozen, (text) => text !== english(propeller)))).toMatch(/missing: the propeller/);
  const mild = adviceOf(night({ weather: airOf(8) }));
  expect(rule(briefing(mild, () => true, [{ ...frozenBattery }]))).toMatch(/without cause: a frozen battery/);
});
