import type { CriterionDocument, PlanDocument } from "../../index.js";
import type { Style } from "../style.js";
import { chartLines } from "./chart.js";
import { criteriaTable } from "./criteria-text.js";
import { careList, startFacts } from "./start-text.js";
import {
  assumed,
  clock,
  DEFERENCE,
  day,
  fact,
  inUnits,
  list,
  marginUnit,
  percent,
  span,
  temperature,
  valueText,
  wrapped,
} from "./words.js";

/** A plan for a pilot: the answer first, then what it hangs on, then everything behind it. */
export function planText(plan: PlanDocument, style: Style): string[] {
  return [
    ...wrapped(answer(plan), style.width).map((line) => style.colors.bold(line)),
    ...wrapped(occasion(plan), style.width),
    "",
    ...(plan.status === "ready" ? readyFacts(plan, style) : missingFacts(plan, style)),
    "",
    ...planChart(plan, style),
    "",
    ...criteriaTable(plan.criteria, plan.wanted_chance, style),
    ...startFacts(plan.start_briefing, style),
    ...assumed(plan.assumptions, style),
    ...list(
      "Doubtful input",
      plan.warnings.map((w) => `${w.path}: expected ${w.expected}, received ${w.received}`),
      style,
    ),
    ...careList(plan.cautions, plan.start_briefing, style),
    "",
    ...wrapped(DEFERENCE, style.width),
  ];
}

/** The first line: what to do and with what chance. */
export function answer(plan: PlanDocument): string {
  const { plug_in, unplug, departure } = plan;
  const at = (stamp: typeof departure) => clock(stamp, departure);
  const chance = percent(plan.chance);
  if (plan.status === "not-reachable") {
    const best = plug_in === null ? "without heat" : `plugged in at ${at(plug_in)}`;
    return `Not ready at ${at(departure)}: at best ${chance} chance (${percent(plan.wanted_chance)} wanted), ${best}.`;
  }
  if (plug_in === null) return `No heat needed: start ${at(departure)}, ready with ${chance} chance.`;
  return `Plug in at ${at(plug_in)}, unplug ${at(unplug)}, start ${at(departure)}: ready with ${chance} chance.`;
}

function occasion(plan: PlanDocument): string {
  const { name, aircraft, departure, zone, members, chance_error, heaters } = plan;
  const kit = heaters.length === 0 ? "no heater" : heaters.map((h) => h.name).join(" and ");
  return `${name} (${aircraft.name}) with ${kit}. ${day(departure)}, times in ${zone}. Chance over ${members} drawn cases, ±${(chance_error * 100).toFixed(1)} %.`;
}

function readyFacts(plan: PlanDocument, style: Style): string[] {
  const weakest = weakestOf(plan);
  return [
    ...fact("Binds", weakestText(weakest, style), style),
    ...attendance(plan, style),
    ...windowFact(plan, style),
    ...stayFact(plan, style),
    ...energyFact(plan, style),
    ...comparisons(plan, style),
    ...leftOnFact(plan, style),
  ];
}

function missingFacts(plan: PlanDocument, style: Style): string[] {
  const failing = plan.criteria.filter(
    (c) => c.judged === "at-start" && !c.advisory && c.chance < plan.wanted_chance,
  );
  const tooHot = plan.criteria.filter((c) => plan.too_hot.includes(c.id));
  return [
    ...fact("Why", inUnits(plan.message, style), style),
    ...failing.flatMap((c) => fact("Missing", missingText(c, style), style)),
    ...tooHot.flatMap((c) => fact("Too hot", missingText(c, style), style)),
    ...(plan.remedies.length === 0 ? fact("Would help", "nothing that was tried", style) : []),
    ...plan.remedies.flatMap((r) =>
      fact(
        "Would help",
        `${inUnits(r.text, style)}: ${percent(r.chance)}, plugged in at ${clock(r.plug_in, plan.departure)}`,
        style,
      ),
    ),
    ...energyFact(plan, style),
    ...comparisons(plan, style),
  ];
}

function weakestOf({ criteria, weakest }: PlanDocument): CriterionDocument {
  const found = criteria.find((c) => c.id === weakest);
  if (found === undefined) throw new RangeError(`unknown criterion: ${weakest}`);
  return found;
}

function weakestText(
  { title, value, limit, unit, chance, direction }: CriterionDocument,
  style: Style,
): string {
  const shown = (x: number) => valueText(x, unit, style);
  const sign = direction === "at-least" ? "at least" : "at most";
  return `${title}: ${shown(value.p50)} (5 % of cases beyond ${shown(direction === "at-least" ? value.p05 : value.p95)}), ${sign} ${shown(limit)}; holds in ${percent(chance)}`;
}

function missingText(
  { title, margin, chance, limit, unit, direction }: CriterionDocument,
  style: Style,
): string {
  const off = (x: number) => valueText(x, marginUnit(unit), style);
  const beyond = `${direction === "at-least" ? "short of" : "over"} ${valueText(limit, unit, style)}`;
  const facts = [
    ...(margin.p50 < 0 ? [`${off(-margin.p50)} ${beyond} in the middle`] : []),
    ...(margin.p05 < 0 ? [`${off(-margin.p05)} in the worst 5 %`] : []),
    `holds in ${percent(chance)}`,
  ];
  return `${title}: ${facts.join(", ")}`;
}

function attendance({ heaters, plug_in }: PlanDocument, style: Style): string[] {
  const watched = heaters.filter((h) => h.attended);
  if (watched.length === 0 || plug_in === null) return [];
  return fact(
    "Stand by",
    `${watched.map((h) => h.name).join(", ")}: somebody must be there all the time it runs`,
    style,
  );
}

function windowFact({ window, departure, course }: PlanDocument, style: Style): string[] {
  if (window === null) return fact("Ready window", "none", style);
  const end = course.time_h[course.time_h.length - 1];
  const late = (stamp: typeof departure) => (stamp.at_h >= end - 1e-3 ? "after " : "");
  const { opens, closes } = window;
  const at = (stamp: typeof departure) => `${late(stamp)}${clock(stamp, departure)}`;
  const opening = opens.p95.at_h === 0 ? "now" : at(opens.p50);
  const edges = [
    ...(opens.p95.at_h === 0 ? [] : [`opens ${at(opens.p05)} to ${at(opens.p95)}`]),
    ...(closes.p05.at_h >= end - 1e-3 ? [] : [`closes ${at(closes.p05)} to ${at(closes.p95)}`]),
  ];
  const soft = edges.length === 0 ? "" : ` (${edges.join(", ")})`;
  const text = `${opening} to ${at(closes.p50)} with covers left on${soft}`;
  return fact("Ready window", text, style);
}

function stayFact({ stay_warm, wanted_chance, window }: PlanDocument, style: Style): string[] {
  if (window === null) return [];
  const time = (hours: number, horizon: number) =>
    hours >= horizon - 1e-3 ? `over ${span(horizon)}` : span(hours);
  const words = ({ sure_h, median_h, horizon_h }: typeof stay_warm.covered) =>
    `${time(sure_h, horizon_h)} (half of cases ${time(median_h, horizon_h)})`;
  const text = `after the start time, ${percent(wanted_chance)} sure: covered ${words(stay_warm.covered)}, as planned without cover ${words(stay_warm.uncovered)}`;
  return fact("Stays ready", text, style);
}

function energyFact({ energy_kwh }: PlanDocument, style: Style): string[] {
  const { p05, p50, p95 } = energy_kwh;
  return fact("Energy", `${p50.toFixed(1)} kWh (${p05.toFixed(1)} to ${p95.toFixed(1)})`, style);
}

function comparisons({ late, habits, departure }: PlanDocument, style: Style): string[] {
  const lateness = late.map((l) => `${span(l.late_by_h)} later ${percent(l.chance)}`);
  const rules = habits.map(
    (h) =>
      `${span(h.lead_h)} before (${clock(h.plug_in, departure)}) ${percent(h.chance)}, ${h.energy_kwh.toFixed(1)} kWh`,
  );
  return [
    ...(lateness.length === 0 ? [] : fact("If late", lateness.join("; "), style)),
    ...(rules.length === 0 ? [] : fact("By habit", rules.join("; "), style)),
  ];
}

/** Is leaving it plugged in harmful? Against the plan, in the middle estimate. */
function leftOnFact({ toll }: PlanDocument, style: Style): string[] {
  if (toll === null) return [];
  const { planned, left_on } = toll;
  const surface = left_on.hottest_surface_c;
  const text = [
    `from now on: ${left_on.energy_kwh.toFixed(1)} kWh (planned ${planned.energy_kwh.toFixed(1)})`,
    `${hours(left_on.heater_h)} heater hours (${hours(planned.heater_h)})`,
    `inside wet ${hours(left_on.wet_h)} h (${hours(planned.wet_h)}; ranks habits only)`,
    ...(surface === null ? [] : [`hottest surface ${temperature(surface, style)}`]),
    `oil film ${temperature(left_on.hottest_film_c, style)}`,
  ].join(", ");
  return fact("Left plugged", text, style);
}

const hours = (value: number) => (value < 10 ? value.toFixed(1) : value.toFixed(0));

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
