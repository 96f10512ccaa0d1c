import type { Block, Stay } from "./candidate.js";
import { stepAt, stepFrom, timeOf } from "./limits.js";
import { type Answer, type CourseFrom, enoughFor } from "./response.js";
import { type Caution, type Outcome, type ShapedCandidate, SPARE_STARTS, type Way } from "./way.js";

/** [steps] */
const HOURLY = 6;

/** A move, with or without heat in the hangar, and what is known of it by lead. */
interface Move {
  readonly course: CourseFrom;
  readonly answer: Answer;
  readonly outcomes: Map<number, Outcome>;
}

/** Courses in which an aircraft is brought into the hangar, or leaves it before its time. */
export function movesOf(way: Way): (caution: Caution) => ShapedCandidate[] {
  const { plan, ground, inside, exit, movedUntil, attended, grid, unplug, rules } = way;
  const { hangar } = way.limits;
  // What somebody plugged in stays where it is until it is unplugged.
  if (hangar === undefined || (way.byHand && way.isOn)) return () => [];
  const { moveTime } = hangar;
  const stayFrom = (t: number): Stay => (inside ? { from: undefined, to: t } : { from: t, to: exit });
  const cold = (t: number) => ({ blocks: [], stay: stayFrom(t) });
  const warm = (t: number) => {
    const to = inside ? unplug : Math.min(unplug, exit);
    const blocks: Block[] = t + moveTime < to ? [{ from: t + moveTime, to }] : [];
    return { blocks, stay: stayFrom(t) };
  };
  const heats = plan.heaters.length > 0 && (inside || !rules.outdoors);
  // A cart that does not heat is no cart: the aircraft's own way has that course already.
  const courses = [...(way.cart === undefined ? [cold] : []), ...(heats ? [warm] : [])];
  let known: readonly Move[] | undefined;

  function played(course: CourseFrom): Move {
    const answer = ground.answer(course, movedUntil);
    answer.reach(inside ? () => false : enoughFor("least", plan.wish.chance, 1.2, 0));
    return { course, answer, outcomes: new Map() };
  }

  function outcomeAt(lead: number, { answer, outcomes }: Move): Outcome {
    const read = outcomes.get(lead);
    if (read !== undefined) return read;
    const temps = Float64Array.from(ground.cold);
    answer.add(lead, 1, temps);
    const outcome = {
      chances: ground.chances(temps),
      energy: answer.energy(lead),
      wet: answer.wet(lead),
      tooHot: lead > answer.coolLead(),
    };
    outcomes.set(lead, outcome);
    return outcome;
  }

  function candidatesOf(move: Move, caution: Caution): ShapedCandidate[] {
    const { course, answer } = move;
    if (answer.leadMost === 0) return [];
    const out: ShapedCandidate[] = [];
    const first = Math.max(0, stepFrom(grid, movedUntil - answer.leadMost));
    for (let k = stepAt(grid, movedUntil); k >= first; k--) {
      const t = timeOf(grid, k);
      const lead = movedUntil - t;
      if (!(lead > 0)) continue;
      const done = course(t);
      if (done.blocks.some((b) => b.to - b.from > rules.longest)) break;
      if (!way.isAllowed(done)) continue;
      // Leaving a bay early makes room for others: any hour will do. Coming in, the latest that is enough.
      if (inside && !(attended(k) && (k % HOURLY === 0 || !attended(k + 1)))) continue;
      if (!inside && out.length > 0 && !attended(k)) continue;
      const found = way.candidate(done, "moved", outcomeAt(lead, move), caution);
      if (found.missed && !inside) continue;
      out.push(found);
      if (!inside && out.length > SPARE_STARTS) break;
    }
    return out;
  }

  return (caution) => {
    known ??= courses.map(played);
    return known.flatMap((move) => candidatesOf(move, caution));
  };
}
