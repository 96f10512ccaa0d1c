import type { Instant, SwitchInput } from "./inputs.js";
import { CLOCK_DRIFT, CLOCK_STEADY_S, CLOCK_TOLERANCE_S, type SwitchRules } from "./rules.js";
import type { HeardProbe, SwitchState } from "./state.js";

/** What an input says, taken into the state; whether anything follows from it is decided afterwards. */
export function observed(rules: SwitchRules, before: SwitchState, input: SwitchInput): SwitchState {
  const state = rested(rules, withInput(rules, withClock(before, input), input));
  const waitsForStore =
    state.phase === "saving" &&
    state.onSince !== null &&
    state.now.mono - state.onSince.mono > rules.confirmWithinS;
  return waitsForStore ? { ...state, writable: false } : state;
}

function withClock(before: SwitchState, { mono, wall }: Instant): SwitchState {
  const elapsed = mono - before.now.mono;
  const offset = wall / 1000 - mono;
  const shift = offset - before.clockOffset;
  // Written so that NaN is a jump too.
  const steady = elapsed >= 0 && Math.abs(shift) <= CLOCK_TOLERANCE_S;
  if (!steady) return jumped(before, { mono: elapsed > 0 ? mono : before.now.mono, wall });
  const drift = Math.min(CLOCK_DRIFT * elapsed, Math.abs(shift)) * Math.sign(shift);
  return { ...before, now: { mono, wall }, clockOffset: before.clockOffset + drift };
}

/** What was written down by the old wall clock is rewritten by the new one; what was heard must be heard again. */
function jumped(before: SwitchState, now: Instant): SwitchState {
  const clockOffset = now.wall / 1000 - now.mono;
  const rewritten = ({ mono }: Instant): Instant => ({ mono, wall: (mono + clockOffset) * 1000 });
  const { onSince, offSince, byHand } = before;
  return {
    ...before,
    now,
    clockOffset,
    clockSteadyFrom: now.mono + CLOCK_STEADY_S,
    onSince: onSince && rewritten(onSince),
    offSince: offSince && rewritten(offSince),
    byHand: byHand && { ...byHand, untilWall: (byHand.until + clockOffset) * 1000 },
    probes: {},
  };
}

function withInput(rules: SwitchRules, state: SwitchState, input: SwitchInput): SwitchState {
  switch (input.kind) {
    case "plan":
      return { ...state, plan: input.plan };
    case "reading":
      return withReading(rules, state, input);
    case "device":
      return withLink(state, input.online);
    case "store":
      return { ...state, writable: input.writable };
    case "saved":
      return { ...state, writable: true };
    case "command-failed":
      return { ...state, online: false };
    case "confirmed":
      return {
        ...state,
        online: true,
        ...(input.is === "on" && state.onSince === null ? { onSince: state.now, offSince: null } : {}),
      };
    case "by-hand":
      return withHand(rules, state, input);
    case "stop":
      return { ...state, stopped: true, byHand: null };
    default:
      return state;
  }
}

/** While the link was lost no confirmation could come: the time for it begins anew, and off is asked for again. */
function withLink(state: SwitchState, online: boolean): SwitchState {
  const back = online && !state.online && state.phase === "turning-off";
  const command = back ? { ...state.command, since: state.now.mono, asCaution: true } : state.command;
  return { ...state, online, command };
}

function withReading(
  rules: SwitchRules,
  state: SwitchState,
  { probe, at, tempC }: Extract<SwitchInput, { kind: "reading" }>,
): SwitchState {
  if (!rules.guards.some((guard) => guard.probe === probe)) return state;
  const last = state.probes[probe];
  // An older reading, or the same again, says nothing of now. What is no number is as good as silence.
  if (!Number.isFinite(tempC) || !Number.isFinite(at) || (last && at <= last.at)) return state;
  const ageS = Math.max(0, (state.now.wall - at) / 1000);
  const heard: HeardProbe = {
    at,
    heard: state.now.mono - ageS,
    tempC,
    sameSince: last?.tempC === tempC ? last.sameSince : state.now.mono,
  };
  return { ...state, probes: { ...state.probes, [probe]: heard } };
}

function withHand(
  rules: SwitchRules,
  state: SwitchState,
  { to, forS }: Extract<SwitchInput, { kind: "by-hand" }>,
): SwitchState {
  if (to === "plan" || !(forS > 0)) return { ...state, byHand: null };
  const longest = to === "on" ? Math.min(forS, rules.longestOnS) : forS;
  return {
    ...state,
    byHand: { to, until: state.now.mono + longest, untilWall: state.now.wall + longest * 1000 },
  };
}

/** A whole rest gives the whole on-time back. */
function rested(rules: SwitchRules, state: SwitchState): SwitchState {
  const { phase, offSince, now, byHand } = state;
  const over = byHand !== null && now.mono >= byHand.until;
  const hasRested = phase === "off" && offSince !== null && now.mono - offSince.mono >= rules.restS;
  if (!over && !(hasRested && state.usedS > 0)) return state;
  return { ...state, byHand: over ? null : byHand, usedS: hasRested ? 0 : state.usedS };
}
