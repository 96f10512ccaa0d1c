import { type AwayDocument, awayDocument } from "../documents/index.js";
import { stayAway } from "../planning/index.js";
import { allCriteria } from "../readiness/index.js";
import { type AircraftScenario, drawnFrom, USUAL_CHANCE } from "../scenario/index.js";
import { briefingAt } from "./briefing.js";
import { completed, fromDocument, type Outcome, type QuestionOptions } from "./question.js";

/** Away from power: whether it starts at the return the document wants, how long it stays ready, what would bridge the gap. */
export function awayFromDocument(source: unknown, options: QuestionOptions = {}): Outcome<AwayDocument> {
  return fromDocument(source, { ...options, withoutPower: true }, (asked) =>
    awayFor(asked, options.overrides?.chance),
  );
}

/** The same for a scenario in which nothing heats. */
export function awayFor(asked: AircraftScenario, wanted?: number): Outcome<AwayDocument> {
  const drawn = drawnFrom(asked);
  const wish = asked.want?.wish;
  const chance = wanted ?? wish?.chance ?? USUAL_CHANCE;
  const report = stayAway({
    scenario: asked.scenario,
    criteria: allCriteria(asked.scenario.installation, { heaters: [], covers: [] }, asked.limits),
    draws: drawn.draws,
    chance,
    ...(wish === undefined ? {} : { back: wish.departure, coverOffBefore: wish.coverOffBefore }),
  });
  if (report.status !== "judged") return report;
  return completed(awayDocument(report, chance, drawn, briefingAt(report.uncovered.course, 0, drawn)));
}
