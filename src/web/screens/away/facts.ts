import type { AwayDocument } from "../../../documents/index.js";
import type { Said, Words } from "../../words/index.svelte.js";
import { criterionTitle } from "../night/sentence.js";

type Bridge = AwayDocument["bridges"][number];

/** The answer in one sentence. */
export function awaySentence(away: AwayDocument, name: string, w: Words, say: Said): string {
  const { back, status, covered, uncovered } = away;
  if (back === null || uncovered.at_return === null) return "";
  const bare = say.odds(uncovered.at_return.chance);
  const isReady = status === "ready";
  if (covered?.at_return == null) return w.away.verdictBare(name, say.at(back), isReady, bare);
  return w.away.verdict(name, say.at(back), isReady, say.odds(covered.at_return.chance), bare);
}

/** The facts in the order in which they are needed, each with its label. */
export function awayFacts(away: AwayDocument, w: Words, say: Said): [label: string, text: string][] {
  const a = w.away;
  const runs = shownRun(away)?.runs ?? away.furthest?.runs ?? [];
  return [
    [a.readyNow, (away.status_now === "ready" ? a.yes : a.no)(say.odds(away.chance_now))],
    [a.engine, engineText(away, w, say)],
    [a.coverBy, coverText(away, w, say)],
    [a.lasts, lastsText(away, w, say)],
    [a.run, runText(away, w, say)],
    [a.weakest, weakestText(away, w, say)],
    [a.somebody, runs.length > 0 ? a.mustStay : a.needNotStay],
    ...limits(away, w, say),
  ];
}

function engineText(
  { engine_from, shut_down_h_ago, covers_on_now, covered }: AwayDocument,
  w: Words,
  say: Said,
) {
  const a = w.away;
  const engine =
    engine_from === "air"
      ? a.asCold
      : engine_from === "readings"
        ? a.asRead
        : shut_down_h_ago === 0
          ? a.justShutDown
          : a.shutDown(say.span(shut_down_h_ago ?? 0));
  if (covered === null) return engine;
  return `${engine}, ${covers_on_now.length > 0 ? a.coversOn : a.coversOff}`;
}

function coverText(away: AwayDocument, w: Words, say: Said): string {
  const a = w.away;
  const { covered, uncovered, bridges, cover_off_before_min } = away;
  if (covered === null) return a.coverNone;
  if (uncovered.at_return?.status === "ready") return a.coverNotNeeded;
  const by = bridges.find(({ kind }) => kind === "cover")?.cover_on_by;
  if (by != null) {
    return by.at_h === 0 ? a.coverNow(cover_off_before_min) : a.coverAt(say.at(by), cover_off_before_min);
  }
  if (shownRun(away)?.kind === "cover-and-run") return a.coverBetween;
  return a.coverTooLittle(say.odds(covered.at_return?.chance ?? 0));
}

function lastsText({ covered, uncovered, wanted_chance }: AwayDocument, w: Words, say: Said): string {
  const sure = ({ sure_h, horizon_h }: AwayDocument["uncovered"]) => {
    if (sure_h <= 0) return w.away.none;
    return sure_h >= horizon_h - 1e-3 ? w.away.over(say.span(horizon_h)) : say.span(sure_h);
  };
  const chance = say.odds(wanted_chance);
  if (covered === null) return w.away.lastsBare(sure(uncovered), chance);
  return w.away.lastsBoth(sure(covered), sure(uncovered), chance);
}

function runText(away: AwayDocument, w: Words, say: Said): string {
  const a = w.away;
  if (away.uncovered.at_return?.status === "ready") return a.runNotNeeded;
  const run = shownRun(away);
  if (run === undefined) {
    if (away.bridges.length > 0) return a.runNotWithCovers;
    return away.status_now === "not-ready" ? a.runNotSure : a.runTooLittle;
  }
  const { runs, run_from, run_min, kind, chance } = run;
  const time = say.span((run_min ?? 0) / 60);
  const at = runs.map(({ start }) => say.at(start));
  const what =
    runs.length > 1
      ? a.runOften(runs.length, time, at.join(", "))
      : a.runOnce(time, run_from === null ? at[0] : say.at(run_from), at[0]);
  return a.runBrings(what, kind === "cover-and-run", say.odds(chance));
}

/** The runs that are least trouble; among equals with covers on between. */
function shownRun({ bridges }: AwayDocument): Bridge | undefined {
  const trouble = ({ runs, run_min }: Bridge) => runs.length * (run_min ?? 0);
  return bridges
    .filter(({ runs }) => runs.length > 0)
    .reduce<Bridge | undefined>(
      (best, each) => (best === undefined || trouble(each) <= trouble(best) ? each : best),
      undefined,
    );
}

function weakestText(
  { covered, uncovered, criteria, weakest, chance_now }: AwayDocument,
  w: Words,
  say: Said,
): string {
  const at = (covered ?? uncovered).at_return;
  const [id, all, chance] =
    at === null ? [weakest, criteria, chance_now] : [at.weakest, at.criteria, at.chance];
  const found = all.find((c) => c.id === id);
  const title = criterionTitle(id, found?.title ?? id, w);
  return w.away.weakestIs(title, say.odds(found?.chance ?? chance), covered !== null);
}

function limits({ status_now, soonest, furthest, uncovered }: AwayDocument, w: Words, say: Said) {
  const a = w.away;
  if (status_now === "not-ready") {
    const text =
      soonest === null ? a.byItselfNot(say.span(uncovered.horizon_h)) : a.byItselfAt(say.at(soonest));
    return [[a.byItself, text] as [string, string]];
  }
  if (furthest === null) return [];
  const { back, covered, runs } = furthest;
  if (back.at_h === 0) return [[a.longest, a.longestNow] as [string, string]];
  const time = runs.length === 0 ? "" : say.span(runs[0].stop.at_h - runs[0].start.at_h);
  return [[a.longest, a.longestIs(say.at(back), covered, runs.length, time)] as [string, string]];
}
