import type { LogbookEvent } from "./events.js";
import { LOGBOOK_VERSION } from "./events-reading.js";

/** A logbook as one JSON document, an event a line; `readEvents` reads it back. */
export function eventsToJson(events: Iterable<LogbookEvent>): string {
  const lines = Array.from(events, (event) => JSON.stringify(event)).join(",\n");
  return `{"soakline_logbook":${LOGBOOK_VERSION},"events":[${lines === "" ? "" : `\n${lines}\n`}]}\n`;
}
