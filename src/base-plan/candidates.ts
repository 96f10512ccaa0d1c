import type { Aim } from "../readiness/index.js";
import { firstMembers } from "../simulation/index.js";
import type { Holder } from "./candidate.js";
import { type CoursesOf, coursesOf } from "./courses.js";
import type { CoursePlayer } from "./exact.js";
import {
  type ChanceMargin,
  type HeaterOption,
  heaterOptionOf,
  type Scope,
  type ShapedCandidate,
} from "./heater-option.js";
import type { BaseLimits, Grid } from "./limits.js";
import { movesOf } from "./moves.js";
import { type BaseAircraft, holderOf } from "./request.js";

/** Members that look among courses; all of them judge what is chosen. */
const SCOUTS = 40;

/** The courses of one aircraft that are worth a thought. */
export interface CourseFinder {
  readonly holder: Holder;
  candidates(scope: Scope, margin: ChanceMargin): ShapedCandidate[];
}

/** @param play over all members, each course once */
export function courseFinder(
  aircraft: BaseAircraft,
  limits: BaseLimits,
  grid: Grid,
  play: CoursePlayer,
): CourseFinder {
  const holder = holderOf(aircraft, limits);
  const draws = firstMembers(aircraft.plan.draws, SCOUTS);
  const readers = new Map<number | undefined, Reader>();
  const readerWith = (cart: number | undefined): Reader => {
    const known =
      readers.get(cart) ?? readerOf(heaterOptionOf(aircraft, holder, limits, grid, draws, cart, play));
    readers.set(cart, known);
    return known;
  };
  return {
    holder,
    candidates(scope, margin) {
      const own = readerWith(undefined);
      const onLine = (aim: Aim) => own.courses(scope, aim, margin);
      const warm = onLine("warm-through");
      // Where the least holds without heat, none is required, and so none is planned.
      const [none] = warm;
      if (none !== undefined && none.blocks.length === 0 && !none.missed) return [none];
      const canBeWarm = warm.some((c) => !c.missesWarm);
      const found = canBeWarm && !scope.bothLines ? warm : [...(canBeWarm ? warm : []), ...onLine("least")];
      if (scope.moves) {
        const moved = own.moves(margin);
        found.push(...moved);
        for (const cart of own.option.isOn ? [] : aircraft.carts) {
          const carted = readerWith(cart);
          const heated = carted.courses(scope, "least", margin);
          found.push(...heated);
          // Both a cart and the hangar: only where neither alone is enough.
          if (own.option.inside || ![...moved, ...heated].some((c) => !c.missed)) {
            found.push(...carted.moves(margin));
          }
        }
      }
      return different(found).flatMap((candidate) => onCircuits(candidate, aircraft, holder, limits));
    },
  };
}

/** Each once: the lines have some courses in common. */
function different(candidates: readonly ShapedCandidate[]): ShapedCandidate[] {
  const byTimes = new Map<string, ShapedCandidate>();
  for (const one of candidates) {
    const key = JSON.stringify([one.cart ?? null, one.blocks.map((b) => [b.from, b.to]), one.stay ?? null]);
    if (!byTimes.has(key)) byTimes.set(key, one);
  }
  return [...byTimes.values()];
}

/** What is read out of one set of heaters. */
interface Reader {
  readonly option: HeaterOption;
  readonly courses: CoursesOf;
  readonly moves: ReturnType<typeof movesOf>;
}

function readerOf(option: HeaterOption): Reader {
  return { option, courses: coursesOf(option), moves: movesOf(option) };
}

/** The same on every circuit that it reaches and, with a switch, with its plug left in or pulled as soon as it can be. */
function onCircuits(
  candidate: ShapedCandidate,
  { circuits, connected, switched }: BaseAircraft,
  { heaters, unplug }: Holder,
  limits: BaseLimits,
): ShapedCandidate[] {
  const { blocks, cart } = candidate;
  if (blocks.length === 0) return [candidate];
  const needsOutlet = candidate.heaters.some((id) => {
    const heater = heaters.get(id);
    return heater !== undefined && (heater.elements.length > 0 || heater.duct?.energy === "electric");
  });
  if (!needsOutlet) return [candidate];
  const reached = connected === undefined ? circuits : [connected];
  const early = switched && cart === undefined && (blocks.length > 1 || blocks[0].to < unplug);
  return reached.flatMap((circuit) => {
    const there = { ...candidate, circuit };
    return early && !limits.circuits[circuit].generator
      ? [there, { ...there, givesUpOutlet: true }]
      : [there];
  });
}
