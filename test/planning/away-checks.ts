import type { PartName } from "../../src/aircraft/index.js";
import { type AwayDocument, readScenarioDocument } from "../../src/documents/index.js";
import { awayFromDocument } from "../../src/questions/index.js";
import { type Criterion, marginOf } from "../../src/readiness/criterion.js";
import { allCriteria } from "../../src/readiness/index.js";
import {
  drawEnsemble,
  type EnsembleRun,
  prepareRun,
  sampleAt,
  type TimedChange,
  timelineOf,
  trajectory,
} from "../../src/simulation/index.js";
import { GROUND_RUN_PARTS, groundRun } from "../../src/starting/index.js";

// Judges what `away` answers by playing it again: its own timelines, its own stepping, its own counting.

export function awayOf(source: unknown): AwayDocument {
  const outcome = awayFromDocument(source);
  if (outcome.status !== "completed") throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

/** Cases ready for certain and at most, of `members`. */
interface Count {
  readonly least: number;
  readonly most: number;
}

/**
 * [K] two integrations of one course may differ by this: the ensemble's tolerance keeps temperatures to about 0.05 K an hour,
 * and a leg that is begun elsewhere steps differently. Cases whose verdict turns within it count either way.
 */
const DOUBT = 0.3;

export interface Replay {
  readonly members: number;
  /** How many could be started at the end of some keeping, times in [h]. */
  ready(keeping: { coverOn?: number; runs?: readonly { at: number; until: number }[] }, at: number): Count;
}

/** Plays a document without heat, again. */
export function replayOf(source: unknown): Replay {
  const reading = readScenarioDocument(source);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  const { scenario, ensemble, want, limits } = reading;
  const draws = drawEnsemble({ ...ensemble, weather: scenario.weather });
  const run = prepareRun(scenario, draws);
  const criteria = allCriteria(scenario.installation, { heaters: [], covers: [] }, limits).filter(
    (c) => c.judged === "at-start" && c.advisory !== true && c.aim === undefined,
  );
  const covers = scenario.kit.covers.map(({ id }) => id);
  const moves = scenario.events.filter(({ change }) => change.do === "move");
  const off = want?.wish.coverOffBefore ?? 600;
  const unheated = {
    ...scenario.initial.configuration,
    heatersOn: new Set<string>(),
    coversOn: new Set<string>(),
  };

  function play(state: Float64Array, from: number, to: number, coverOn: number | undefined): Float64Array {
    if (to <= from) return state;
    const changes: TimedChange[] = [...moves];
    const on = Math.max(coverOn ?? to, from);
    if (on < to - off) {
      changes.push({ at: on, change: { do: "cover-on", covers } });
      changes.push({ at: to - off, change: { do: "cover-off", covers } });
    }
    const course = trajectory(run, {
      state,
      timeline: timelineOf(unheated, changes),
      sampleTimes: [from, to],
      tolerance: 0.1,
    });
    if (course.status !== "completed") throw new Error(course.remedy);
    return sampleAt(course, to);
  }

  return {
    members: run.members,
    ready({ coverOn, runs = [] }, at) {
      const h = 3600;
      const sure = new Uint8Array(run.members).fill(1);
      const maybe = new Uint8Array(run.members).fill(1);
      let [state, from] = [run.initial, 0];
      const on = coverOn === undefined ? undefined : coverOn * h;
      for (const each of runs) {
        const before = play(state, from, each.at * h, on);
        judgeCases(criteria, run, before, sure, maybe);
        const cooled = play(before, each.at * h, each.until * h, undefined);
        state = runEngine(run, each.at * h, (each.until - each.at) * h, before, cooled);
        from = each.until * h;
      }
      judgeCases(criteria, run, play(state, from, at * h, on), sure, maybe);
      return { least: sum(sure), most: sum(maybe) };
    },
  };
}

function judgeCases(
  criteria: readonly Criterion[],
  { network, members }: EnsembleRun,
  temps: Float64Array,
  sure: Uint8Array,
  maybe: Uint8Array,
): void {
  const parts = network.parts.map(({ name }) => name);
  const out = new Float64Array(members);
  for (const criterion of criteria) {
    // A common shift leaves a difference between parts as it is.
    const room = criterion.quantity === "temperature-difference" ? 2 * DOUBT : 0;
    const always = new Uint8Array(members).fill(1);
    const ever = new Uint8Array(members);
    for (const shift of [-DOUBT, DOUBT]) {
      criterion.values({ temps: temps.map((t) => t + shift), parts, members }, out);
      for (let m = 0; m < members; m++) {
        const margin = marginOf(criterion, out[m]);
        if (margin < room) always[m] = 0;
        if (margin >= -room) ever[m] = 1;
      }
    }
    for (let m = 0; m < members; m++) {
      if (always[m] === 0) sure[m] = 0;
      if (ever[m] === 0) maybe[m] = 0;
    }
  }
}

/** The run's parts from where they were, one case after the other; a fifth of the gain is in doubt. */
function runEngine(
  { network, members, forcing, draws }: EnsembleRun,
  at: number,
  duration: number,
  before: Float64Array,
  cooled: Float64Array,
): Float64Array {
  const after = Float64Array.from(cooled);
  for (let m = 0; m < members; m++) {
    const own = new Map<PartName, number>();
    network.parts.forEach(({ name }, row) => {
      const part = name as PartName;
      if (GROUND_RUN_PARTS.includes(part)) own.set(part, before[row * members + m]);
    });
    const warmed = groundRun(own, forcing.tempAirAt(at, m), duration);
    network.parts.forEach(({ name }, row) => {
      const was = own.get(name as PartName);
      const then = warmed.get(name as PartName);
      if (was === undefined || then === undefined) return;
      after[row * members + m] = was + Math.max(0, 1 + 0.2 * draws.initialOffset[m]) * (then - was);
    });
  }
  return after;
}

function sum(flags: Uint8Array): number {
  return flags.reduce((total, flag) => total + flag, 0);
}

/** Everything that an answer says and the replay does not bear out. */
export function faultsOf(away: AwayDocument, replay: Replay): string[] {
  const faults: string[] = [];
  const { members } = replay;
  const needed = away.wanted_chance * members - 1e-6;
  const agree = (what: string, chance: number, { least, most }: Count) => {
    const said = Math.round(chance * members);
    if (said < least || said > most)
      faults.push(`${what}: ${said} of ${members}, played ${least} to ${most}`);
  };
  const enough = (what: string, { most }: Count) => {
    if (most < needed)
      faults.push(`${what}: at most ${most} of ${members} ready, ${needed.toFixed(1)} wanted`);
  };
  const tick = (what: string, status: string, chance: number) => {
    const isReady = chance * members >= needed;
    if ((status === "ready") !== isReady) faults.push(`${what}: ${status} at ${chance}`);
  };
  agree("now", away.chance_now, replay.ready({}, 0));
  tick("now", away.status_now, away.chance_now);
  const cases = [
    { name: "uncovered", is: away.uncovered, keeping: {} },
    ...(away.covered === null ? [] : [{ name: "covered", is: away.covered, keeping: { coverOn: 0 } }]),
  ];
  for (const { name, is, keeping } of cases) {
    if (away.status_now === "not-ready" && is.sure_h > 0)
      faults.push(`${name}: it lasts, and is not ready now`);
    if (is.sure_h > 0) enough(`${name} after ${is.sure_h} h`, replay.ready(keeping, is.sure_h));
    if (is.at_return === null || away.back === null) continue;
    agree(`${name} at the return`, is.at_return.chance, replay.ready(keeping, away.back.at_h));
    tick(`${name} at the return`, is.at_return.status, is.at_return.chance);
  }
  const chances = cases.flatMap(({ is }) => (is.at_return === null ? [] : [is.at_return.chance]));
  tick("the answer", away.status, chances.length > 0 ? Math.max(...chances) : away.chance_now);
  for (const bridge of away.bridges) faults.push(...bridgeFaults(away, bridge, replay, agree, enough));
  if (away.furthest !== null) {
    const { back, covered, runs } = away.furthest;
    const keeping = {
      ...(covered ? { coverOn: 0 } : {}),
      runs: runs.map(({ start, stop }) => ({ at: start.at_h, until: stop.at_h })),
    };
    enough("the furthest return", replay.ready(keeping, back.at_h));
  }
  return faults;
}

function bridgeFaults(
  away: AwayDocument,
  bridge: AwayDocument["bridges"][number],
  replay: Replay,
  agree: (what: string, chance: number, count: Count) => void,
  enough: (what: string, count: Count) => void,
): string[] {
  const back = away.back?.at_h;
  if (back === undefined) return ["a bridge to nowhere"];
  const cover = bridge.cover_on_by === null ? {} : { coverOn: bridge.cover_on_by.at_h };
  const runs = bridge.runs.map(({ start, stop }) => ({ at: start.at_h, until: stop.at_h }));
  const played = replay.ready({ ...cover, runs }, back);
  agree(bridge.kind, bridge.chance, played);
  enough(bridge.kind, played);
  const faults = bridge.chance * replay.members < away.wanted_chance * replay.members - 1e-6;
  if (bridge.run_from !== null) {
    const [{ at, until }] = runs;
    const sooner = bridge.run_from.at_h;
    const first = [{ at: sooner, until: sooner + until - at }];
    enough(`${bridge.kind}, as soon as it may be`, replay.ready({ ...cover, runs: first }, back));
  }
  if (runs.length > 0 && away.status_now === "not-ready")
    return [`${bridge.kind}: a run without a sure start`];
  return faults ? [`${bridge.kind}: ${bridge.chance} is below the wanted chance`] : [];
}
