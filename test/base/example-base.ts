import { randomUUID } from "node:crypto";
import { demoOpening } from "../../src/base/index.js";
import { type BaseState, deriveBase, type LogbookEvent } from "../../src/logbook/index.js";

/** A winter evening at the demo base, when its logbook was opened. */
export const OPENED = Date.parse("2026-01-14T18:20:00Z");
export const HOUR = 3_600_000;
export const opening = demoOpening(OPENED);

export function stateOf(events: readonly LogbookEvent[]): BaseState {
  const state = deriveBase(events);
  if (state === undefined) throw new Error("no set-up");
  return state;
}

/** Without what the invented forecast said. */
export const withoutForecast = opening.events.filter(({ kind }) => kind !== "forecast");

/** What every event carries, [h] after the opening. */
export function at(hours: number): { readonly id: string; readonly at: string } {
  return { id: randomUUID(), at: new Date(OPENED + hours * HOUR).toISOString() };
}
