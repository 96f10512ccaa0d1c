import { randomUUID } from "node:crypto";
import { finding } from "../findings/index.js";
import type { BaseState, LogbookEvent } from "../logbook/index.js";
import type { Windows } from "./windows.js";

/** Says once that a plan is not switched, and again when it is. */
export interface Refusals {
  /** Events to be written down for what changed. */
  news(state: BaseState, refused: Windows["refused"], at: string): LogbookEvent[];
}

export function createRefusals(): Refusals {
  /** Ids of the faults written down, by aircraft and switch. */
  const said = new Map<string, string>();
  let begun = false;

  return {
    news(state, refused, at) {
      if (!begun) {
        // What an earlier process said is not said again.
        for (const { faults } of state.aircraft.values()) {
          for (const fault of faults)
            if (isOurs(fault)) said.set(`${fault.aircraft}/${fault.switch}`, fault.id);
        }
        begun = true;
      }
      const events: LogbookEvent[] = [];
      const now = new Set(refused.map(({ aircraft, switch: id }) => `${aircraft}/${id}`));
      for (const { aircraft, switch: id, reason } of refused) {
        const key = `${aircraft}/${id}`;
        if (said.has(key)) continue;
        const fault: LogbookEvent = {
          ...{ kind: "fault", id: randomUUID(), at, by: "keeper", aircraft, switch: id },
          ...{ fault: "plan-failed", text: finding("plan-not-switched", { reason }) },
        };
        said.set(key, fault.id);
        events.push(fault);
      }
      for (const [key, of] of said) {
        if (now.has(key)) continue;
        said.delete(key);
        events.push({ kind: "fault-cleared", id: randomUUID(), at, by: "keeper", of });
      }
      return events;
    },
  };
}

function isOurs({ fault, switch: id }: { readonly fault: string; readonly switch?: string }): boolean {
  return fault === "plan-failed" && id !== undefined;
}
