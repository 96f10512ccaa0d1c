import { expect, test } from "vitest";
import { type AircraftState, deriveBase, type LogbookEvent } from "../../src/logbook/index.js";
import { BASE, id, LYNX, SET_UP, WREN } from "./example-base.js";

let number = 100;
const HOUR = 3_600_000;
const DAY = Date.parse("2026-01-11T00:00:00Z");
const iso = (hour: number) => new Date(DAY + hour * HOUR).toISOString();
/** An event of Lynx, so many hours into 11 January. */
function lynx(hour: number, rest: object): LogbookEvent {
  return { id: id(number++), at: iso(hour), aircraft: "lynx", ...rest } as LogbookEvent;
}
function stateOf(...events: LogbookEvent[]): AircraftState {
  const state = deriveBase([SET_UP, ...events])?.aircraft.get("lynx");
  if (state === undefined) throw new Error("no state");
  return state;
}

test("without a set-up nothing stands", () => {
  expect(deriveBase([])).toBeUndefined();
  expect(deriveBase([lynx(1, { kind: "shut-down" })])).toBeUndefined();
});

test("at first an aircraft stands as its set-up says", () => {
  expect(stateOf()).toEqual({
    setUp: LYNX,
    place: "ramp",
    coversOn: ["insulated-cover"],
    heatersOn: [],
    anchor: {
      at: Date.parse(LYNX.known.at),
      from: "set-up",
      place: "ramp",
      coversOn: ["insulated-cover"],
      heatersOn: [],
      initial: { all_c: -18, uncertainty_k: 2 },
    },
    changes: [],
    readings: [],
    running: false,
    departures: [],
    switches: new Map([["outlet-1", {}]]),
    faults: [],
    checked: [],
  });
});

test("what happens since is listed, as far as it changes something", () => {
  const state = stateOf(
    lynx(1, { kind: "plugged-in", heaters: ["in-cowl-400"] }),
    lynx(2, { kind: "plugged-in", heaters: ["in-cowl-400", "whole-engine-4"] }),
    lynx(3, { kind: "cover-on", covers: ["propeller-cover", "insulated-cover"] }),
    lynx(4, { kind: "moved", to: "ramp" }),
    lynx(5, { kind: "moved", to: "hangar" }),
    lynx(6, { kind: "cover-off", covers: ["insulated-cover"] }),
    lynx(7, { kind: "unplugged", heaters: ["in-cowl-400"] }),
    lynx(8, { kind: "reading", part: "oil", temp_c: 21.5 }),
  );
  expect(state.changes).toEqual([
    { at: DAY + 1 * HOUR, do: "plug_in", heaters: ["in-cowl-400"] },
    { at: DAY + 2 * HOUR, do: "plug_in", heaters: ["whole-engine-4"] },
    { at: DAY + 3 * HOUR, do: "cover_on", covers: ["propeller-cover"] },
    { at: DAY + 5 * HOUR, do: "move", to: "hangar" },
    { at: DAY + 6 * HOUR, do: "cover_off", covers: ["insulated-cover"] },
    { at: DAY + 7 * HOUR, do: "unplug", heaters: ["in-cowl-400"] },
  ]);
  expect(state).toMatchObject({
    place: "hangar",
    coversOn: ["propeller-cover"],
    heatersOn: ["whole-engine-4"],
  });
  expect(state.readings).toEqual([{ at: DAY + 8 * HOUR, part: "oil", tempC: 21.5 }]);
});

test("a switch that is confirmed on heats; a command alone does not", () => {
  const on = lynx(1, { kind: "switch-commanded", switch: "outlet-1", to: "on", reason: "plan" });
  expect(stateOf(on)).toMatchObject({ heatersOn: [], changes: [] });
  const confirmed = lynx(1.01, { kind: "switch-confirmed", switch: "outlet-1", is: "on" });
  const again = lynx(1.5, { kind: "switch-confirmed", switch: "outlet-1", is: "on" });
  const state = stateOf(on, confirmed, again);
  expect(state.heatersOn).toEqual(["whole-engine-4"]);
  expect(state.changes).toHaveLength(1);
  expect(state.switches.get("outlet-1")).toEqual({
    commanded: { to: "on", at: DAY + HOUR },
    confirmed: { is: "on", at: DAY + 1.5 * HOUR },
  });
  const off = lynx(2, { kind: "switch-confirmed", switch: "outlet-1", is: "off" });
  expect(stateOf(on, confirmed, off)).toMatchObject({ heatersOn: [] });
  expect(
    stateOf(on, confirmed, lynx(2, { kind: "unplugged", heaters: ["whole-engine-4"] })).heatersOn,
  ).toEqual([]);
});

test("a shut-down is a new beginning, with what is on and where it stands then", () => {
  const state = stateOf(
    lynx(1, { kind: "plugged-in", heaters: ["in-cowl-400"] }),
    lynx(2, { kind: "moved", to: "hangar" }),
    lynx(3, { kind: "reading", part: "oil", temp_c: 3 }),
    lynx(4, { kind: "started", how: "easy" }),
    lynx(5, { kind: "shut-down" }),
    lynx(6, { kind: "moved", to: "ramp" }),
  );
  expect(state.anchor).toEqual({
    at: DAY + 5 * HOUR,
    from: "shut-down",
    place: "hangar",
    coversOn: ["insulated-cover"],
    heatersOn: ["in-cowl-400"],
    initial: { shut_down_h_ago: 0 },
  });
  expect(state).toMatchObject({
    changes: [{ at: DAY + 6 * HOUR, do: "move", to: "ramp" }],
    readings: [],
    running: false,
    lastStart: { at: DAY + 4 * HOUR, how: "easy" },
  });
});

test("a set-up with a later word on how it stands begins anew; one without does not", () => {
  const events = [
    lynx(1, { kind: "plugged-in", heaters: ["in-cowl-400"] }),
    lynx(2, { kind: "shut-down" }),
    lynx(5, { kind: "moved", to: "hangar" }),
  ];
  const kit = { heaters: ["in-cowl-400", "whole-engine-4", "battery-blanket-60"], covers: [] };
  const unchanged = { ...LYNX, kit, known: { ...LYNX.known, covers_on: [] } };
  const sameWord = { id: id(90), at: iso(9), kind: "set-up", base: { ...BASE, aircraft: [unchanged, WREN] } };
  const kept = stateOf(...events, sameWord as LogbookEvent);
  expect(kept.setUp.kit).toEqual(kit);
  expect(kept.anchor).toMatchObject({ at: DAY + 2 * HOUR, from: "shut-down" });
  const known = { at: iso(4), place: "ramp" as const, covers_on: [], initial: { oil_c: 2 } };
  const newWord = { ...sameWord, base: { ...BASE, aircraft: [{ ...unchanged, known }, WREN] } };
  const anew = stateOf(...events, newWord as LogbookEvent);
  expect(anew.anchor).toEqual({
    at: DAY + 4 * HOUR,
    from: "set-up",
    place: "ramp",
    coversOn: [],
    heatersOn: ["in-cowl-400"],
    initial: { oil_c: 2 },
  });
  expect(anew.changes).toEqual([{ at: DAY + 5 * HOUR, do: "move", to: "hangar" }]);
});

const wanted = (hour: number, departure: number, rest: object = {}) =>
  lynx(hour, { kind: "departure-wanted", departure: iso(departure), ...rest });
const started = (hour: number, how: string) => lynx(hour, { kind: "started", how });
const hoursOf = ({ departures }: AircraftState) => departures.map((d) => (d.departure - DAY) / HOUR);

test("departures stand, soonest first, until they are dropped or flown", () => {
  const [late, soon] = [
    wanted(1, 14, { chance: 0.8, pulled_out: true }),
    wanted(2, 10, { heaters: ["in-cowl-400"] }),
  ];
  expect(stateOf(late, soon).departures).toEqual([
    { id: soon.id, departure: DAY + 10 * HOUR, pulledOut: false, heaters: ["in-cowl-400"] },
    { id: late.id, departure: DAY + 14 * HOUR, chance: 0.8, pulledOut: true },
  ]);
  const dropped = lynx(3, { kind: "departure-dropped", of: soon.id });
  expect(hoursOf(stateOf(late, soon, dropped))).toEqual([14]);
  expect(hoursOf(stateOf(late, soon, started(10.2, "hard")))).toEqual([14]);
  expect(hoursOf(stateOf(late, soon, started(13, "easy")))).toEqual([10]);
});

test("a start that failed flies nothing", () => {
  const state = stateOf(wanted(1, 10), started(10, "failed"));
  expect(hoursOf(state)).toEqual([10]);
  expect(state).toMatchObject({ running: false, lastStart: { how: "failed" } });
});

test("a second start of the same flight closes no other departure", () => {
  const state = stateOf(wanted(1, 10), wanted(1, 14), started(10, "easy"), started(10.1, "easy"));
  expect(hoursOf(state)).toEqual([14]);
  expect(state.running).toBe(true);
});

test("a start belongs to no departure further than six hours off, wanted later, or dropped before", () => {
  expect(hoursOf(stateOf(wanted(1, 10), started(3.9, "easy")))).toEqual([10]);
  expect(hoursOf(stateOf(wanted(1, 10), started(4, "easy")))).toEqual([]);
  expect(hoursOf(stateOf(wanted(1, 10), started(16.1, "easy")))).toEqual([10]);
  expect(hoursOf(stateOf(started(9, "easy"), wanted(9.5, 13)))).toEqual([13]);
  const near = wanted(1, 10);
  const dropped = lynx(9, { kind: "departure-dropped", of: near.id });
  expect(hoursOf(stateOf(near, wanted(1, 14), dropped, started(10, "easy")))).toEqual([]);
});

test("the newest plan stands, for a departure still wanted and not withdrawn", () => {
  const departure = wanted(1, 10);
  const plan = (hour: number, of: string) =>
    lynx(hour, {
      kind: "plan-issued",
      of,
      status: "ready",
      plug_in: iso(6),
      unplug: iso(9.75),
      departure: iso(10),
      heaters: ["whole-engine-4"],
      chance: 0.9,
      weakest: "oil",
      message: "ready",
      energy_kwh: 2,
    });
  const [first, second] = [plan(2, departure.id), plan(3, departure.id)];
  expect(stateOf(departure, first, second).plan).toEqual(second);
  const withdrawn = lynx(4, { kind: "plan-withdrawn", of: second.id, reason: "colder" });
  expect(stateOf(departure, first, second, withdrawn).plan).toEqual(first);
  expect(stateOf(departure, first, started(10, "easy")).plan).toBeUndefined();
  expect(stateOf(first).plan).toBeUndefined();
});

test("faults stand with their aircraft or the base until they are cleared, the newest first", () => {
  const fault = (hour: number, rest: object) =>
    ({
      id: id(number++),
      at: iso(hour),
      kind: "fault",
      fault: "probe-lost",
      text: "lost",
      ...rest,
    }) as LogbookEvent;
  const cleared = (of: LogbookEvent) =>
    ({ id: id(number++), at: iso(9), kind: "fault-cleared", of: of.id }) as LogbookEvent;
  const [own, ownLater, ofBase] = [
    fault(1, { aircraft: "lynx" }),
    fault(2, { aircraft: "lynx" }),
    fault(3, {}),
  ];
  const state = deriveBase([SET_UP, own, ownLater, ofBase]);
  expect(state?.aircraft.get("lynx")?.faults).toEqual([ownLater, own]);
  expect(state?.aircraft.get("wren")?.faults).toEqual([]);
  expect(state?.faults).toEqual([ofBase]);
  const after = deriveBase([SET_UP, own, ownLater, ofBase, cleared(ownLater), cleared(ofBase)]);
  expect(after?.aircraft.get("lynx")?.faults).toEqual([own]);
  expect(after?.faults).toEqual([]);
});

test("forecasts are kept, the newest first", () => {
  const forecast = (hour: number) =>
    ({
      id: id(number++),
      at: iso(hour),
      kind: "forecast",
      origin: "by hand",
      weather: { points: [{ at_h: 0, air_c: -9 }] },
    }) as LogbookEvent;
  const [first, second] = [forecast(1), forecast(2)];
  expect(deriveBase([first, SET_UP, second])?.forecasts).toEqual([second, first]);
});

test("events that speak of what is not there are listed with the reason", () => {
  const events = [
    lynx(1, { kind: "plugged-in", heaters: ["gone-pad", "in-cowl-400"] }),
    lynx(2, { kind: "cover-on", covers: ["gone-quilt"] }),
    lynx(3, { kind: "switch-confirmed", switch: "gone", is: "on" }),
    lynx(4, { kind: "departure-dropped", of: id(9999) }),
    lynx(5, { kind: "plan-withdrawn", of: id(9999), reason: "late" }),
    { id: id(8000), at: iso(6), kind: "fault-cleared", of: id(9999) } as LogbookEvent,
    { id: id(8001), at: iso(7), kind: "shut-down", aircraft: "heron" } as LogbookEvent,
    wanted(8, 20, { heaters: ["gone-pad"] }),
  ];
  const state = deriveBase([SET_UP, ...events]);
  const reasons = new Map(state?.withoutEffect.map((e) => [e.id, e.reason]));
  expect(events.map((e) => reasons.get(e.id))).toEqual([
    "lynx has no heater gone-pad",
    "lynx has no cover gone-quilt",
    "lynx has no switch gone",
    `no departure ${id(9999)} is wanted`,
    `no plan ${id(9999)} is known`,
    `no fault ${id(9999)} is known`,
    "no aircraft heron is in the set-up",
    "lynx has no heater gone-pad",
  ]);
  expect(state?.aircraft.get("lynx")).toMatchObject({ heatersOn: ["in-cowl-400"] });
  expect(state?.aircraft.get("lynx")?.departures[0].heaters).toEqual([]);
});
