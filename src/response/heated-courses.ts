import { type EnsembleRun, type Scenario, timelineOf } from "../simulation/index.js";
import { play } from "./play.js";
import { lengthened, type Samples, samplesOf } from "./samples.js";
import type { Soak } from "./soak.js";
import type { Steps } from "./steps.js";

/** Heated courses from a coarse grid of plug-ins (nodes), played when they are asked for. */
export interface HeatedCourses {
  /** [s] between plug-ins of the grid. */
  readonly spacing: number;
  /** The course from a plug-in of the grid (index times spacing), as far as `lead` [s]. */
  heated(index: number, lead: number): Samples;
  /** The plug-ins on both sides that are played, with weights; what was heated longest counts as heated `longest`. */
  around(plugIn: number, t: number): { lead: number; near: { index: number; weight: number }[] };
  /** Plays all courses to their ends. */
  fill(): Steps<void>;
  isFilled(): boolean;
}

interface Heating {
  readonly run: EnsembleRun;
  readonly scenario: Scenario;
  readonly heaters: readonly string[];
  readonly soak: Soak;
}

interface CourseGrid {
  readonly spacing: number;
  /** [s] after plug-in at which courses are kept, ascending from 0. */
  readonly leads: readonly number[];
  /** [K] local error of the steps. */
  readonly tolerance?: number;
}

/** [s] leads to which a heated course is played at one go. */
const REACHES = [3600, 7200, 10_800, 14_400, 21_600, 28_800, 36_000, 50_400];

export function createHeatedCourses(
  { run, scenario: { duration, initial, events }, heaters, soak }: Heating,
  { spacing, leads, ...solving }: CourseGrid,
): HeatedCourses {
  const size = run.network.parts.length * run.members;
  const nodes = new Map<number, Samples>();
  const nodeCount = Math.floor((duration - 1) / spacing) + 1;
  const longest = leads[leads.length - 1];

  /** [s] the last moment of a node that can be read. */
  const endOf = (from: number) => Math.min(from + longest, duration);

  function heated(index: number, lead: number): Samples {
    const from = index * spacing;
    const known = nodes.get(index);
    const reached = known?.time.at(-1) ?? from;
    if (known !== undefined && reached >= Math.min(from + lead, endOf(from))) return known;
    const to = Math.min(from + (REACHES.find((reach) => reach >= lead) ?? longest), endOf(from));
    const times = leads.map((l) => from + l).filter((t) => t > reached && t < to);
    const state = new Float64Array(size);
    if (known === undefined) soak.temps(from, state);
    else state.set(known.temps.subarray(known.temps.length - size));
    const plugIn = { at: from, change: { do: "plug-in", heaters } } as const;
    const course = play(run, {
      state,
      timeline: timelineOf(initial.configuration, [...events, plugIn]),
      sampleTimes: [reached, ...times, to],
      ...solving,
    });
    const node = known === undefined ? samplesOf(course) : lengthened(known, course);
    nodes.set(index, node);
    return node;
  }

  function isWhole(index: number): boolean {
    return (nodes.get(index)?.time.at(-1) ?? -1) >= endOf(index * spacing);
  }

  return {
    spacing,
    heated,
    around(plugIn, t) {
      const from = Math.max(plugIn, t - longest);
      const lead = t - from;
      const index = Math.min(nodeCount - 1, Math.floor(from / spacing));
      const weight = (from - index * spacing) / spacing;
      const next = index + 1;
      if (weight === 0 || next >= nodeCount || next * spacing + lead > duration) {
        return { lead, near: [{ index, weight: 1 }] };
      }
      return {
        lead,
        near: [
          { index, weight: 1 - weight },
          { index: next, weight },
        ],
      };
    },
    *fill() {
      for (let index = 0; index < nodeCount; index++) {
        if (isWhole(index)) continue;
        heated(index, longest);
        yield;
      }
    },
    isFilled: () => Array.from({ length: nodeCount }, (_, i) => i).every(isWhole),
  };
}
