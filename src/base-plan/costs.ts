import { type Candidate, type Course, type Holder, manualTasksOf } from "./candidate.js";
import type { BaseLimits, Grid } from "./limits.js";

/**
 * What a candidate costs, in whole units, the weightier first: departures missed, with how much is short of them; help
 * by moving it or by a cart, which is called in only to make a departure; aircraft not warm through; harm, with what is
 * changed of what was told; energy; effort. A sum of whole numbers is exact, so that one stage's result can bind the next.
 */
export type Costs = readonly [
  short: number,
  help: number,
  cool: number,
  harm: number,
  energy: number,
  effort: number,
];

/** [s] unit of harm. */
const HARM_UNIT = 300;
/** [J] unit of energy: 0.05 kWh. */
const ENERGY_UNIT = 180_000;
/** Most that one missed departure can be short of. */
const SHORT_MOST = 20;
/** Units of harm that changing anything told costs, and so much for each unit of time it is changed by. */
const CHANGE = 6;
const CHANGE_PER_UNIT = 0.5;
/** Units for another outlet, another heater, or another stay in the hangar. */
const CHANGE_OF_KIND = 12;
/** Weight of what has to be done at night, beside 1 by day. */
const NIGHT = 3;

export interface CostContext {
  /** Aircraft planned together. */
  readonly count: number;
  readonly told: Course | undefined;
  readonly isNight: (t: number) => boolean;
}

/** A departure missed weighs more than all that the others can be short of. */
function weightOfMissed(count: number): number {
  return SHORT_MOST * count + 1;
}

export function costsOf(
  candidate: Candidate,
  holder: Holder,
  limits: BaseLimits,
  grid: Grid,
  context: CostContext,
): Costs {
  const { missed, chance, harm, energy } = candidate;
  const { told } = context;
  // What is missed is weighed by how unlikely it is, to 5 %: no outlet is taken for the last hundredth of a chance.
  const short = missed ? weightOfMissed(context.count) + Math.round(SHORT_MOST * (1 - chance)) : 0;
  const effort = manualTasksOf(candidate, holder, limits, grid)
    .filter((task) => !task.byPilot)
    .reduce((sum, task) => {
      const moving = task.do === "move-in" || task.do === "move-out";
      return sum + (context.isNight(task.at) ? NIGHT : 1) * (moving ? 3 : 1);
    }, 0);
  return [
    short,
    isHelped(candidate, holder) && !(told !== undefined && isHelped(told, holder)) ? 1 : 0,
    candidate.missesWarm ? 1 : 0,
    Math.round(harm / HARM_UNIT) + (told === undefined ? 0 : changeOf(candidate, told)),
    Math.round(energy / ENERGY_UNIT),
    effort,
  ];
}

/** Moved into the hangar, out of it before its time, or heated by a cart. */
function isHelped({ cart, stay }: Course, { exit }: Holder): boolean {
  return cart !== undefined || (stay !== undefined && (stay.from !== undefined || stay.to < exit));
}

/** Units of harm for what people have to be told anew. */
function changeOf(course: Course, told: Course): number {
  const shifts = shiftOf(course, told);
  const kind =
    (course.circuit === told.circuit ? 0 : 1) +
    (course.cart === told.cart ? 0 : 1) +
    ((course.stay === undefined) === (told.stay === undefined) ? 0 : 1) +
    (course.blocks.length === told.blocks.length ? 0 : 1);
  if (shifts === 0 && kind === 0) return 0;
  return CHANGE + Math.round(CHANGE_PER_UNIT * (shifts / HARM_UNIT)) + CHANGE_OF_KIND * kind;
}

/** [s] by which the times of a course differ from those told, all together. */
function shiftOf(course: Course, told: Course): number {
  const times = ({ blocks, stay }: Course) => [
    blocks[0]?.from,
    blocks.at(-1)?.to,
    blocks.length > 1 ? blocks[0].to : undefined,
    blocks.length > 1 ? blocks[1].from : undefined,
    stay?.from,
    stay?.to,
  ];
  const before = times(told);
  return times(course).reduce<number>((sum, t, i) => {
    const other = before[i];
    return t === undefined || other === undefined ? sum : sum + Math.abs(t - other);
  }, 0);
}

export function compareCosts(a: Costs, b: Costs): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i] - b[i];
  return 0;
}

export function sumOfCosts(all: readonly Costs[]): Costs {
  return all.reduce<Costs>(
    (sum, c) => [sum[0] + c[0], sum[1] + c[1], sum[2] + c[2], sum[3] + c[3], sum[4] + c[4], sum[5] + c[5]],
    [0, 0, 0, 0, 0, 0],
  );
}
