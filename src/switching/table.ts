import type { LockingFault } from "./faults.js";
import { type Hold, isWanted, remainingS } from "./holds.js";
import { INPUT_KINDS, type InputKind, type SwitchInput } from "./inputs.js";
import { REPEAT_FIRST_S, REPEAT_LONGEST_S, type SwitchRules } from "./rules.js";
import { PHASES, type Phase, type SwitchState } from "./state.js";

/** What a row of the table looks at: the state with the input already taken in, and what speaks against being on. */
export interface View {
  readonly rules: SwitchRules;
  readonly before: SwitchState;
  readonly state: SwitchState;
  readonly input: SwitchInput;
  readonly holds: readonly Hold[];
}

export type Effect =
  | "command off"
  | "command off again"
  | "command on"
  | "renew on"
  | "save, then on"
  | "save"
  | "record off confirmed"
  | "record on confirmed"
  | "lock: switched-by-other";

type OffReason =
  | "unknown-after-start"
  | "unknown-after-lost-link"
  | "unknown-after-failed-command"
  | "server-stops"
  | "on-perhaps-late"
  | "switched-on-by-other"
  | "switched-off-by-other";

/** One row: in these phases, on these inputs, when this holds, so it goes on. The first row that fits counts. */
export interface Transition {
  readonly phases: readonly Phase[];
  readonly inputs: readonly InputKind[] | "every";
  readonly when: string;
  readonly holds: (view: View) => boolean;
  readonly next: Phase;
  readonly effects: readonly Effect[];
  /** Why off is commanded, or the switch locked; where the reason is not in what holds it off. */
  readonly reason?: OffReason;
  /** Why it goes on so, for docs/switching.md. */
  readonly note?: string;
  /** The off command is given out of caution: that its confirmation is late is then no fault of the switch. */
  readonly asCaution?: boolean;
}

const TRANSITIONS: readonly Transition[] = [
  {
    phases: PHASES,
    inputs: ["started"],
    when: "always",
    holds: always,
    next: "turning-off",
    effects: ["command off"],
    reason: "unknown-after-start",
    asCaution: true,
  },
  {
    phases: ["off", "saving"],
    inputs: ["stop"],
    when: "always",
    holds: always,
    next: "turning-off",
    effects: ["command off"],
    reason: "server-stops",
    asCaution: true,
  },
  {
    phases: ["turning-on", "on", "turning-off"],
    inputs: ["stop"],
    when: "always",
    holds: always,
    next: "turning-off",
    effects: ["command off"],
    reason: "server-stops",
  },
  {
    phases: ["turning-off"],
    inputs: ["confirmed"],
    when: "it says off",
    holds: saysOff,
    next: "off",
    effects: ["record off confirmed"],
    note: "off is confirmed",
  },
  {
    phases: ["off", "saving"],
    inputs: ["confirmed"],
    when: "it says on, within the time of confirmation after our last command",
    holds: (view) => saysOn(view) && sinceCommandS(view) <= view.rules.confirmWithinS,
    next: "turning-off",
    effects: ["command off"],
    reason: "on-perhaps-late",
  },
  {
    phases: ["off", "saving"],
    inputs: ["confirmed"],
    when: "it says on",
    holds: saysOn,
    next: "turning-off",
    effects: ["command off", "lock: switched-by-other"],
    reason: "switched-on-by-other",
  },
  {
    phases: ["off", "saving"],
    inputs: ["command-failed"],
    when: "always",
    holds: always,
    next: "turning-off",
    effects: ["command off"],
    reason: "unknown-after-failed-command",
    asCaution: true,
  },
  {
    phases: ["off", "turning-off"],
    inputs: ["device"],
    when: "the link is back",
    holds: ({ before, state }) => !before.online && state.online,
    next: "turning-off",
    effects: ["command off"],
    reason: "unknown-after-lost-link",
    asCaution: true,
  },
  {
    phases: ["off"],
    inputs: "every",
    when: "wanted, and nothing holds it off",
    holds: mayBeOn,
    next: "saving",
    effects: ["save, then on"],
    note: "on-time is written down before it begins",
  },
  {
    phases: ["saving"],
    inputs: "every",
    when: "not wanted any more, or something holds it off",
    holds: (view) => !mayBeOn(view),
    next: "off",
    effects: ["save"],
    note: "nothing was commanded yet",
  },
  {
    phases: ["saving"],
    inputs: ["saved"],
    when: "it is that save, or a later one",
    holds: ({ state, input }) => input.kind === "saved" && input.id >= state.saveId,
    next: "turning-on",
    effects: ["command on"],
    note: "it is written down that it may be on",
  },
  {
    phases: ["turning-on", "on"],
    inputs: "every",
    when: "not wanted any more, or something holds it off",
    holds: (view) => !mayBeOn(view),
    next: "turning-off",
    effects: ["command off"],
    note: "what holds it off, or the end of the window",
  },
  {
    phases: ["turning-on"],
    inputs: ["confirmed"],
    when: "it says on",
    holds: saysOn,
    next: "on",
    effects: ["record on confirmed"],
    note: "on is confirmed",
  },
  {
    phases: ["on"],
    inputs: ["confirmed"],
    when: "it says off, and its own on-time may have ended",
    holds: (view) => saysOff(view) && ownOnTimeOver(view),
    next: "off",
    effects: ["record off confirmed"],
    note: "it went off by its own on-time",
  },
  {
    phases: ["on"],
    inputs: ["confirmed"],
    when: "it says off",
    holds: saysOff,
    next: "turning-off",
    effects: ["command off", "lock: switched-by-other"],
    reason: "switched-off-by-other",
  },
  {
    phases: ["on"],
    inputs: "every",
    when: "a third of the on-time has passed, and on-time is left",
    holds: renewalDue,
    next: "on",
    effects: ["renew on"],
    note: "else the device would go off by itself",
  },
  {
    phases: ["turning-off"],
    inputs: "every",
    when: "the next repetition is due",
    holds: repeatDue,
    next: "turning-off",
    effects: ["command off again"],
    note: "off is repeated until it is confirmed",
  },
];

export const LOCK_OF: Partial<Record<Effect, LockingFault>> = {
  "lock: switched-by-other": "switched-by-other",
};

/** Rows that can apply in a phase on an input, in the order in which they are looked at. */
export function transitionsFor(phase: Phase, input: InputKind): readonly Transition[] {
  return ROWS[phase][input];
}

const ROWS = Object.fromEntries(
  PHASES.map((phase) => [
    phase,
    Object.fromEntries(INPUT_KINDS.map((input) => [input, rowsFor(phase, input)])),
  ]),
) as Record<Phase, Record<InputKind, readonly Transition[]>>;

function rowsFor(phase: Phase, input: InputKind): readonly Transition[] {
  const rows = TRANSITIONS.filter(
    ({ phases, inputs }) => phases.includes(phase) && (inputs === "every" || inputs.includes(input)),
  );
  const last = rows.findIndex(({ holds }) => holds === always);
  return last < 0 ? rows : rows.slice(0, last + 1);
}

function always(): boolean {
  return true;
}

function mayBeOn({ state, holds }: View): boolean {
  return isWanted(state) && holds.length === 0;
}

function saysOff({ input }: View): boolean {
  return input.kind === "confirmed" && input.is === "off";
}

function saysOn({ input }: View): boolean {
  return input.kind === "confirmed" && input.is === "on";
}

function sinceCommandS({ state }: View): number {
  return state.now.mono - state.command.at;
}

function ownOnTimeOver(view: View): boolean {
  const { onTimeS } = view.state.command;
  return onTimeS !== null && sinceCommandS(view) >= onTimeS - view.rules.confirmWithinS;
}

function renewalDue(view: View): boolean {
  const { onTimeS } = view.rules;
  return onTimeS !== null && sinceCommandS(view) >= onTimeS / 3 && renewedOnTimeS(view) !== null;
}

/** [s] The on-time that an on command given now may carry: never past the longest. null when none is left. */
export function renewedOnTimeS({ rules, state }: Pick<View, "rules" | "state">): number | null {
  if (rules.onTimeS === null) return null;
  const left = remainingS(rules, state);
  if (!rules.sendsOnTime) return left >= rules.onTimeS ? rules.onTimeS : null;
  const whole = Math.floor(Math.min(rules.onTimeS, left));
  return whole >= 1 ? whole : null;
}

function repeatDue(view: View): boolean {
  const { repeats } = view.state.command;
  return sinceCommandS(view) >= Math.min(REPEAT_LONGEST_S, REPEAT_FIRST_S * 2 ** Math.min(repeats, 10));
}
