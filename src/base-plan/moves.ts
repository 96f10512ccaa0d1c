import { quantile } from "../numerics/index.js";
import { type Block, createLeadCurve, overheats, play } from "../response/index.js";
import { sampleAt, timelineOf } from "../simulation/index.js";
import type { Course, Stay } from "./candidate.js";
import { changesOf } from "./course-run.js";
import {
  type ChanceMargin,
  type HeaterOption,
  type Outcome,
  type ShapedCandidate,
  SPARE_STARTS,
} from "./heater-option.js";
import { stepAt, timeOf } from "./limits.js";
import { wetCurve } from "./wet-curve.js";

/** [steps] */
const HOURLY = 6;

/** What is done from a time on until departure; the same shape for all times. */
type CourseFrom = (t: number) => Pick<Course, "blocks" | "stay">;

/** A move, with or without heat in the hangar, and what it brings by the time [s] before the latest one. */
interface Move {
  readonly course: CourseFrom;
  outcome(lead: number): Outcome;
}

/** Courses in which an aircraft is brought into the hangar, or leaves it before its time. */
export function movesOf(option: HeaterOption): (margin: ChanceMargin) => ShapedCandidate[] {
  const { plan, inside, exit, unplug, rules } = option;
  const { hangar } = option.limits;
  // What somebody plugged in stays where it is until it is unplugged.
  if (hangar === undefined || (option.byHand && option.isOn)) return () => [];
  const { moveTime } = hangar;
  /** [s] up to when a move can begin. */
  const latest = inside ? exit : exit - moveTime;
  const stayFrom = (t: number): Stay => (inside ? { from: undefined, to: t } : { from: t, to: exit });
  const cold = (t: number) => ({ blocks: [], stay: stayFrom(t) });
  const warm = (t: number) => {
    const to = inside ? unplug : Math.min(unplug, exit);
    const blocks: Block[] = t + moveTime < to ? [{ from: t + moveTime, to }] : [];
    return { blocks, stay: stayFrom(t) };
  };
  const heats = plan.heaters.length > 0 && (inside || !rules.outdoors);
  // A cart that does not heat is no cart: the aircraft's own heaters have that course already.
  const courses = [...(option.cart === undefined ? [cold] : []), ...(heats ? [warm] : [])];
  let moves: readonly Move[] | undefined;
  return (margin) => {
    if (latest <= 0) return [];
    moves ??= courses.map((course) => moveOf(option, course, latest));
    return moves.flatMap((move) => candidatesOf(option, move, latest, margin));
  };
}

/** [s] the longest move whose wet hours are worked out. */
const WET_MOST = 24 * 3600;

/** Plays a move at a few times and reads between them. */
function moveOf(option: HeaterOption, course: CourseFrom, latest: number): Move {
  const { response, atDeparture } = option;
  const { parts, members } = response;
  const { cold } = atDeparture;
  const known = new Map<number, Outcome>();
  const curve = createLeadCurve(latest, (lead) => playedMove(option, course(latest - lead), latest - lead));
  const wetAt = wetCurve(
    () => Math.min(latest, WET_MOST),
    (lead) => option.wetTime(course(latest - lead)),
  );
  function outcome(lead: number): Outcome {
    const found = known.get(lead);
    if (found !== undefined) return found;
    const read = new Float64Array(2 * cold.length + members);
    read.set(cold);
    read.set(cold, cold.length);
    curve.add(lead, read);
    const hot = { temps: read.subarray(cold.length, 2 * cold.length), parts, members };
    const made = {
      chances: option.chances(read.subarray(0, cold.length)),
      energy: quantile(read.slice(2 * cold.length), 0.5),
      wet: wetAt(lead),
      tooHot: course(latest - lead).blocks.length > 0 && overheats(option.plan.criteria, hot),
    };
    known.set(lead, made);
    return made;
  }
  return { course, outcome };
}

/** Temperatures [K] over the cold ones at departure and when heat ends, and the heat put in [J] by each member. */
function playedMove(
  { plan, response, atDeparture, limits }: HeaterOption,
  course: Pick<Course, "blocks" | "stay">,
  from: number,
): Float64Array {
  const { parts, members, run } = response;
  const { scenario, wish, heaters } = plan;
  const { cold } = atDeparture;
  const state = new Float64Array(parts.length * members);
  response.temps(undefined, from, state);
  const hot = course.blocks.at(-1)?.to ?? wish.departure;
  const played = play(run, {
    state,
    timeline: timelineOf(scenario.initial.configuration, changesOf(plan, { ...course, heaters }, limits)),
    sampleTimes: [...new Set([from, hot, wish.departure])].sort((a, b) => a - b),
  });
  const out = new Float64Array(2 * cold.length + members);
  [wish.departure, hot].forEach((t, i) => {
    sampleAt(played, t).forEach((temp, k) => {
      out[i * cold.length + k] = temp - cold[k];
    });
  });
  out.set(played.energy.subarray(played.energy.length - members), 2 * cold.length);
  return out;
}

function candidatesOf(
  option: HeaterOption,
  { course, outcome }: Move,
  latest: number,
  margin: ChanceMargin,
): ShapedCandidate[] {
  const { grid, inside, attended, rules } = option;
  const out: ShapedCandidate[] = [];
  for (let k = stepAt(grid, latest); k >= 0; k--) {
    const t = timeOf(grid, k);
    const lead = latest - t;
    if (!(lead > 0)) continue;
    const done = course(t);
    if (done.blocks.some((b) => b.to - b.from > rules.longest)) break;
    if (!option.isAllowed(done)) continue;
    // Leaving a bay early makes room for others: any hour will do. Coming in, the latest that is enough.
    if (inside && !(attended(k) && (k % HOURLY === 0 || !attended(k + 1)))) continue;
    if (!inside && out.length > 0 && !attended(k)) continue;
    const found = option.candidate(done, "moved", outcome(lead), margin);
    if (found.missed && !inside) continue;
    out.push(found);
    if (!inside && out.length > SPARE_STARTS) break;
  }
  return out;
}
