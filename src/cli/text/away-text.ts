import { awayScreen, bridgeLine } from "../../first-screen/index.js";
import type { AwayDocument } from "../../index.js";
import { type Style, speakingOn } from "../style.js";
import { chartLines } from "./chart.js";
import { criteriaTable } from "./criteria-text.js";
import { openingOf, screen } from "./opening.js";
import { startFacts } from "./start-text.js";
import { assumed, cared, day, fact, span } from "./words.js";

/** Away from power, for a pilot beside a cooling aircraft: the first screen, then everything behind it. */
export function awayText(away: AwayDocument, style: Style): string[] {
  const { name, start, zone, members } = away;
  const at = `${day(start)} ${start.time.slice(11, 16)}`;
  const about = `${name}: no power from ${at} on, times in ${zone}, ${members} cases.`;
  return screen(openingOf(awayScreen(away), about, start, style), () => details(away, style), style);
}

function details(away: AwayDocument, style: Style): string[] {
  const { criteria, wanted_chance, assumptions, covered, uncovered, bridges } = away;
  const atReturn = (covered ?? uncovered).at_return;
  return [
    ...(covered === null ? [] : fact("Covered", half(covered), style)),
    ...fact("Uncovered", half(uncovered), style),
    ...bridges.flatMap((bridge) =>
      fact("Reaches it", speakingOn(away.start, style)(bridgeLine(bridge)), style),
    ),
    "",
    "Uncovered:",
    ...chart(away, style),
    "",
    "Now:",
    ...criteriaTable(criteria, wanted_chance, style),
    ...(atReturn === null
      ? []
      : [
          "",
          covered === null ? "At the return:" : "At the return, with covers on now:",
          ...criteriaTable(atReturn.criteria, wanted_chance, style),
        ]),
    ...startFacts(away.start_briefing, style),
    ...assumed(assumptions, style),
    ...cared(away.cautions, style),
  ];
}

function half({ median_h, horizon_h }: AwayDocument["uncovered"]): string {
  return `in half of the cases ready for ${median_h >= horizon_h - 1e-3 ? `over ${span(horizon_h)}` : span(median_h)}`;
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
