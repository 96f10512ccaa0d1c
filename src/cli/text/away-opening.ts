import type { AwayDocument, StampDocument } from "../../index.js";
import type { Style } from "../style.js";
import type { Opening } from "./opening.js";
import { clock, day, odds, span } from "./words.js";

type Bridge = AwayDocument["bridges"][number];

/** The first screen: will it start at the return, and what would make it do so. */
export function awayOpening(away: AwayDocument, style: Style): Opening {
  const { name, start, zone, members, cautions, start_briefing } = away;
  const at = `${day(start)} ${start.time.slice(11, 16)}`;
  return {
    verdict: verdict(away, style),
    about: `${name}: no power from ${at} on, times in ${zone}, ${members} cases.`,
    facts: [
      ["Ready now", nowText(away)],
      ["Engine", engineText(away)],
      ["Cover on by", coverText(away)],
      ["It lasts", lastsText(away)],
      ["Run it", runText(away)],
      ["Weakest point", weakestText(away, style)],
      ["Somebody", somebodyText(away)],
      ...limits(away),
    ],
    cautions: [...cautions, ...start_briefing.notes.flatMap((note) => note.cautions)],
  };
}

function verdict(away: AwayDocument, style: Style): string {
  const { back, status, covered, uncovered, chance_now } = away;
  const mark = status === "ready" ? "Ready" : "Not ready";
  if (back === null || uncovered.at_return === null) {
    return status === "ready"
      ? `Ready now: ${odds(chance_now)} that it starts. It lasts ${lastsText(away)}.`
      : `Not ready now: ${odds(chance_now)} that it starts; weakest point: ${weakestNow(away, style)}.`;
  }
  const bare = odds(uncovered.at_return.chance);
  const chances =
    covered?.at_return == null
      ? `${bare} that it starts`
      : `${odds(covered.at_return.chance)} that it starts with covers ${away.covers_on_now.length > 0 ? "left on" : "on now"}, ${bare} without`;
  return `${mark} when back at ${clock(back, away.start)}: ${chances}.`;
}

function nowText({ status_now, chance_now }: AwayDocument): string {
  return `${status_now === "ready" ? "yes" : "no"}, ${odds(chance_now)}`;
}

function engineText({ engine_from, shut_down_h_ago, covers_on_now, covered }: AwayDocument): string {
  const cover = covered === null ? "" : covers_on_now.length > 0 ? ", covered" : ", nothing on the cowl";
  switch (engine_from) {
    case "shut-down":
      return `${shut_down_h_ago === 0 ? "just shut down" : `shut down ${span(shut_down_h_ago ?? 0)} ago`} from cruise${cover}`;
    case "readings":
      return `as read${cover}`;
    case "air":
      return `nobody said: taken as cold as the air${cover} (say when it was shut down)`;
  }
}

function coverText(away: AwayDocument): string {
  const { covered, bridges, back, uncovered, covers_on_now, cover_off_before_min } = away;
  if (covered === null) return "none carried";
  const isOn = covers_on_now.length > 0;
  if (back === null) return isOn ? "on already" : "now: it cools fastest at first";
  if (uncovered.at_return?.status === "ready") return "not needed, and of use all the same";
  const chance = odds(covered.at_return?.chance ?? 0);
  const off = `, off ${cover_off_before_min} min before the start`;
  const by = bridges.find(({ kind }) => kind === "cover")?.cover_on_by;
  if (by != null) return isOn ? `on already${off}: ${chance}` : `${byText(by, away)}${off}`;
  if (shownRun(away)?.kind === "cover-and-run")
    return `${isOn ? "on already" : "now"}, and again after each run`;
  return `not enough: ${chance} with covers ${isOn ? "left on" : "on now"}`;
}

function byText(stamp: StampDocument, { start }: AwayDocument): string {
  return stamp.at_h === 0 ? "now" : `${clock(stamp, start)} at the latest`;
}

function lastsText({ covered, uncovered, wanted_chance }: AwayDocument): string {
  const chance = `with a chance of ${odds(wanted_chance)}`;
  if (covered === null) return `${sure(uncovered)} ${chance}`;
  return `${sure(covered)} covered, ${sure(uncovered)} uncovered, ${chance}`;
}

function sure({ sure_h, horizon_h }: AwayDocument["uncovered"]): string {
  if (sure_h <= 0) return "no time";
  return sure_h >= horizon_h - 1e-3 ? `over ${span(horizon_h)}` : span(sure_h);
}

function runText(away: AwayDocument): string {
  const { back, status_now, uncovered, bridges } = away;
  if (back === null) return "name a time of return (--back HH:MM), then runs are tried";
  if (uncovered.at_return?.status === "ready") return "not needed";
  const run = shownRun(away);
  if (run !== undefined) return bridgeText(run, away);
  if (bridges.length > 0) return "not needed with covers on";
  return status_now === "not-ready" ? "no: no start is sure now" : "no run reaches it";
}

/** The runs that are least trouble; among equals with covers on between. */
function shownRun({ bridges }: AwayDocument): Bridge | undefined {
  return bridges
    .filter(({ runs }) => runs.length > 0)
    .reduce<Bridge | undefined>(
      (best, each) => (best === undefined || trouble(each) <= trouble(best) ? each : best),
      undefined,
    );
}

function trouble({ runs, run_min }: Bridge): number {
  return runs.length * (run_min ?? 0);
}

/** A bridge in words, with the chance it brings. */
export function bridgeText(bridge: Bridge, away: AwayDocument): string {
  const { kind, runs, run_from, run_min, cover_on_by, chance } = bridge;
  const cover = kind === "cover-and-run" ? ", covers on between" : "";
  if (runs.length === 0) {
    return cover_on_by === null ? odds(chance) : `covers on ${byText(cover_on_by, away)}: ${odds(chance)}`;
  }
  const at = runs.map(({ start }) => clock(start, away.start));
  if (runs.length > 1) {
    return `${runs.length} times ${span((run_min ?? 0) / 60)}, at ${at.slice(0, -1).join(", ")} and ${at[at.length - 1]}${cover}: ${odds(chance)}`;
  }
  const from = run_from === null ? at[0] : clock(run_from, away.start);
  const window = from === at[0] ? `at ${at[0]}` : `begun from ${from} to ${at[0]}`;
  return `${span((run_min ?? 0) / 60)}, ${window}${cover}: ${odds(chance)}`;
}

function somebodyText(away: AwayDocument): string {
  const runs = shownRun(away)?.runs ?? away.furthest?.runs ?? [];
  return runs.length > 0 ? "must be at the controls while it runs" : "need not stay with it";
}

function weakestText(away: AwayDocument, style: Style): string {
  const atReturn = (away.covered ?? away.uncovered).at_return;
  if (atReturn === null) return weakestNow(away, style);
  const found = atReturn.criteria.find(({ id }) => id === atReturn.weakest);
  const where = away.covered === null ? "at the return" : "at the return, covered";
  return `${style.say(found?.title ?? atReturn.weakest)}: ${odds(found?.chance ?? atReturn.chance)} ${where}`;
}

function weakestNow({ criteria, weakest }: AwayDocument, { say }: Style): string {
  const found = criteria.find(({ id }) => id === weakest);
  return `${say(found?.title ?? weakest)}, ${odds(found?.chance ?? 0)} now`;
}

function limits(away: AwayDocument): [string, string][] {
  const { furthest, soonest, status_now, start, uncovered } = away;
  if (status_now === "not-ready") {
    const looked = `not in the ${span(uncovered.horizon_h)} looked at`;
    return [["By itself", soonest === null ? looked : `${clock(soonest, start)}, as the air warms`]];
  }
  if (furthest === null) return [];
  const { covered, runs } = furthest;
  const lengths = runs.map(({ start: begun, stop }) => span(stop.at_h - begun.at_h));
  const with_ = [
    ...(covered ? ["covers on now"] : []),
    ...(runs.length > 0 ? [`${runs.length} ${runs.length === 1 ? "run" : "runs"} of ${lengths[0]}`] : []),
  ];
  if (furthest.back.at_h === 0) return [["Longest", "only now: nothing here keeps it"]];
  const how = with_.length === 0 ? "" : `, with ${with_.join(" and ")}`;
  return [["Longest", `back by ${clock(furthest.back, start)}${how}; later, nothing here keeps it`]];
}
