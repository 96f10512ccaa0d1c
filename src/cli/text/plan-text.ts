import type { Said } from "../../findings/index.js";
import { planScreen } from "../../first-screen/index.js";
import { type CriterionDocument, type PlanDocument, type StampDocument, weakestBasis } from "../../index.js";
import type { Style } from "../style.js";
import { chartLines } from "./chart.js";
import { criteriaTable } from "./criteria-text.js";
import { openingOf, screen } from "./opening.js";
import { startFacts } from "./start-text.js";
import { basisText, clock, closing, day, fact, marginUnit, odds, span, wrapped } from "./words.js";

/** A plan for a pilot: the first screen, then everything behind it. */
export function planText(plan: PlanDocument, style: Style): string[] {
  const { name, aircraft, departure, zone } = plan;
  const basis = weakestBasis(usedHeaters(plan).map((heater) => heater.basis));
  const rests = basis === undefined ? "" : `; heater ${basisText(basis, style)}`;
  const about = `${name}, ${aircraft.name.split(",")[0]}, ${day(departure)}, ${zone}${rests}`;
  return screen(openingOf(planScreen(plan), about, departure, style), () => planDetails(plan, style), style);
}

/** What stands behind the first screen. */
export function planDetails(plan: PlanDocument, style: Style): string[] {
  return [
    ...(plan.status === "not-reachable" ? missingFacts(plan, style) : []),
    ...heaterFacts(plan, style),
    ...windowFacts(plan, style),
    ...energyFact(plan, style),
    ...comparisons(plan, style),
    ...leftOnFact(plan, style),
    ...procedure(plan, style),
    "",
    ...planChart(plan, style),
    "",
    ...criteriaTable(plan.criteria, plan.wanted_chance, style),
    ...startFacts(plan.start_briefing, style),
    ...closing({ ...plan, assumptions: [countedText(plan), ...plan.assumptions] }, style),
  ];
}

function countedText({ members, chance_error }: PlanDocument): string {
  return `Chances are counted over ${members} drawn cases, to ±${(chance_error * 100).toFixed(1)} in 100.`;
}

function missingFacts(plan: PlanDocument, style: Style): string[] {
  const failing = plan.criteria.filter(
    (c) => c.judged === "at-start" && !c.advisory && c.aim === "least" && c.chance < plan.wanted_chance,
  );
  const tooHot = plan.criteria.filter((c) => plan.too_hot.includes(c.id));
  const helping = (text: Said, chance: number, at: StampDocument | null) =>
    `${style.say(text)}: ${odds(chance)}${at === null ? "" : `, plug in at ${clock(at, plan.departure)}`}`;
  return [
    ...(plan.message === null ? [] : fact("Why", style.say(plan.message), style)),
    ...failing.flatMap((c) => fact("Too cold", missingText(c, style), style)),
    ...tooHot.flatMap((c) => fact("Too hot", missingText(c, style), style)),
    ...plan.remedies.flatMap((r) => fact("Would help", helping(r.text, r.chance, r.plug_in), style)),
  ];
}

function missingText(
  { title, margin, chance, limit, unit, direction }: CriterionDocument,
  style: Style,
): string {
  const off = (x: number) => style.values.measure({ value: x, unit: marginUnit(unit) });
  const beyond = `${direction === "at-least" ? "short of" : "over"} ${style.values.measure({ value: limit, unit: unit })}`;
  const facts = [
    ...(margin.p50 < 0 ? [`${off(-margin.p50)} ${beyond} in half of all cases`] : []),
    ...(margin.p05 < 0 ? [`1 in 20 is ${off(-margin.p05)} ${beyond}`] : []),
    `OK in ${Math.round(100 * chance)} of 100`,
  ];
  return `${style.say(title)}: ${facts.join(", ")}`;
}

/** Heaters that are on, or will be. */
function usedHeaters({ heaters, plug_in, heating }: PlanDocument): PlanDocument["heaters"] {
  return plug_in === null && heating === null ? [] : heaters;
}

/** Each heater with its surfaces beside their limits. */
function heaterFacts(plan: PlanDocument, style: Style): string[] {
  return usedHeaters(plan).flatMap(({ name, basis, attended, longest_on_h, surfaces }) => {
    const hot = surfaces.map(
      (s) =>
        `${s.name} ${style.values.temp(s.p50_c)}, 1 in 20 over ${style.values.temp(s.p95_c)}, limit ${style.values.temp(s.limit_c)}`,
    );
    const watched = attended ? ", somebody must stay" : "";
    return fact(
      "Heater",
      [`${name}, ${basisText(basis, style)}, at most ${span(longest_on_h)}${watched}`, ...hot].join("; "),
      style,
    );
  });
}

function windowFacts(
  { window, covered_window, departure, course, wanted_chance }: PlanDocument,
  style: Style,
): string[] {
  const end = course.time_h[course.time_h.length - 1];
  const at = (stamp: StampDocument) =>
    stamp.at_h >= end - 0.02 ? `after ${clock(stamp, departure)}` : clock(stamp, departure);
  const text = (w: NonNullable<typeof window>) =>
    `${w.opens.sure.at_h <= 0 ? "now" : at(w.opens.sure)} to ${at(w.closes.sure)} in ${odds(wanted_chance)}; half of all cases last to ${at(w.closes.half)}`;
  return [
    ...fact(
      "Ready",
      window === null ? `at no time in ${odds(wanted_chance)}` : `as planned ${text(window)}`,
      style,
    ),
    ...(covered_window === null
      ? []
      : fact("", `only if covers stay on and it stays where it is: ${text(covered_window)}`, style)),
  ];
}

function energyFact({ energy_kwh }: PlanDocument, style: Style): string[] {
  const { p05, p50, p95 } = energy_kwh;
  return fact("Energy", `${p50.toFixed(1)} kWh (${p05.toFixed(1)} to ${p95.toFixed(1)})`, style);
}

function comparisons({ late, habits, departure }: PlanDocument, style: Style): string[] {
  const lateness = late.map((l) => `plug in ${span(l.late_by_h)} later: ${odds(l.chance)}`);
  const rules = habits.map(
    (h) =>
      `${span(h.lead_h)} before (${clock(h.plug_in, departure)}): ${odds(h.chance)}, ${h.energy_kwh.toFixed(1)} kWh`,
  );
  return [
    ...(lateness.length === 0 ? [] : fact("If late", lateness.join("; "), style)),
    ...(rules.length === 0 ? [] : fact("If you always", `plug in ${rules.join("; ")}`, style)),
  ];
}

/** Is leaving it plugged in harmful? Against the plan, in the middle estimate. */
function leftOnFact({ toll, heaters }: PlanDocument, style: Style): string[] {
  if (toll === null) return [];
  const { planned, left_on } = toll;
  const surface = left_on.hottest_surface_c;
  const limits = heaters.flatMap((h) => h.surfaces.map((s) => s.limit_c));
  const longest = Math.min(...heaters.map((h) => h.longest_on_h));
  const text = [
    `${hours(left_on.heater_h)} h of heat (planned ${hours(planned.heater_h)})`,
    ...(left_on.heater_h > longest ? [`over the longest time allowed, ${hours(longest)} h`] : []),
    `${left_on.energy_kwh.toFixed(1)} kWh (${planned.energy_kwh.toFixed(1)})`,
    `inside wet ${hours(left_on.wet_h)} h (${hours(planned.wet_h)}; frost not counted, for comparing only)`,
    ...(surface === null
      ? []
      : [`hottest surface ${style.values.temp(surface)} (limit ${style.values.temp(Math.min(...limits))})`]),
    `oil film ${style.values.temp(left_on.hottest_film_c)}`,
  ].join(", ");
  return fact("If left on", `from now on: ${text}`, style);
}

const hours = (value: number) => (value < 10 ? value.toFixed(1) : value.toFixed(0));

/** What makers ask to be done by hand, step by step. */
function procedure({ heaters, plug_in }: PlanDocument, style: Style): string[] {
  if (plug_in === null) return [];
  const told = heaters.flatMap((h) => h.procedure ?? []);
  if (told.length === 0) return [];
  const [{ steps, source }] = told;
  return [
    "",
    style.colors.bold("How to heat with hot air"),
    ...steps.flatMap((step, i) => wrapped(style.say(step), style.width, `${i + 1} `, "  ")),
    ...wrapped(`(${source})`, style.width, "  "),
  ];
}

function planChart(plan: PlanDocument, style: Style): string[] {
  const { course, departure, plug_in, unplug, start, zone, criteria } = plan;
  const end = course.time_h[course.time_h.length - 1];
  return chartLines(
    {
      course,
      from_h: 0,
      to_h: Math.min(end, departure.at_h + AFTER_DEPARTURE),
      start: Date.parse(start.time) / 1000,
      zone,
      marks: [
        ...(plug_in === null
          ? []
          : [{ at_h: plug_in.at_h, letter: "P", label: `plug in ${clock(plug_in, departure)}` }]),
        ...(plug_in === null
          ? []
          : [{ at_h: unplug.at_h, letter: "U", label: `unplug ${clock(unplug, departure)}` }]),
        { at_h: departure.at_h, letter: "S", label: `start ${clock(departure, departure)}` },
      ],
      limit_c: criteria.find((c) => c.id === "bearings")?.limit,
    },
    style,
  );
}

/** [h] of cooling shown after the start. */
const AFTER_DEPARTURE = 3;
