import { canonicalText } from "./canonical.js";
import type { EventOf, LogbookEvent } from "./events.js";

export type PlainEvent = Exclude<LogbookEvent, { kind: "correction" }>;
type Correction = EventOf<"correction">;
type Without = { readonly id: string; readonly reason: string };

export interface Standing {
  /** What holds, oldest first; those of one moment by id. */
  readonly events: readonly PlainEvent[];
  /** What an event is called now: an id that a correction replaced gives the id of what stands instead. */
  readonly nameNow: (id: string) => string;
  readonly withoutEffect: readonly Without[];
}

/**
 * What holds once every correction is taken in, whatever the order the events came in and however often.
 *
 * A correction says what holds instead of an event, or that it never happened. It may also name the `instead` of an
 * earlier correction, or an earlier correction itself: that one then says something else, or was never made. Of
 * several corrections of one event the latest holds.
 */
export function standingEvents(all: Iterable<LogbookEvent>): Standing {
  const withoutEffect: Without[] = [];
  const written = onceEach(all, withoutEffect);
  const corrections = [...written.values()].filter((e) => e.kind === "correction");
  const owners = ownersOf(corrections, written, withoutEffect);
  const correcting = new Map<string, Correction[]>();
  for (const correction of corrections) {
    const fault = faultOf(correction, written, owners);
    if (fault === undefined)
      correcting.set(correction.of, [...(correcting.get(correction.of) ?? []), correction]);
    else withoutEffect.push({ id: correction.id, reason: fault });
  }
  for (const list of correcting.values()) list.sort((a, b) => -inTime(a, b));

  const used = new Set<string>();
  const names = new Map<string, string>();
  const standing: PlainEvent[] = [];
  for (const event of written.values()) {
    if (event.kind === "correction") continue;
    const passed: string[] = [];
    const stands = holding(event, passed);
    if (stands === undefined) continue;
    standing.push(stands);
    for (const id of passed) names.set(id, stands.id);
  }
  for (const list of correcting.values()) {
    for (const { id } of list) {
      if (!used.has(id)) withoutEffect.push({ id, reason: "a later correction holds instead" });
    }
  }
  return {
    events: standing.sort(inTime),
    nameNow: (id) => names.get(id) ?? id,
    withoutEffect,
  };

  function holding(event: PlainEvent, passed: string[]): PlainEvent | undefined {
    passed.push(event.id);
    const instead = saidOf(event.id);
    if (instead === undefined) return event;
    if (instead === null) return undefined;
    return owners.get(instead.id)?.instead === instead ? holding(instead, passed) : instead;
  }

  /** What the latest correction of an id says; undefined where none holds. */
  function saidOf(id: string): PlainEvent | null | undefined {
    for (const correction of correcting.get(id) ?? []) {
      const said = saidOf(correction.id);
      used.add(correction.id);
      if (said === undefined) return correction.instead;
      if (said !== null) return said;
    }
    return undefined;
  }
}

export function inTime(a: LogbookEvent, b: LogbookEvent): number {
  return Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : Number(a.id > b.id));
}

/** Two events of one id cannot both be meant: which one counts does not depend on which came first. */
function onceEach(all: Iterable<LogbookEvent>, withoutEffect: Without[]): ReadonlyMap<string, LogbookEvent> {
  const written = new Map<string, LogbookEvent>();
  const doubtful = new Set<string>();
  for (const event of all) {
    const other = written.get(event.id);
    if (other === undefined) written.set(event.id, event);
    else if (other !== event) {
      const [a, b] = [canonicalText(other), canonicalText(event)];
      if (a !== b) doubtful.add(event.id);
      if (b < a) written.set(event.id, event);
    }
  }
  for (const id of doubtful) withoutEffect.push({ id, reason: "another event has the same id" });
  return written;
}

/** Which correction brought in each `instead`, by its id. */
function ownersOf(
  corrections: readonly Correction[],
  written: ReadonlyMap<string, LogbookEvent>,
  withoutEffect: Without[],
): ReadonlyMap<string, Correction> {
  const owners = new Map<string, Correction>();
  for (const correction of [...corrections].sort(inTime)) {
    const { instead } = correction;
    if (instead === null) continue;
    if (written.has(instead.id) || owners.has(instead.id)) {
      withoutEffect.push({ id: instead.id, reason: "the correction's event has the id of another event" });
    } else owners.set(instead.id, correction);
  }
  return owners;
}

/** Follows a correction to the event it is about in the end. */
function faultOf(
  correction: Correction,
  written: ReadonlyMap<string, LogbookEvent>,
  owners: ReadonlyMap<string, Correction>,
): string | undefined {
  const passed = new Set<string>();
  for (let { id, of } = correction; ; ) {
    if (passed.has(id)) return "the corrections lead round in a circle";
    passed.add(id);
    const next = written.get(of) ?? owners.get(of);
    if (next === undefined) return `no event ${of} is known`;
    if (next.kind !== "correction") return undefined;
    ({ id, of } = next);
  }
}
