import { type Finding, finding } from "../findings/index.js";
import type { OnOff, SwitchFact, SwitchOrder } from "./inputs.js";
import type { SwitchState } from "./state.js";
import { type Effect, renewedOnTimeS, type Transition, type View } from "./table.js";

/** What a row's effects do to the state, and the orders they give. */
interface Carried {
  readonly state: SwitchState;
  readonly orders: readonly SwitchOrder[];
}

type Carry = (view: View, row: Transition) => Carried;

export const EFFECTS: Record<Effect, Carry> = {
  "command off": (view, row) => {
    const { mono } = view.state.now;
    const already = view.before.phase === "turning-off" && row.asCaution !== true;
    const since = already ? view.state.command.since : mono;
    const asCaution = already ? view.state.command.asCaution : row.asCaution === true;
    return {
      state: {
        ...view.state,
        command: { to: "off", since, at: mono, repeats: 0, asCaution, onTimeS: null },
      },
      orders: [
        { do: "command", to: "off" },
        recorded({ kind: "switch-commanded", to: "off", reason: reasonForOff(view, row) }),
      ],
    };
  },
  "command off again": ({ state }) => ({
    state: {
      ...state,
      command: { ...state.command, at: state.now.mono, repeats: state.command.repeats + 1 },
    },
    orders: [{ do: "command", to: "off" }],
  }),
  "command on": (view) => {
    const { mono } = view.state.now;
    const onTimeS = renewedOnTimeS(view);
    return {
      state: {
        ...view.state,
        command: { to: "on", since: mono, at: mono, repeats: 0, asCaution: false, onTimeS },
      },
      orders: [
        commandOn(onTimeS),
        recorded({ kind: "switch-commanded", to: "on", reason: reasonForOn(view.state) }),
      ],
    };
  },
  "renew on": (view) => {
    const onTimeS = renewedOnTimeS(view);
    const command = { ...view.state.command, at: view.state.now.mono, onTimeS };
    return { state: { ...view.state, command }, orders: [commandOn(onTimeS)] };
  },
  // The save itself is ordered by withSave: that it may be on is part of what is durable.
  "save, then on": ({ state }) => ({
    state: { ...state, onSince: state.now },
    orders: [],
  }),
  save: ({ state }) => ({ state: { ...state, onSince: null }, orders: [] }),
  "record off confirmed": ({ state }) => ({ state: confirmedOff(state), orders: [confirmed("off")] }),
  "record on confirmed": ({ state }) => ({ state, orders: [confirmed("on")] }),
  "lock: switched-by-other": ({ state }) => ({ state, orders: [] }),
};

function confirmedOff(state: SwitchState): SwitchState {
  const { onSince, offSince, now, usedS } = state;
  if (onSince === null) return { ...state, offSince: offSince ?? now };
  return { ...state, usedS: usedS + (now.mono - onSince.mono), onSince: null, offSince: now };
}

function reasonForOff({ state, input, holds }: View, { inputs, reason }: Transition): Finding {
  if (inputs !== "every" && reason !== undefined) return finding(reason, {});
  if (holds[0] !== undefined) return holds[0].text;
  if (state.byHand?.to === "off") return finding("switched-off-by-hand", {});
  if (input.kind === "plan" && input.plan === null) return finding("plan-was-withdrawn", {});
  return finding("outside-wanted-hours", {});
}

function reasonForOn({ byHand, plan }: SwitchState): Finding {
  if (byHand?.to === "on") return finding("switched-on-by-hand", {});
  return finding("on-by-plan", { plan: plan?.planId ?? null });
}

function commandOn(onTimeS: number | null): SwitchOrder {
  return { do: "command", to: "on", ...(onTimeS === null ? {} : { onTimeS }) };
}

export function recorded(fact: SwitchFact): SwitchOrder {
  return { do: "record", fact };
}

function confirmed(is: OnOff): SwitchOrder {
  return recorded({ kind: "switch-confirmed", is });
}
