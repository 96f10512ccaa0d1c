import { inTime, type PlainEvent } from "./corrections.js";
import type { EventOf } from "./events.js";

/** Not cleared, newest first. */
export function openFaults(
  events: readonly PlainEvent[],
  cleared: ReadonlySet<string>,
): readonly EventOf<"fault">[] {
  return events
    .filter((e) => e.kind === "fault")
    .filter((fault) => !cleared.has(fault.id))
    .sort((a, b) => inTime(b, a));
}

export function clearedFaults(
  events: readonly PlainEvent[],
  nameNow: (id: string) => string,
  lost: (id: string, reason: string) => void,
): ReadonlySet<string> {
  const faults = new Set(events.filter((e) => e.kind === "fault").map((e) => e.id));
  const cleared = new Set<string>();
  for (const event of events) {
    if (event.kind !== "fault-cleared") continue;
    const fault = nameNow(event.of);
    if (faults.has(fault)) cleared.add(fault);
    else lost(event.id, `no fault ${event.of} is known`);
  }
  return cleared;
}
