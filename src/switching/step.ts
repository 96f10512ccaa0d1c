import { type Finding, finding } from "../findings/index.js";
import { EFFECTS, recorded } from "./effects.js";
import { isLocking, type SwitchFault } from "./faults.js";
import { type Hold, holdsOf } from "./holds.js";
import type { SwitchFact, SwitchInput, SwitchOrder } from "./inputs.js";
import { observed } from "./observe.js";
import type { SwitchRules } from "./rules.js";
import { durableOf, isUnreadable, type SwitchState, startedState } from "./state.js";
import { LOCK_OF, type Transition, transitionsFor, type View } from "./table.js";

export interface SwitchStep {
  readonly state: SwitchState;
  readonly orders: readonly SwitchOrder[];
  /** The row of the table that was taken; none where the phase stays as it is. */
  readonly transition?: Transition;
}

/**
 * One step of one switch: from the state so far and one input to the next state and what is to be done. The first input
 * of a process must be "started". docs/switching.md shows every phase with every input.
 */
export function stepSwitch(
  rules: SwitchRules,
  before: SwitchState | undefined,
  input: SwitchInput,
): SwitchStep {
  if (before === undefined && input.kind !== "started") {
    throw new Error(`invalid input: ${input.kind} (expected "started" as the first one)`);
  }
  const begins = input.kind === "started" ? startedState(rules, input.saved, input) : undefined;
  const seen = begins ?? observed(rules, before as SwitchState, input);
  const acknowledged = withAcknowledged(seen, input);
  const holds = holdsOf(rules, acknowledged.state);
  const hand = withHandChecked(acknowledged.state, input, holds);
  const view: View = { rules, before: before ?? seen, state: hand.state, input, holds };
  const row = transitionsFor(view.before.phase, input.kind).find((transition) => transition.holds(view));
  const moved = row === undefined ? { state: view.state, orders: [] } : carriedOut(view, row);
  const judged = withFaults(rules, moved.state, holds, row);
  const lost = input.kind === "started" && isUnreadable(input.saved) ? [recorded(UNREADABLE)] : [];
  const step = withSave(before, judged.state, row, [
    ...moved.orders,
    ...lost,
    ...acknowledged.orders,
    ...hand.orders,
    ...judged.orders,
  ]);
  return row === undefined ? step : { ...step, transition: row };
}

const UNREADABLE: SwitchFact = {
  kind: "fault",
  fault: "no-confirmation",
  text: finding("switch-memory-lost", {}),
};

/** A person may clear a lock only once off is confirmed: before that nobody knows what they would be clearing. */
function withAcknowledged(state: SwitchState, input: SwitchInput): SwitchStep {
  if (input.kind !== "acknowledge") return { state, orders: [] };
  const { fault } = input;
  if (!isLocking(fault)) return refused(state, finding("fault-ends-itself", { fault }));
  if (!state.faults.includes(fault)) return refused(state, finding("fault-not-open", { fault }));
  if (state.phase !== "off") return refused(state, finding("off-not-confirmed", {}));
  const probes = Object.entries(state.probes).map(([id, heard]) => [
    id,
    { ...heard, sameSince: state.now.mono },
  ]);
  return {
    state: {
      ...state,
      faults: state.faults.filter((open) => open !== fault),
      probes: Object.fromEntries(probes),
    },
    orders: [recorded({ kind: "fault-cleared", fault })],
  };
}

/** "On" by hand is for now: what cannot begin now is refused, and what is interrupted does not come back by itself. */
function withHandChecked(state: SwitchState, input: SwitchInput, holds: readonly Hold[]): SwitchStep {
  const hold = holds[0];
  if (state.byHand?.to !== "on" || hold === undefined) return { state, orders: [] };
  const released = { ...state, byHand: null };
  return input.kind === "by-hand" ? refused(released, hold.text) : { state: released, orders: [] };
}

function carriedOut(view: View, row: Transition): SwitchStep {
  const orders: SwitchOrder[] = [];
  let state: SwitchState = { ...view.state, phase: row.next };
  for (const effect of row.effects) {
    const done = EFFECTS[effect]({ ...view, state }, row);
    state = done.state;
    orders.push(...done.orders);
  }
  return { state, orders };
}

/** Raises what is new, clears what is over, and locks by what the row says. */
function withFaults(
  rules: SwitchRules,
  state: SwitchState,
  holds: readonly Hold[],
  row: Transition | undefined,
): SwitchStep {
  const locks = (row?.effects ?? []).flatMap((effect) => {
    const fault = LOCK_OF[effect];
    return fault === undefined || row?.reason === undefined ? [] : [{ fault, text: finding(row.reason, {}) }];
  });
  const raised: (Hold & { readonly fault: SwitchFault })[] = [];
  for (const hold of [...locks, ...holds]) {
    const { fault } = hold;
    if (fault === undefined || ("quiet" in hold && hold.quiet)) continue;
    if (state.faults.includes(fault) || raised.some((other) => other.fault === fault)) continue;
    raised.push({ ...hold, fault });
  }
  const lasting = new Set(holdsOf(rules, state).map(({ fault }) => fault));
  const over = state.faults.filter((fault) => !isLocking(fault) && !lasting.has(fault));
  if (raised.length === 0 && over.length === 0) return { state, orders: [] };
  const faults = [
    ...state.faults.filter((fault) => !over.includes(fault)),
    ...raised.map(({ fault }) => fault),
  ];
  return {
    state: { ...state, faults },
    orders: [
      ...raised.map(({ fault, text, probe }) =>
        recorded({ kind: "fault", fault, text, ...(probe === undefined ? {} : { probe }) }),
      ),
      ...over.map((fault) => recorded({ kind: "fault-cleared", fault })),
    ],
  };
}

/** A save whenever the durable part changes, after the commands: off never waits for the store. */
function withSave(
  before: SwitchState | undefined,
  state: SwitchState,
  row: Transition | undefined,
  orders: readonly SwitchOrder[],
): SwitchStep {
  const saved = durableOf(state);
  const same = before !== undefined && JSON.stringify(durableOf(before)) === JSON.stringify(saved);
  if (same && row?.effects.includes("save, then on") !== true) return { state, orders };
  const id = state.saveId + 1;
  return { state: { ...state, saveId: id }, orders: [...orders, { do: "save", id, saved }] };
}

function refused(state: SwitchState, reason: Finding): SwitchStep {
  return { state, orders: [{ do: "refuse", reason }] };
}
