import type { Block } from "../response/index.js";
import { type Course, currentOf, demandsOf, needsPerson } from "./candidate.js";
import type { Contender } from "./contender.js";
import type { PlayedCourse } from "./exact.js";
import { keepsRules, onBefore, rulesOf } from "./heater-rules.js";
import { type BaseLimits, capacityOf, type Grid, peopleIn, stepAt, stepFrom, timeOf } from "./limits.js";
import { excess, type Load } from "./rows.js";

// What is missed still gets all the heat that nobody else needs: no outlet is idle while an aircraft stays cold beside it.
// The windows that are free are played as they are, over all members.

/** Windows of heat for one aircraft, at most: more walks in the cold than anybody takes. */
const MOST_BLOCKS = 3;
/** A chance that is lower by less is not worth hours of heat; a case of 200. */
const ALIKE = 0.005;
/** [s] the last try when the start of heating is looked for. */
const FINEST = 1800;

export interface Room {
  readonly limits: BaseLimits;
  readonly grid: Grid;
  /** What all others take. */
  readonly others: Load;
}

/**
 * The best that an aircraft can do with what others leave it, where it stands in `course`: undefined when it cannot be
 * heated there, or brings no more than `course` does.
 */
export function bestOfRoom(contender: Contender, course: Course, room: Room): PlayedCourse | undefined {
  const { aircraft } = contender;
  const own = aircraft.plan.heaters.length > 0;
  if (!own || course.cart !== undefined) return undefined;
  let best = contender.played(course);
  const before = best;
  const circuits = aircraft.connected === undefined ? aircraft.circuits : [aircraft.connected];
  const places = takesPower(contender) ? circuits : [undefined];
  for (const circuit of places) {
    for (const blocks of windowsIn(contender, course, circuit, room)) {
      const tried = fitting(contender, { ...course, heaters: aircraft.plan.heaters, circuit, blocks }, room);
      const played = tried === undefined ? undefined : contender.played(tried);
      if (played !== undefined && isBetter(played, best)) best = played;
    }
  }
  if (best === before) return undefined;
  return shortened(contender, best, room);
}

/** A course that gets too hot is no course. */
function isBetter(a: PlayedCourse, b: PlayedCourse): boolean {
  return a.verdict.tooHot.length === 0 && (b.verdict.tooHot.length > 0 || a.chance > b.chance + 1e-9);
}

function takesPower({ holder, aircraft }: Contender): boolean {
  return aircraft.plan.heaters.some((id) => {
    const heater = holder.heaters.get(id);
    return heater !== undefined && (heater.elements.length > 0 || heater.duct?.energy === "electric");
  });
}

/** The same course with its plug left in, or pulled in every pause, whichever fits beside the others. */
function fitting(contender: Contender, course: Course, { limits, grid, others }: Room): Course | undefined {
  const { holder, aircraft } = contender;
  const { scenario, wish } = aircraft.plan;
  const used = course.heaters.flatMap((id) => holder.heaters.get(id) ?? []);
  const allowed = keepsRules(rulesOf(used), {
    course,
    departure: wish.departure,
    onFor: onBefore(scenario),
    moveTime: limits.hangar?.moveTime ?? 0,
  });
  if (!allowed) return undefined;
  const ways = aircraft.switched ? [false, true] : [false];
  return ways
    .map((givesUpOutlet) => ({ ...course, givesUpOutlet }))
    .find((one) => excess(others, demandsOf(one, holder, limits, grid), limits, grid).length === 0);
}

/** Ways to take the free times: the last of them, the last two and so on, each as long as its heaters allow. */
function windowsIn(
  { aircraft, holder }: Contender,
  course: Course,
  circuit: number | undefined,
  { limits, grid, others }: Room,
): Block[][] {
  const { scenario, wish } = aircraft.plan;
  const rules = rulesOf(scenario.kit.heaters.filter((h) => aircraft.plan.heaters.includes(h.id)));
  const trial = { ...course, heaters: aircraft.plan.heaters, circuit, cart: undefined };
  const byHand = needsPerson({ ...trial, circuit }, holder, limits) || circuit === undefined;
  const isOn = byHand && onBefore(scenario) !== undefined;
  const [from, end] = reachOf(course, Math.min(holder.unplug, wish.departure - rules.pause), limits);
  const attended = (k: number) => peopleIn(limits, grid, k) > 0;
  const current = currentOf({ ...trial, blocks: [] }, holder, limits);
  const left = (of: "outlet" | "current" | "people", index: number, k: number) =>
    capacityOf(limits, grid, { of, index }, k) - (others.get(`${of}:${index}`)?.[k] ?? 0);
  const isFree = (k: number) =>
    (circuit === undefined || (left("outlet", circuit, k) >= 1 && left("current", circuit, k) >= current)) &&
    (!rules.attended || left("people", 0, k) >= 1);

  const free: Block[] = [];
  let began: number | undefined;
  const last = stepFrom(grid, end);
  for (let k = stepFrom(grid, from); k <= last; k++) {
    const isInside = k < last && isFree(k);
    if (isInside && began === undefined && (!byHand || (left("people", 0, k) >= 1 && attended(k)))) began = k;
    if (isInside || began === undefined) continue;
    let stop = k;
    if (byHand && k < last) while (stop > began && left("people", 0, stop) < 1) stop--;
    const block = { from: timeOf(grid, began), to: Math.min(end, timeOf(grid, stop)) };
    if (block.to > block.from) free.push(block);
    began = undefined;
  }
  const kept = free
    .map(({ from: a, to }) => ({ from: Math.max(a, startWithin(to - rules.longest, grid)), to }))
    .filter((b) => b.to - b.from >= rules.leastInAll);
  // What is on at the start stays on until somebody switches it off.
  const fixed = isOn ? course.blocks.slice(0, 1) : [];
  const open = kept.filter((b) => fixed.every((f) => b.from >= f.to));
  const most = Math.min(MOST_BLOCKS - fixed.length, rules.attended ? 1 : MOST_BLOCKS, open.length);
  const fewest = Array.from({ length: most }, (_, i) => [...fixed, ...open.slice(open.length - 1 - i)]);
  const single = open.slice(0, -1).map((b) => [...fixed, b]);
  return [...fewest, ...single];
}

/** The first step that begins at a time or after it. */
function startWithin(t: number, grid: Grid): number {
  return timeOf(grid, Math.max(0, stepFrom(grid, t)));
}

/** [s] when it can be heated where a course has it: after it was brought in, before it is pulled out. */
function reachOf({ stay }: Course, unplug: number, limits: BaseLimits): [number, number] {
  if (stay === undefined) return [0, unplug];
  const from = stay.from === undefined ? 0 : stay.from + (limits.hangar?.moveTime ?? 0);
  return [from, Math.min(unplug, stay.to)];
}

/** The same chance for less heat: the first block begins later where that costs nothing. */
function shortened(contender: Contender, best: PlayedCourse, room: Room): PlayedCourse {
  const [first, ...rest] = best.course.blocks;
  if (first.from === 0 && onBefore(contender.aircraft.plan.scenario) !== undefined) return best;
  let kept = best;
  let [sure, late] = [first.from, first.to];
  while (late - sure > FINEST) {
    const from = timeOf(room.grid, stepAt(room.grid, (sure + late) / 2));
    if (from <= sure) break;
    const course = fitting(contender, { ...best.course, blocks: [{ ...first, from }, ...rest] }, room);
    const played = course === undefined ? undefined : contender.played(course);
    if (played?.verdict.tooHot.length === 0 && played.chance >= best.chance - ALIKE) {
      kept = played;
      sure = from;
    } else late = from;
  }
  return kept;
}
