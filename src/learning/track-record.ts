import type { DrawCorrection } from "../simulation/index.js";
import { correctionFrom } from "./record-correction.js";

/** A plan that was acted on, with what came of it. */
export interface CheckedPlan {
  /** Chance of being ready that was said [0..1]. */
  readonly chance: number;
  /** Whether the engine started well when it was to; undefined where nobody wrote it down. */
  readonly held?: boolean;
  /** Readings while the plan ran, oldest first. */
  readonly readings: readonly CheckedReading[];
  readonly place: "ramp" | "hangar";
  /** What the plan had been corrected by. */
  readonly corrected?: DrawCorrection;
}

export interface CheckedReading {
  /** [ms] since 1970 UTC */
  readonly at: number;
  readonly part: string;
  /** [K] reading less the middle that was said. */
  readonly off: number;
  /** [K] standard deviation that was said. */
  readonly sd: number;
}

/** How often a base's plans came out as they said. */
export interface TrackRecord {
  /** Plans with a start or a reading to check them by. */
  readonly plans: number;
  readonly starts: Counted;
  /** The same by the chance that was said; bins without a plan are left out. */
  readonly curve: readonly (Counted & { readonly from: number; readonly to: number })[];
  readonly readings: {
    readonly count: number;
    /** Within the band that 9 in 10 were to lie in. */
    readonly within: number;
    /** [K] mean of reading less middle, each plan counting once; undefined where there are none. */
    readonly bias: number | undefined;
  };
  /** What it asks of new plans; undefined while too little is known, or nothing is to be mended. */
  readonly correction: (DrawCorrection & { readonly plans: number }) | undefined;
}

/** Outcomes beside what was said of them. */
export interface Counted {
  readonly count: number;
  readonly held: number;
  /** [0..1] mean chance that was said. */
  readonly said: number;
  /** [0..1] 90 % interval of the share that holds (Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212, from memory). */
  readonly low: number;
  readonly high: number;
}

const BINS = [0, 0.5, 0.8, 0.9, 0.97, 1] as const;
/** Half width of the 90 % band of a normal distribution. */
const NINETY_PERCENT = 1.6448536269514722;

export function trackRecord(checked: readonly CheckedPlan[]): TrackRecord {
  const plans = checked.filter(({ held, readings }) => held !== undefined || readings.length > 0);
  const started = plans.filter(({ held }) => held !== undefined);
  const readings = plans.flatMap((plan) => plan.readings);
  const means = plans.flatMap(({ readings: own }) =>
    own.length === 0 ? [] : own.reduce((sum, { off }) => sum + off, 0) / own.length,
  );
  return {
    plans: plans.length,
    starts: counted(started),
    curve: BINS.slice(1).flatMap((to, i) => {
      const from = BINS[i];
      const own = started.filter(({ chance }) => chance >= from && (chance < to || to === 1));
      return own.length === 0 ? [] : { from, to, ...counted(own) };
    }),
    readings: {
      count: readings.length,
      within: readings.filter(({ off, sd }) => Math.abs(off) <= NINETY_PERCENT * sd).length,
      bias: means.length === 0 ? undefined : means.reduce((a, b) => a + b) / means.length,
    },
    correction: correctionFrom(plans),
  };
}

function counted(plans: readonly CheckedPlan[]): Counted {
  const count = plans.length;
  const held = plans.filter((plan) => plan.held).length;
  const said = count === 0 ? 0 : plans.reduce((sum, { chance }) => sum + chance, 0) / count;
  const z = NINETY_PERCENT;
  const share = count === 0 ? 0.5 : held / count;
  const n = Math.max(count, 1e-9);
  const middle = (share + (z * z) / (2 * n)) / (1 + (z * z) / n);
  const half = (z / (1 + (z * z) / n)) * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n)) || 0;
  return { count, held, said, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}
