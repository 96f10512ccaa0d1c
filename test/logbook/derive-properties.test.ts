import fc from "fast-check";
import { expect, test } from "vitest";
import { type BaseState, deriveBase, type LogbookEvent, readEvents } from "../../src/logbook/index.js";
import { id, SET_UP } from "./example-base.js";
import { madeEvent, madeLogbook } from "./made-events.js";

const RUNS = { numRuns: 400 };
/** With an id that no made event or correction has. */
const SET_UP_LAST = { ...SET_UP, id: id(26) };

test("the made events are of every kind and none has a fault the schema would find", () => {
  const kinds = new Map<string, number>();
  for (const event of fc.sample(madeEvent(12), { numRuns: 1500, seed: 5 })) {
    kinds.set(event.kind, (kinds.get(event.kind) ?? 0) + 1);
    const { issues } = readEvents(event);
    // A correction may be made about itself here; the reading of events refuses that.
    if (issues.length > 0) expect(issues[0].path).toMatch(/^(of|instead\.id)$/);
  }
  expect(kinds.size).toBe(21);
  expect(Math.min(...kinds.values())).toBeGreaterThan(10);
});

test("any order of the same events, any of them several times, gives the same state", () => {
  fc.assert(
    fc.property(
      madeLogbook(30).chain((events) =>
        fc.record({
          events: fc.constant(events),
          // Copies, as they come when they are sent again: equal, but not the same objects.
          again: fc.subarray(events).map((some) => structuredClone(some)),
          order: fc.array(fc.double({ noNaN: true }), { minLength: 70, maxLength: 70 }),
        }),
      ),
      ({ events, again, order }) => {
        const shuffled = [...events, ...again]
          .map((event, i) => ({ event, key: order[i] }))
          .sort((a, b) => a.key - b.key)
          .map(({ event }) => event);
        expect(deriveBase(shuffled)).toEqual(deriveBase(events));
      },
    ),
    RUNS,
  );
});

test("even where different events have one id, their order does not matter", () => {
  fc.assert(
    fc.property(fc.array(madeEvent(8), { maxLength: 40 }), (events) => {
      expect(deriveBase(events.toReversed())).toEqual(deriveBase(events));
    }),
    RUNS,
  );
});

test("no sequence of events throws, and what stands is of the set-up that stands", () => {
  fc.assert(
    fc.property(fc.array(madeEvent(25), { maxLength: 60, size: "max" }), (made) => {
      const events = [SET_UP_LAST, ...made];
      const state = deriveBase(events);
      if (state === undefined) throw new Error("the set-up does not stand");
      expectSound(state, events);
    }),
    RUNS,
  );
});

function expectSound(state: BaseState, events: readonly LogbookEvent[]): void {
  expect([...state.aircraft.keys()]).toEqual(state.setUp.aircraft.map((a) => a.id));
  for (const {
    setUp,
    heatersOn,
    coversOn,
    anchor,
    changes,
    readings,
    departures,
    plan,
    switches,
    faults,
  } of state.aircraft.values()) {
    expect(setUp.kit.heaters).toEqual(expect.arrayContaining([...heatersOn]));
    expect(setUp.kit.covers).toEqual(expect.arrayContaining([...coversOn]));
    expect([...switches.keys()]).toEqual(setUp.switches.map((s) => s.id));
    for (const list of [changes, readings]) {
      const times = [anchor.at, ...list.map(({ at }) => at)];
      expect(times).toEqual(times.toSorted((a, b) => a - b));
    }
    for (let i = 1; i < departures.length; i++) {
      expect(departures[i].departure).toBeGreaterThanOrEqual(departures[i - 1].departure);
    }
    if (plan !== undefined) expect(departures.map((d) => d.id)).toContain(plan.of);
    expect(faults.every((fault) => fault.aircraft === setUp.id)).toBe(true);
    // From the anchor, the changes lead to what stands.
    const heaters = new Set(anchor.heatersOn);
    const covers = new Set(anchor.coversOn);
    let { place } = anchor;
    for (const change of changes) {
      if (change.do === "move") place = change.to;
      else if ("heaters" in change) toggle(heaters, change.heaters, change.do === "plug_in");
      else toggle(covers, change.covers, change.do === "cover_on");
    }
    expect(heaters).toEqual(new Set(heatersOn));
    expect(covers).toEqual(new Set(coversOn));
    const { place: standing } = state.aircraft.get(setUp.id)!;
    expect(place).toBe(standing);
  }
  const known = new Set(
    events.flatMap((e) => (e.kind === "correction" && e.instead ? [e.id, e.instead.id] : [e.id])),
  );
  for (const { id } of state.withoutEffect) expect(known).toContain(id);
}

function toggle(some: Set<string>, ids: readonly string[], on: boolean): void {
  for (const id of ids) {
    if (on) some.add(id);
    else some.delete(id);
  }
}
