import { type Finding, finding } from "../findings/index.js";
import { isLocking, type LockingFault, type PassingFault, type SwitchFault } from "./faults.js";
import { offMarginS, STUCK_AFTER_S, type SwitchRules } from "./rules.js";
import type { SwitchState } from "./state.js";

/** Something because of which the heater may not be on. */
export interface Hold {
  readonly fault?: SwitchFault;
  readonly probe?: string;
  readonly text: Finding;
  /** Holds it off, but is not worth a fault in the logbook: nothing was on or wanted, or it is too early to say. */
  readonly quiet?: boolean;
}

/** Commanded on and not yet off again, whether confirmed or not. */
export function isPowered({ phase }: SwitchState): boolean {
  return phase === "turning-on" || phase === "on";
}

/** True inside a window in which the plan or a person wants it on. */
export function isWanted({ byHand, plan, now }: SwitchState): boolean {
  if (byHand !== null) return byHand.to === "on";
  return plan !== null && plan.from <= now.wall && now.wall < plan.to;
}

/** [s] How long it may still be on before it has to rest. */
export function remainingS(rules: SwitchRules, { usedS, onSince, now }: SwitchState): number {
  return rules.longestOnS - usedS - (onSince === null ? 0 : now.mono - onSince.mono);
}

/** Everything that speaks against its being on, weightiest first. */
export function holdsOf(rules: SwitchRules, state: SwitchState): readonly Hold[] {
  return [...stopHold(state), ...newLocks(rules, state), ...locks(state), ...passing(rules, state)];
}

function stopHold(state: SwitchState): readonly Hold[] {
  return state.stopped ? [{ text: finding("server-stops", {}) }] : [];
}

function locks(state: SwitchState): readonly Hold[] {
  return state.faults.filter(isLocking).map((fault) => ({
    fault,
    text: finding("switch-locked", { fault }),
  }));
}

/** Locking faults that come about by what a probe says or by time; each is raised once. */
function newLocks(rules: SwitchRules, state: SwitchState): readonly Hold[] {
  const found = [...overdue(rules, state), ...(isPowered(state) ? probeLocks(rules, state) : [])];
  return found.filter(({ fault }) => !state.faults.includes(fault));
}

type Locking = Hold & { readonly fault: LockingFault };
type Passing = Hold & { readonly fault?: PassingFault };

function overdue(rules: SwitchRules, state: SwitchState): readonly Locking[] {
  const { to, asCaution } = state.command;
  if (!unconfirmed(rules, state) || asCaution || (to === "off" && !state.online)) return [];
  const text = finding("switch-unconfirmed", { to, within_s: rules.confirmWithinS });
  return [{ fault: "no-confirmation", text }];
}

function unconfirmed(rules: SwitchRules, { phase, command, now }: SwitchState): boolean {
  const waits = phase === "turning-on" || phase === "turning-off";
  return waits && now.mono - command.since >= rules.confirmWithinS;
}

function probeLocks(rules: SwitchRules, state: SwitchState): readonly Locking[] {
  return rules.guards.flatMap(({ probe, atMostC }): readonly Locking[] => {
    const heard = state.probes[probe];
    if (heard === undefined) return [];
    const poweredSince = state.onSince?.mono ?? state.now.mono;
    const sameForS = heard.heard - Math.max(heard.sameSince, poweredSince);
    if (heard.tempC > atMostC) {
      return [{ fault: "over-temperature", probe, text: tooHot(probe, heard.tempC, atMostC) }];
    }
    if (sameForS < STUCK_AFTER_S) return [];
    const text = finding("probe-stuck", { probe, temp_c: heard.tempC, for_min: Math.round(sameForS / 60) });
    return [{ fault: "probe-stuck", probe, text }];
  });
}

function passing(rules: SwitchRules, state: SwitchState): readonly Passing[] {
  const holds: Passing[] = [];
  if (state.now.mono < state.clockSteadyFrom) {
    holds.push({ fault: "clock-jump", text: finding("clock-jumped", {}) });
  }
  if (!state.writable) {
    holds.push({ fault: "store-unwritable", text: finding("nothing-written-down", {}) });
  }
  const late = state.phase === "turning-off" && unconfirmed(rules, state);
  if (!state.online || late) {
    const quiet = state.phase === "turning-off" && !late;
    holds.push({ fault: "device-offline", text: finding("switch-silent", {}), quiet });
  }
  const asked = !state.stopped && (isPowered(state) || isWanted(state));
  return [...holds, ...probeHolds(rules, state), ...onTimeHold(rules, state)].map((hold) =>
    asked || (late && hold.fault === "device-offline") ? hold : { ...hold, quiet: true },
  );
}

function probeHolds(rules: SwitchRules, state: SwitchState): readonly Passing[] {
  return rules.guards.flatMap(({ probe, atMostC, silentAfterS }): readonly Passing[] => {
    const heard = state.probes[probe];
    if (heard === undefined || state.now.mono - heard.heard > silentAfterS) {
      // After a start or a clock jump every probe has to speak first, and may take its time for it.
      const quiet = heard === undefined && state.now.mono - state.clockSteadyFrom <= silentAfterS;
      const text = finding("probe-silent", { probe, within_s: silentAfterS });
      return [{ fault: "probe-lost", probe, text, quiet }];
    }
    // Hot after a flight is no fault; it only must not be heated further.
    return heard.tempC > atMostC ? [{ probe, text: tooHot(probe, heard.tempC, atMostC) }] : [];
  });
}

function onTimeHold(rules: SwitchRules, state: SwitchState): readonly Passing[] {
  // A device with an on-time of fixed length must not be given one that reaches past the limit.
  const fixedS = rules.sendsOnTime ? 0 : (rules.onTimeS ?? 0);
  const marginS = offMarginS(rules);
  const neededS = isPowered(state)
    ? marginS
    : state.phase === "saving"
      ? Math.max(marginS, fixedS)
      : marginS + fixedS;
  if (remainingS(rules, state) > neededS) return [];
  const text = finding("on-time-used-up", { longest_min: Math.round(rules.longestOnS / 60) });
  return [{ fault: "longest-on", text }];
}

function tooHot(probe: string, temp_c: number, at_most_c: number): Finding {
  return finding("probe-too-hot", { probe, temp_c, at_most_c });
}
