import type { AwayDocument } from "../../index.js";
import type { Style } from "../style.js";
import { chartLines } from "./chart.js";
import { criteriaTable } from "./criteria-text.js";
import { startFacts } from "./start-text.js";
import { assumed, cared, DEFERENCE, day, fact, percent, span, wrapped } from "./words.js";

/** How long one has got, for a pilot beside a cooling aircraft. */
export function awayText(away: AwayDocument, style: Style): string[] {
  const { name, aircraft, start, zone, members, criteria, wanted_chance, assumptions } = away;
  return [
    ...wrapped(answer(away), style.width).map((line) => style.colors.bold(line)),
    ...wrapped(
      `${name} (${aircraft.name}), without heat from ${day(start)} ${start.time.slice(11, 16)} on, times in ${zone}. Over ${members} drawn cases.`,
      style.width,
    ),
    "",
    ...fact("Covered", lasting(away.covered, wanted_chance), style),
    ...fact("Uncovered", lasting(away.uncovered, wanted_chance), style),
    "",
    "Uncovered:",
    ...chart(away, style),
    "",
    "Now:",
    ...criteriaTable(criteria, wanted_chance, style),
    ...startFacts(away.start_briefing, style),
    ...assumed(assumptions, style),
    ...cared(away.cautions, style),
    "",
    ...wrapped(DEFERENCE, style.width),
  ];
}

function answer({ chance_now, wanted_chance, covered, uncovered, criteria, weakest }: AwayDocument): string {
  if (chance_now < wanted_chance) {
    const short = criteria.find((c) => c.id === weakest)?.title ?? weakest;
    return `Not ready now: ${percent(chance_now)} chance; ${short} binds.`;
  }
  return `Ready now. It lasts ${time(uncovered.sure_h, uncovered.horizon_h)} uncovered, ${time(covered.sure_h, covered.horizon_h)} covered (${percent(wanted_chance)} sure).`;
}

function lasting({ sure_h, median_h, horizon_h }: AwayDocument["covered"], chance: number): string {
  return `${time(sure_h, horizon_h)} with ${percent(chance)} chance, half of cases ${time(median_h, horizon_h)}`;
}

function time(hours: number, horizon: number): string {
  return hours >= horizon - 1e-3 ? `over ${span(horizon)}` : span(hours);
}

function chart({ uncovered, start, zone, criteria }: AwayDocument, style: Style): string[] {
  const { course, median_h } = uncovered;
  const end = course.time_h[course.time_h.length - 1];
  return chartLines(
    {
      course,
      from_h: 0,
      to_h: Math.min(end, Math.max(4, 2 * median_h)),
      start: Date.parse(start.time) / 1000,
      zone,
      marks: [],
      limit_c: criteria.find((c) => c.id === "bearings")?.limit,
    },
    style,
  );
}
