import type { AwayDocument } from "../../index.js";
import type { Style } from "../style.js";
import { awayOpening, bridgeText } from "./away-opening.js";
import { chartLines } from "./chart.js";
import { criteriaTable } from "./criteria-text.js";
import { screen } from "./opening.js";
import { startFacts } from "./start-text.js";
import { assumed, cared, fact, span } from "./words.js";

/** Away from power, for a pilot beside a cooling aircraft: the first screen, then everything behind it. */
export function awayText(away: AwayDocument, style: Style): string[] {
  return screen(awayOpening(away, style), () => details(away, style), style);
}

function details(away: AwayDocument, style: Style): string[] {
  const { criteria, wanted_chance, assumptions, covered, uncovered, bridges } = away;
  const atReturn = (covered ?? uncovered).at_return;
  return [
    ...(covered === null ? [] : fact("Covered", half(covered), style)),
    ...fact("Uncovered", half(uncovered), style),
    ...bridges.flatMap((bridge) => fact("Reaches it", bridgeText(bridge, away), style)),
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
