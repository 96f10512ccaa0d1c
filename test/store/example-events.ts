import type { LogbookEvent, ProbeReading } from "../../src/logbook/index.js";

/** An id that reads well in a failing test. */
export function id(number: number): string {
  return `00000000-0000-4000-8000-${number.toString().padStart(12, "0")}`;
}

export const START = Date.parse("2026-01-11T00:00:00Z");
export const MINUTE = 60_000;
export const HOUR = 3_600_000;

export function shutDown(number: number, aircraft = "lynx"): LogbookEvent {
  return { id: id(number), at: new Date(START + number * MINUTE).toISOString(), kind: "shut-down", aircraft };
}

export function note(number: number, text: string): LogbookEvent {
  return { id: id(number), at: new Date(START + number * MINUTE).toISOString(), kind: "note", note: text };
}

export function reading(minute: number, tempC: number, probe = "oil", aircraft = "lynx"): ProbeReading {
  return { aircraft, probe, time: START + minute * MINUTE, tempC };
}
