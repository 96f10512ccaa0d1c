import {
  type Draws,
  ENSEMBLE_TOLERANCE,
  type EnsembleRun,
  prepareRun,
  type Timeline,
  type Trajectory,
  timelineOf,
  trajectory,
} from "../simulation/index.js";
import { NumericalFailure, type Soaked } from "./chance.js";
import type { PlanRequest } from "./request.js";
import { PLUG_IN_STEP } from "./search.js";
import type { Steps } from "./steps.js";

/**
 * How an ensemble answers to heat from any moment on: its soak, and heated courses from a coarse grid of plug-ins. What
 * lies between is read by interpolation; what was not yet played is played when it is asked for.
 */
export interface HeatResponse extends ReadResponse {
  readonly run: EnsembleRun;
  /** The soak up to a time, for runs that decide. */
  soakedTo(until: number): Steps<Soaked>;
  /** Plays all there is to play. */
  fill(): Steps<void>;
  isFilled(): boolean;
}

/** What can be read of it. */
export interface ReadResponse {
  readonly parts: readonly string[];
  readonly members: number;
  /** Writes temperatures [K] at time `t` [s], parts x members, plugged in at `plugIn` or never. */
  temps(plugIn: number | undefined, t: number, out: Float64Array): void;
  /** Writes the heat [J] put in between `plugIn` and `t`, per member. */
  energy(plugIn: number, t: number, out: Float64Array): void;
}

/** [s] between plug-ins whose heated courses are played. The rise from heat depends on the moment only by the weather. */
const NODE_SPACING = 3600;
/** [s] after plug-in at which heated courses are kept; from then on an engine is as warm as the heat makes it. */
const LEADS = [
  0, 600, 1200, 1800, 2700, 3600, 4800, 6000, 7200, 9000, 10_800, 12_600, 14_400, 18_000, 21_600, 28_800,
  36_000,
];
const LONGEST = LEADS[LEADS.length - 1];
/** [s] of the soak played in one piece: each begins with small steps anew, and whoever asks meanwhile waits for its end. */
const PIECE = 4 * 3600;

/** Samples of a course in single precision, which keeps a temperature to 0.00002 K in half the memory. */
interface Samples {
  readonly time: readonly number[];
  readonly temps: Float32Array;
  readonly energy: Float32Array;
}

export function createHeatResponse(
  { scenario, heaters }: Pick<PlanRequest, "scenario" | "heaters">,
  draws: Draws,
): HeatResponse {
  const run = prepareRun(scenario, draws);
  const parts = run.network.parts.map((p) => p.name);
  const { members } = run;
  const size = parts.length * members;
  const own = timelineOf(scenario.initial.configuration, scenario.events);
  const pieces: Samples[] = [];
  let front = { at: 0, state: run.initial };
  const nodes = new Map<number, Samples>();
  const nodeCount = Math.floor((scenario.duration - 1) / NODE_SPACING) + 1;
  const scratch = new Float64Array(size);

  function played(state: Float64Array, timeline: Timeline, sampleTimes: readonly number[]): Trajectory {
    const course = trajectory(run, { state, timeline, sampleTimes, tolerance: ENSEMBLE_TOLERANCE });
    if (course.status !== "completed") throw new NumericalFailure(`${course.status}: ${course.remedy}`);
    return course;
  }

  /** One more piece of the soak. */
  function soakOn(): void {
    const { at, state } = front;
    const end = Math.min(at + PIECE, scenario.duration);
    const times: number[] = [];
    for (let t = at; t < end; t += PLUG_IN_STEP) times.push(t);
    times.push(end);
    const course = played(state, own, times);
    front = { at: end, state: course.temps.slice((times.length - 1) * size) };
    pieces.push(compact(course));
  }

  function soakTemps(t: number, out: Float64Array): void {
    while (front.at < t) soakOn();
    const piece = pieces[Math.min(pieces.length - 1, Math.floor(t / PIECE))] ?? initialSamples();
    interpolate(piece.time, piece.temps, t, size, out);
  }

  function initialSamples(): Samples {
    return { time: [0], temps: Float32Array.from(run.initial), energy: new Float32Array(members) };
  }

  function nodeAt(index: number): Samples {
    const known = nodes.get(index);
    if (known !== undefined) return known;
    const from = index * NODE_SPACING;
    const state = new Float64Array(size);
    soakTemps(from, state);
    const leads = LEADS.filter((lead) => from + lead <= scenario.duration);
    const timeline = timelineOf(scenario.initial.configuration, [
      ...scenario.events,
      { at: from, change: { do: "plug-in", heaters } },
    ]);
    const node = compact(
      played(
        state,
        timeline,
        leads.map((lead) => from + lead),
      ),
    );
    nodes.set(index, node);
    return node;
  }

  /** The plug-ins on both sides that were played, with weights; what was heated longest counts as heated LONGEST. */
  function around(plugIn: number, t: number): { lead: number; nodes: { index: number; weight: number }[] } {
    const from = Math.max(plugIn, t - LONGEST);
    const lead = t - from;
    const index = Math.min(nodeCount - 1, Math.floor(from / NODE_SPACING));
    const weight = (from - index * NODE_SPACING) / NODE_SPACING;
    const next = index + 1;
    if (weight === 0 || next >= nodeCount || next * NODE_SPACING + lead > scenario.duration) {
      return { lead, nodes: [{ index, weight: 1 }] };
    }
    return {
      lead,
      nodes: [
        { index, weight: 1 - weight },
        { index: next, weight },
      ],
    };
  }

  return {
    run,
    parts,
    members,
    temps(plugIn, t, out) {
      soakTemps(t, out);
      if (plugIn === undefined || plugIn >= t) return;
      const { lead, nodes } = around(plugIn, t);
      for (const { index, weight } of nodes) {
        const node = nodeAt(index);
        const at = index * NODE_SPACING + lead;
        // What heat adds changes far less from one moment to another than the temperature itself does.
        soakTemps(at, scratch);
        for (let k = 0; k < size; k++) out[k] -= weight * scratch[k];
        interpolate(node.time, node.temps, at, size, scratch);
        for (let k = 0; k < size; k++) out[k] += weight * scratch[k];
      }
    },
    energy(plugIn, t, out) {
      const { lead, nodes } = around(plugIn, t);
      const sum = new Float64Array(members);
      out.fill(0);
      for (const { index, weight } of nodes) {
        const { time, energy } = nodeAt(index);
        interpolate(time, energy, index * NODE_SPACING + lead, members, sum);
        for (let m = 0; m < members; m++) out[m] += weight * sum[m] * ((t - plugIn) / lead);
      }
    },
    *soakedTo(until) {
      while (front.at < until) {
        soakOn();
        yield;
      }
      return { run, soak: widened(pieces, parts, members, until) };
    },
    *fill() {
      yield* this.soakedTo(scenario.duration);
      for (let index = 0; index < nodeCount; index++) {
        if (nodes.has(index)) continue;
        nodeAt(index);
        yield;
      }
    },
    isFilled: () => front.at >= scenario.duration && nodes.size === nodeCount,
  };
}

function compact({ time, temps, energy }: Trajectory): Samples {
  return { time: [...time], temps: Float32Array.from(temps), energy: Float32Array.from(energy) };
}

/** Writes the row at `t`, linear between the rows of two samples; the ends hold beyond themselves. */
function interpolate(
  time: readonly number[],
  rows: Float32Array,
  t: number,
  size: number,
  out: Float64Array,
): void {
  let s = 0;
  while (s < time.length - 2 && time[s + 1] < t) s++;
  const next = Math.min(s + 1, time.length - 1);
  const span = time[next] - time[s];
  const w = span === 0 ? 0 : Math.min(1, Math.max(0, (t - time[s]) / span));
  const a = s * size;
  const b = next * size;
  for (let k = 0; k < size; k++) out[k] = (1 - w) * rows[(a + k) | 0] + w * rows[(b + k) | 0];
}

/** Pieces of the soak as one course up to the first sample at or after `until`. */
function widened(
  pieces: readonly Samples[],
  parts: readonly string[],
  members: number,
  until: number,
): Trajectory {
  const size = parts.length * members;
  const rows = pieces.flatMap((piece, p) =>
    // A piece begins where the one before it ends.
    piece.time.map((t, s) => ({ piece, t, s })).slice(p === 0 ? 0 : 1),
  );
  const beyond = rows.findIndex(({ t }) => t >= until);
  const used = beyond < 0 ? rows : rows.slice(0, beyond + 1);
  const temps = new Float64Array(used.length * size);
  const energy = new Float64Array(used.length * members);
  const before = new Float64Array(members);
  used.forEach(({ piece, s }, i) => {
    temps.set(piece.temps.subarray(s * size, (s + 1) * size), i * size);
    for (let m = 0; m < members; m++) energy[i * members + m] = before[m] + piece.energy[s * members + m];
    if (s === piece.time.length - 1) before.set(energy.subarray(i * members, (i + 1) * members));
  });
  return {
    status: "completed",
    remedy: "",
    time: Float64Array.from(used, ({ t }) => t),
    parts,
    members,
    temps,
    energy,
  };
}
