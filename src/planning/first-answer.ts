import type { Aim } from "../readiness/index.js";
import { type FoundPlugIn, plugInGrid, timeOf } from "../response/index.js";
import { type Answered, aimedAt, answerOf } from "./answer.js";
import { chanceOn } from "./chance.js";
import { mayPlugIn, plugInRange } from "./decision.js";
import { FirstReading, type Sources } from "./first-reading.js";
import { firstPlugIn } from "./first-search.js";
import type { PlanLine, PlugInAnswer } from "./plan.js";
import type { PlanRequest } from "./request.js";

export interface FirstAnswer extends PlugInAnswer {
  /** Grid index of the plug-in, to go on from; undefined when none was searched for. */
  readonly index: number | undefined;
  /** What was found on each line that was searched. */
  readonly near: Partial<Readonly<Record<Aim, FoundPlugIn>>>;
}

/** Chance below the wanted one from which on the unheated engine's last minutes need not be played. */
const CLEARLY_COLD = 0.05;

/**
 * When to plug in, read from courses played before. The cooling from unplugging to the start is played with a few members
 * for a lead near the answer, and taken as the same for the leads around it.
 * @param near grid index of a plug-in near the answer, from a departure or a situation alike
 */
export function firstAnswer(request: PlanRequest, sources: Sources, near: number | undefined): FirstAnswer {
  const { chance: wanted } = request.wish;
  const range = plugInRange(request);
  const grid = plugInGrid(request.scenario.start);
  const reading = new FirstReading(request, sources);
  const search = (aim: Aim, last: number): Answered =>
    firstPlugIn({ reading, grid, range: { first: range.first, last }, aim, wanted, near });
  const judged = (index: number | undefined) => {
    const plugIn = index === undefined ? undefined : timeOf(grid, index);
    return { plugIn, ...reading.judged(plugIn) };
  };
  /** A line as its plug-in is judged at last: what the search took for enough may have fallen short of it by then. */
  const lineOf = ({ index }: Answered, aim: Aim): PlanLine => {
    const { plugIn, verdict, energy } = judged(index);
    const chance = chanceOn(verdict, aim);
    const reached = chance >= wanted && (index === undefined || verdict.tooHot.length === 0);
    return { reached, plugIn, chance, energy: energy.mid };
  };

  const cold = unheated(reading, wanted);
  const heatNeeded = cold.least < wanted;
  const mayHeat = mayPlugIn(request, range);
  const least: Answered = heatNeeded && mayHeat ? search("least", range.last) : { reached: !heatNeeded };
  const isWarm = cold.warm >= wanted;
  const warm: Answered =
    !isWarm && mayHeat && least.reached
      ? search("warm-through", least.index ?? range.last)
      : { reached: isWarm };
  const lines = { least: lineOf(least, "least"), warmThrough: lineOf(warm, "warm-through") };
  const { aim, aimed } = aimedAt(
    heatNeeded,
    { ...least, reached: lines.least.reached },
    { ...warm, reached: lines.warmThrough.reached },
  );
  const found = { heatNeeded, reached: aimed.reached, aim, range, lines };
  return {
    ...answerOf(request, judged(aimed.index), found),
    index: aimed.index,
    near: {
      ...foundOn("least", least, lines.least),
      ...foundOn("warm-through", warm, lines.warmThrough),
    },
  };
}

/** Chances without heat: of the least, and of an engine warm through. */
function unheated(reading: FirstReading, wanted: number): { least: number; warm: number } {
  reading.read(undefined);
  const least = reading.readyShare(reading.atUnplug(), "least");
  if (least < wanted - CLEARLY_COLD) return { least, warm: 0 };
  reading.readWithLastMinutes(undefined);
  return {
    least: reading.readyShare(reading.atStart(), "least"),
    warm: reading.readyShare(reading.atStart(), "warm-through"),
  };
}

function foundOn(aim: Aim, { index, reached }: Answered, { chance }: PlanLine): FirstAnswer["near"] {
  return index === undefined ? {} : { [aim]: { index, reached, chance } };
}
