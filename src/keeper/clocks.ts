import type { Clock } from "../devices/index.js";

/** The base's time: the computer's, or one that runs faster, for showing and testing. */
export interface BaseClock {
  /** [ms] since 1970 UTC. */
  readonly now: () => number;
  readonly forSwitches: Clock;
  /** Calls `work` every so many [ms] of the base's time, never while the last call is still under way. */
  every(ms: number, work: () => unknown, onTrouble: (error: unknown) => void): () => void;
}

/** [ms] real time between calls at the least, however fast the base's clock runs. */
const MOST_OFTEN = 100;

export function createClock(speed: number): BaseClock {
  const epoch = Date.now();
  const began = performance.now();
  // Where time is not sped up the computer's clock is read anew each time, so that its jumps are seen.
  const now = speed === 1 ? Date.now : () => Math.round(epoch + (performance.now() - began) * speed);
  const realMs = (ms: number) => (speed === 1 ? ms : Math.max(MOST_OFTEN, ms / speed));
  return {
    now,
    forSwitches: {
      monotonicS: () => (performance.now() * speed) / 1000,
      wallMs: now,
      every(ms, run) {
        const timer = setInterval(run, realMs(ms));
        return () => clearInterval(timer);
      },
    },
    every(ms, work, onTrouble) {
      let busy = false;
      const timer = setInterval(async () => {
        if (busy) return;
        busy = true;
        try {
          await work();
        } catch (error) {
          onTrouble(error);
        } finally {
          busy = false;
        }
      }, realMs(ms));
      return () => clearInterval(timer);
    },
  };
}
