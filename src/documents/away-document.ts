import type { AwayReport, StayWarm } from "../planning/index.js";
import type { Trajectory } from "../simulation/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { courseDocument } from "./course-document.js";
import { criteriaDocument } from "./criterion-document.js";
import { headerOf, type ResultContext, rounded } from "./result-header.js";
import type { AwayDocument } from "./result-schema.js";
import { startOfCourse } from "./start-document.js";

/** How long a warm aircraft lasts without power, as it is stored, exchanged and shown. */
export function awayDocument(report: AwayReport, wantedChance: number, context: ResultContext): AwayDocument {
  const lasting = ({ sure, median, horizon }: StayWarm, course: Trajectory) => ({
    sure_h: rounded(sure / SECONDS_OF_HOUR, 3),
    median_h: rounded(median / SECONDS_OF_HOUR, 3),
    horizon_h: rounded(horizon / SECONDS_OF_HOUR, 3),
    course: courseDocument(course, context),
  });
  return {
    ...headerOf(context, []),
    kind: "away",
    wanted_chance: wantedChance,
    chance_now: report.now.chance,
    weakest: report.now.weakest.criterion.id,
    criteria: criteriaDocument(report.now),
    start_briefing: startOfCourse(report.uncoveredCourse, 0, context),
    covered: lasting(report.covered, report.coveredCourse),
    uncovered: lasting(report.uncovered, report.uncoveredCourse),
  };
}
