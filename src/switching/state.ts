import { z } from "zod";
import { record } from "../documents/index.js";
import { SWITCH_FAULTS, type SwitchFault } from "./faults.js";
import type { Instant, OnOff, PlanWindow } from "./inputs.js";
import { CLOCK_DRIFT, CLOCK_TOLERANCE_S, type SwitchRules } from "./rules.js";

export const PHASES = ["off", "saving", "turning-on", "on", "turning-off"] as const;
/**
 * off: confirmed off. saving: to be turned on, once that is written down. turning-on: commanded on. on: confirmed on.
 * turning-off: commanded off, again and again until confirmed; also from the start on, when nothing is known.
 */
export type Phase = (typeof PHASES)[number];

/** All there is to one switch, as plain JSON. Times are [s] of the monotonic clock unless they are Instants. */
export interface SwitchState {
  readonly format: 1;
  readonly phase: Phase;
  /** Number of the newest save that was ordered. */
  readonly saveId: number;
  readonly now: Instant;
  /** [s] wall clock minus monotonic clock, following slow drift. */
  readonly clockOffset: number;
  readonly clockSteadyFrom: number;
  /** [s] on-time of finished stays since the last rest. */
  readonly usedS: number;
  /** Since when it may have been on. */
  readonly onSince: Instant | null;
  /** Since when it is confirmed off without a break. */
  readonly offSince: Instant | null;
  readonly command: {
    readonly to: OnOff;
    /** First given. */
    readonly since: number;
    /** Given last. */
    readonly at: number;
    readonly repeats: number;
    /** Given out of caution, at a start or after a lost link: late confirmation is then no fault of the switch. */
    readonly asCaution: boolean;
    readonly onTimeS: number | null;
  };
  readonly plan: PlanWindow | null;
  readonly byHand: { readonly to: OnOff; readonly until: number; readonly untilWall: number } | null;
  readonly stopped: boolean;
  readonly online: boolean;
  readonly writable: boolean;
  readonly probes: Readonly<Record<string, HeardProbe>>;
  /** Raised and not cleared; of these the locking ones hold the switch off. */
  readonly faults: readonly SwitchFault[];
}

export interface HeardProbe {
  /** [ms] since 1970 UTC, as the reading said. */
  readonly at: number;
  /** The same on the monotonic clock. */
  readonly heard: number;
  readonly tempC: number;
  /** Since when it has given exactly this value. */
  readonly sameSince: number;
}

/** The part that has to outlive the process; a save is ordered whenever it changes. */
export interface DurableState {
  readonly format: 1;
  readonly mayBeOn: boolean;
  readonly usedS: number;
  readonly onSinceWall: number | null;
  readonly offSinceWall: number | null;
  /** [ms] wall clock until which a person wants it off. */
  readonly offByHandUntil: number | null;
  readonly faults: readonly SwitchFault[];
}

const wall = z.number().nullable();
const durable = record({
  format: z.literal(1),
  mayBeOn: z.boolean(),
  usedS: z.number().min(0),
  onSinceWall: wall,
  offSinceWall: wall,
  offByHandUntil: wall,
  faults: z.array(z.enum(SWITCH_FAULTS as [SwitchFault, ...SwitchFault[]])),
});

export function durableOf(state: SwitchState): DurableState {
  return {
    format: 1,
    mayBeOn: state.onSince !== null,
    usedS: state.usedS,
    onSinceWall: state.onSince?.wall ?? null,
    offSinceWall: state.offSince?.wall ?? null,
    offByHandUntil: state.byHand?.to === "off" ? state.byHand.untilWall : null,
    faults: state.faults,
  };
}

/** True when something was saved and it is not what this machine saves. */
export function isUnreadable(saved: unknown): boolean {
  return saved !== undefined && !durable.safeParse(saved).success;
}

/**
 * How a process begins: nothing is known but what was saved. Whatever is doubtful counts against the heater: a wall
 * clock that went back uses up the on-time, and what cannot be read locks the switch.
 */
export function startedState(rules: SwitchRules, saved: unknown, now: Instant): SwitchState {
  const unreadable = isUnreadable(saved);
  const kept = saved === undefined || unreadable ? undefined : durable.parse(saved);
  const known = memory(rules, kept, now);
  const offWanted = kept?.offByHandUntil ?? null;
  return {
    format: 1,
    phase: "turning-off",
    saveId: 0,
    now,
    clockOffset: now.wall / 1000 - now.mono,
    clockSteadyFrom: now.mono,
    usedS: unreadable ? rules.longestOnS : known.usedS,
    onSince: known.mayBeOn || unreadable ? now : null,
    offSince: known.offSince,
    command: { to: "off", since: now.mono, at: now.mono, repeats: 0, asCaution: true, onTimeS: null },
    plan: null,
    byHand:
      offWanted === null || offWanted <= now.wall
        ? null
        : { to: "off", until: now.mono + (offWanted - now.wall) / 1000, untilWall: offWanted },
    stopped: false,
    online: false,
    writable: true,
    probes: {},
    faults: unreadable ? ["no-confirmation"] : (kept?.faults ?? []),
  };
}

/** On-time used and rest begun before this process, as far as the wall clock can tell. */
function memory(
  rules: SwitchRules,
  kept: DurableState | undefined,
  now: Instant,
): { readonly usedS: number; readonly mayBeOn: boolean; readonly offSince: Instant | null } {
  if (kept === undefined) return { usedS: 0, mayBeOn: false, offSince: null };
  // The wall clock may have moved within its tolerance unnoticed: that counts against the heater, too.
  const sinceS = (wall: number | null) => (wall === null ? Number.NaN : (now.wall - wall) / 1000);
  if (kept.mayBeOn) {
    const onForS = sinceS(kept.onSinceWall) * (1 + CLOCK_DRIFT) + CLOCK_TOLERANCE_S;
    const usedS = onForS >= 0 ? Math.min(rules.longestOnS, kept.usedS + onForS) : rules.longestOnS;
    return { usedS, mayBeOn: true, offSince: null };
  }
  const offForS = sinceS(kept.offSinceWall) * (1 - CLOCK_DRIFT) - CLOCK_TOLERANCE_S;
  const offSince = offForS >= 0 ? { mono: now.mono - offForS, wall: now.wall - offForS * 1000 } : null;
  return { usedS: kept.usedS, mayBeOn: false, offSince };
}
