import type { EnsembleRun, Timeline, Trajectory } from "../simulation/index.js";
import { type PlugInGrid, stepFrom, timeOf } from "./grid.js";
import { play } from "./play.js";
import { interpolate, type Samples, samplesOf } from "./samples.js";

/** An ensemble's course without the heat that is asked about, played as far as it was read. */
export interface Soak {
  /** Writes temperatures [K] at `t` [s], parts x members. */
  temps(t: number, out: Float64Array): void;
  /** [s] up to when it was played. */
  reached(): number;
  /** Plays one more piece. */
  playOn(): void;
  /** As one course up to the first sample at or after `until`. */
  course(until: number): Trajectory;
}

/** [s] played in one piece: each begins with small steps anew, and whoever asks meanwhile waits for its end. */
const PIECE = 4 * 3600;

/** @param grid of the samples; `width` apart */
export function createSoak(run: EnsembleRun, timeline: Timeline, duration: number, grid: PlugInGrid): Soak {
  const parts = run.network.parts.map((p) => p.name);
  const { members } = run;
  const size = parts.length * members;
  const pieces: Samples[] = [];
  let front = { at: 0, state: run.initial };

  function playOn(): void {
    const { at, state } = front;
    const end = Math.min(at + PIECE, duration);
    const times = [at];
    for (let k = stepFrom(grid, at + 1); timeOf(grid, k) < end; k++) times.push(timeOf(grid, k));
    times.push(end);
    const course = play(run, { state, timeline, sampleTimes: times });
    front = { at: end, state: course.temps.slice((times.length - 1) * size) };
    pieces.push(samplesOf(course));
  }

  return {
    playOn,
    reached: () => front.at,
    temps(t, out) {
      if (t <= 0) {
        out.set(run.initial);
        return;
      }
      while (front.at < Math.min(t, duration)) playOn();
      const piece = pieces[Math.min(pieces.length - 1, Math.floor(t / PIECE))];
      interpolate(piece.time, piece.temps, t, size, out);
    },
    course: (until) => joinedPieces(pieces, parts, members, until),
  };
}

function joinedPieces(
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
