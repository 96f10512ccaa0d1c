// Imported by file, so that the web app's first page does not wait for every schema.
import { isRecord } from "../documents/issue.js";
import { setUpMigrated } from "./migrate-set-up.js";

/**
 * An event as it was written at any time, in the form of today's: what a store, an export or a device keeps is never
 * rewritten, but read through this. An event of today's form, and what is no event, is given back as it is.
 */
export function eventInCurrentForm(event: unknown): unknown {
  if (!isRecord(event)) return event;
  switch (event.kind) {
    case "set-up": {
      const migration = setUpMigrated(event.base);
      if (!migration.ok || migration.document === event.base) return event;
      return { ...event, base: migration.document };
    }
    case "plan-issued": {
      if (!(FORMER_WEAKEST in event) || "weakest" in event) return event;
      const entries = Object.entries(event);
      return Object.fromEntries(
        entries.map(([key, value]) => [key === FORMER_WEAKEST ? "weakest" : key, value]),
      );
    }
    case "correction": {
      const instead = eventInCurrentForm(event.instead);
      return instead === event.instead ? event : { ...event, instead };
    }
    default:
      return event;
  }
}

/** What `weakest` of a plan was called. */
export const FORMER_WEAKEST = "binding";
