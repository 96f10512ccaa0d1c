import type { AwayDocument } from "../documents/index.js";
import { eachOnce, type Finding, type FindingValues, finding } from "../findings/index.js";
import { type Fact, type FirstScreen, fact } from "./screen.js";

type Bridge = AwayDocument["bridges"][number];

/** Will it start at the return, and what would make it do so. */
export function awayScreen(away: AwayDocument): FirstScreen {
  const runs = shownRun(away)?.runs ?? away.furthest?.runs ?? [];
  return {
    verdict: [verdictOf(away)],
    facts: [
      ...fact("ready-now", finding("ready-yes-no", { is_ready: isReadyNow(away), chance: away.chance_now })),
      ...fact("engine", engine(away)),
      ...fact("cover-by", cover(away)),
      ...fact("lasts", lasts(away)),
      ...fact("run", run(away)),
      ...fact("weakest", weakest(away)),
      ...fact("somebody", finding("at-controls", { is_run: runs.length > 0 })),
      ...limits(away),
    ],
    cautions: eachOnce([...away.cautions, ...away.start_briefing.notes.flatMap((note) => note.cautions)]),
  };
}

function verdictOf(away: AwayDocument): Finding {
  const { back, status, covered, uncovered, chance_now, covers_on_now } = away;
  const is_ready = status === "ready";
  if (back === null || uncovered.at_return === null) {
    const beside = is_ready ? lasts(away) : weakest(away);
    return finding("verdict-away-now", { is_ready, chance: chance_now, beside });
  }
  return finding("verdict-away", {
    is_ready,
    back: back.time,
    covered: covered?.at_return?.chance ?? null,
    uncovered: uncovered.at_return.chance,
    is_covered: covers_on_now.length > 0,
  });
}

function isReadyNow({ status_now }: AwayDocument): boolean {
  return status_now === "ready";
}

function engine({ engine_from: from, shut_down_h_ago, covers_on_now, covered }: AwayDocument): Finding {
  const cover = covered === null ? "none" : covers_on_now.length > 0 ? "on" : "off";
  return finding("engine-from", { from, shut_down_h_ago: shut_down_h_ago ?? 0, cover });
}

function cover(away: AwayDocument): Finding {
  const { covered, bridges, back, uncovered, covers_on_now, cover_off_before_min: off_before_min } = away;
  const is_covered = covers_on_now.length > 0;
  const by = bridges.find(({ kind }) => kind === "cover")?.cover_on_by ?? null;
  const how = (): FindingValues["cover-on-by"]["how"] => {
    if (covered === null) return "none";
    if (back === null) return is_covered ? "on-already" : "at-once";
    if (uncovered.at_return?.status === "ready") return "not-needed";
    if (by !== null) return "by";
    return shownRun(away)?.kind === "cover-and-run" ? "between-runs" : "too-little";
  };
  const chance = covered?.at_return?.chance ?? 0;
  return finding("cover-on-by", { how: how(), by: momentOf(by), off_before_min, chance, is_covered });
}

/** Local time; null: now. */
function momentOf(stamp: Bridge["cover_on_by"]): string | null {
  return stamp === null || stamp.at_h === 0 ? null : stamp.time;
}

function lasts({ covered, uncovered, wanted_chance: chance }: AwayDocument): Finding {
  const lasting = ({ sure_h, horizon_h }: AwayDocument["uncovered"]) => {
    const is_over = sure_h >= horizon_h - 1e-3;
    return { sure_h: is_over ? horizon_h : sure_h, is_over };
  };
  return finding("it-lasts", {
    covered: covered === null ? null : lasting(covered),
    uncovered: lasting(uncovered),
    chance,
  });
}

function run(away: AwayDocument): Finding {
  const none = (why: FindingValues["run-none"]["why"]) => finding("run-none", { why });
  if (away.back === null) return none("no-return");
  if (away.uncovered.at_return?.status === "ready") return none("not-needed");
  const shown = shownRun(away);
  if (shown !== undefined) return bridgeLine(shown);
  if (away.bridges.length > 0) return none("covers");
  return none(isReadyNow(away) ? "too-little" : "unsure");
}

/** A bridge with the chance that it brings. */
export function bridgeLine({ kind, runs, run_from, run_min, cover_on_by, chance }: Bridge): Finding {
  if (runs.length === 0) return finding("covers-on-by", { by: momentOf(cover_on_by), chance });
  return finding("run-engine", {
    starts: runs.map(({ start }) => start.time),
    from: run_from?.time ?? null,
    run_h: (run_min ?? 0) / 60,
    is_covered: kind === "cover-and-run",
    chance,
  });
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

function weakest({ covered, uncovered, criteria, weakest: now }: AwayDocument): Finding {
  const at = (covered ?? uncovered).at_return;
  const [id, all] = at === null ? [now, criteria] : [at.weakest, at.criteria];
  const found = all.find((one) => one.id === id);
  if (found === undefined) throw new RangeError(`unknown criterion: ${id}`);
  const when = at === null ? "now" : covered === null ? "return" : "return-covered";
  return finding("weakest-chance", { criterion: found.title, chance: found.chance, when });
}

function limits(away: AwayDocument): Fact[] {
  const { soonest, furthest, uncovered } = away;
  if (!isReadyNow(away)) {
    const values = { at: soonest?.time ?? null, looked_h: uncovered.horizon_h };
    return fact("by-itself", finding("ready-by-itself", values));
  }
  if (furthest === null) return [];
  const { back, covered: is_covered, runs } = furthest;
  const [first] = runs;
  const run_h = first === undefined ? 0 : first.stop.at_h - first.start.at_h;
  const values = { back: momentOf(back), is_covered, runs: runs.length, run_h };
  return fact("longest", finding("longest-away", values));
}
