import { eachOnce } from "../findings/index.js";
import type { AwayCase, AwayReport, Bridge, EngineRun } from "../planning/index.js";
import { RUN_CAUTIONS, USUAL_COVER_OFF } from "../planning/index.js";
import type { Verdict } from "../readiness/index.js";
import type { DrawnScenario } from "../scenario/index.js";
import type { StartBriefing } from "../starting/index.js";
import { SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { courseDocument } from "./course-document.js";
import { criteriaDocument } from "./criterion-document.js";
import { headerOf, rounded, stampOf } from "./result-header.js";
import type { AwayDocument } from "./result-schema.js";
import { startDocument } from "./start-document.js";

/** Whether it starts at the return, how long it lasts and what would help, as stored, exchanged and shown. */
export function awayDocument(
  report: AwayReport,
  wanted: number,
  context: DrawnScenario,
  briefing: StartBriefing,
): AwayDocument {
  const { now, back, covered, uncovered, bridges, furthest, soonest } = report;
  const { read } = context;
  const stamp = (at: number | undefined) => (at === undefined ? null : stampOf(read, at));
  const status = (chance: number) => (chance >= wanted ? ("ready" as const) : ("not-ready" as const));
  const runs = (of: readonly EngineRun[]) =>
    of.map(({ at, duration }) => ({ start: stampOf(read, at), stop: stampOf(read, at + duration) }));
  const atReturn = (verdict: Verdict | undefined) =>
    verdict === undefined
      ? null
      : {
          status: status(verdict.chance),
          chance: verdict.chance,
          weakest: verdict.weakest.criterion.id,
          criteria: criteriaDocument(verdict),
        };
  const lasting = (each: AwayCase) => ({
    sure_h: rounded(each.lasting.sure / SECONDS_OF_HOUR, 4),
    median_h: rounded(each.lasting.median / SECONDS_OF_HOUR, 4),
    horizon_h: rounded(each.lasting.horizon / SECONDS_OF_HOUR, 4),
    at_return: atReturn(each.atReturn),
    course: courseDocument(each.course, context),
  });
  const bridgeOf = ({ kind, coverOn, runs: of, runFrom, chance }: Bridge) => ({
    kind,
    cover_on_by: stamp(coverOn),
    runs: runs(of),
    run_from: stamp(runFrom),
    run_min: of.length === 0 ? null : of[0].duration / SECONDS_OF_MINUTE,
    chance,
  });
  const header = headerOf(context, []);
  const isRun = [...bridges, ...(furthest === undefined ? [] : [furthest.keeping])].some(
    (each) => each.runs.length > 0,
  );
  const best = Math.max(uncovered.atReturn?.chance ?? now.chance, covered?.atReturn?.chance ?? 0);
  return {
    ...header,
    cautions: eachOnce([
      ...(isRun ? RUN_CAUTIONS : []),
      ...(covered === undefined ? [] : read.scenario.kit.covers.flatMap((cover) => cover.cautions)),
      ...header.cautions,
    ]),
    kind: "away",
    status: status(best),
    wanted_chance: wanted,
    back: stamp(back),
    engine_from: read.knownFrom.from,
    shut_down_h_ago:
      read.knownFrom.from === "shut-down" ? rounded(read.knownFrom.ago / SECONDS_OF_HOUR, 6) : null,
    covers_on_now: [...read.scenario.initial.configuration.coversOn],
    cover_off_before_min: (read.want?.wish.coverOffBefore ?? USUAL_COVER_OFF) / SECONDS_OF_MINUTE,
    status_now: status(now.chance),
    chance_now: now.chance,
    weakest: now.weakest.criterion.id,
    criteria: criteriaDocument(now),
    start_briefing: startDocument(briefing),
    covered: covered === undefined ? null : lasting(covered),
    uncovered: lasting(uncovered),
    bridges: bridges.map(bridgeOf),
    furthest:
      furthest === undefined
        ? null
        : {
            back: stampOf(read, furthest.at),
            covered: furthest.keeping.coverOn !== undefined,
            runs: runs(furthest.keeping.runs),
          },
    soonest: stamp(soonest),
  };
}
