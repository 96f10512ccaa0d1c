import type { Finding } from "../findings/index.js";
import type { ProbeReading } from "../logbook/index.js";
import type { Live, LiveChange } from "../server/index.js";
import type { Store } from "../store/index.js";
import type { Book } from "./book.js";
import type { PlanScheduler } from "./plan-scheduler.js";
import type { Switchboard } from "./switchboard.js";

export interface LiveParts {
  readonly store: Pick<Store, "appendReadings">;
  readonly book: Book;
  readonly scheduler: PlanScheduler;
  readonly switchboard: Switchboard;
  readonly listeners: Set<(change: LiveChange) => void>;
  /** A reading that came in. */
  readonly heard: (reading: ProbeReading) => void;
  /** Somebody's events could not be written down. */
  readonly recordFailed: () => void;
  /** Why heaters cannot be switched. */
  readonly unable: () => readonly Finding[];
}

/** What the server asks of the keeper. */
export function createLive(parts: LiveParts): Live {
  const { store, book, scheduler, switchboard, listeners, heard, recordFailed, unable } = parts;
  return {
    state: book.state,
    plans: () => scheduler.plans,
    now: () => scheduler.now,
    async record(events) {
      try {
        return await book.record(events);
      } catch (error) {
        recordFailed();
        throw error;
      }
    },
    async ingest(readings) {
      const result = await store.appendReadings(readings);
      for (const reading of readings) heard(reading);
      return result;
    },
    acknowledge: (fault, by) => switchboard.acknowledge(fault, by),
    switchByHand: (order) => switchboard.byHand(order),
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    health() {
      const reasons = unable();
      return { ready: reasons.length === 0, reasons: [...reasons, ...scheduler.troubles()] };
    },
  };
}
