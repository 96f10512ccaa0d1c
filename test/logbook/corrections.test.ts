import { expect, test } from "vitest";
import { deriveBase, type EventOf, type LogbookEvent } from "../../src/logbook/index.js";
import { id, SET_UP } from "./example-base.js";

type Instead = EventOf<"correction">["instead"];

const at = (minute: number) => new Date(Date.parse("2026-01-11T06:00:00Z") + minute * 60_000).toISOString();
const reading = (number: number, temp_c: number): EventOf<"reading"> => ({
  id: id(number),
  at: at(0),
  kind: "reading",
  aircraft: "lynx",
  part: "oil",
  temp_c,
});
const correction = (
  number: number,
  of: number,
  instead: Instead,
  minute = number,
): EventOf<"correction"> => ({
  id: id(number),
  at: at(minute),
  kind: "correction",
  of: id(of),
  instead,
});

/** The oil temperatures that stand, and the numbers of the events without effect. */
function temps(...events: LogbookEvent[]) {
  const state = deriveBase([SET_UP, ...events]);
  const stated = state?.aircraft.get("lynx")?.readings.map((r) => r.tempC);
  return { temps: stated, without: state?.withoutEffect.map((e) => [Number(e.id.slice(-4)), e.reason]) };
}

test("what a correction says holds instead", () => {
  expect(temps(reading(10, -5), correction(20, 10, reading(30, -15)))).toEqual({ temps: [-15], without: [] });
});

test("a correction to null takes the event away", () => {
  expect(temps(reading(10, -5), correction(20, 10, null))).toEqual({ temps: [], without: [] });
});

test("of several corrections the latest holds; of one moment, the one with the higher id", () => {
  const late = "a later correction holds instead";
  expect(
    temps(reading(10, -5), correction(20, 10, reading(30, -15)), correction(21, 10, reading(31, -16))),
  ).toEqual({
    temps: [-16],
    without: [[20, late]],
  });
  expect(
    temps(reading(10, -5), correction(21, 10, reading(31, -16), 5), correction(20, 10, reading(30, -15), 9)),
  ).toEqual({ temps: [-15], without: [[21, late]] });
  expect(
    temps(reading(10, -5), correction(20, 10, null, 5), correction(21, 10, reading(31, -16), 5)),
  ).toEqual({
    temps: [-16],
    without: [[20, late]],
  });
});

test("the event of a correction can be corrected by its own id", () => {
  const first = correction(20, 10, reading(30, -15));
  expect(temps(reading(10, -5), first, correction(21, 30, reading(31, -16)))).toEqual({
    temps: [-16],
    without: [],
  });
  expect(temps(reading(10, -5), first, correction(21, 30, null))).toEqual({ temps: [], without: [] });
});

test("a corrected correction says the new; a correction that was never made leaves the event as written", () => {
  const first = correction(20, 10, reading(30, -15));
  expect(temps(reading(10, -5), first, correction(21, 20, reading(31, -16)))).toEqual({
    temps: [-16],
    without: [],
  });
  expect(temps(reading(10, -5), first, correction(21, 20, null))).toEqual({ temps: [-5], without: [] });
  // The withdrawal is withdrawn: the first correction holds again.
  expect(temps(reading(10, -5), first, correction(21, 20, null), correction(22, 21, null))).toEqual({
    temps: [-15],
    without: [],
  });
  // The newest was never made, so the one before holds.
  const second = correction(21, 10, reading(31, -16));
  expect(temps(reading(10, -5), first, second, correction(22, 21, null)).temps).toEqual([-15]);
});

test("corrections that come before their event, or without one", () => {
  expect(temps(correction(20, 10, reading(30, -15)), reading(10, -5)).temps).toEqual([-15]);
  expect(temps(reading(10, -5), correction(20, 99, null))).toEqual({
    temps: [-5],
    without: [[20, `no event ${id(99)} is known`]],
  });
});

test("corrections in a circle are set aside", () => {
  const circle = "the corrections lead round in a circle";
  expect(temps(reading(10, -5), correction(20, 21, null), correction(21, 20, null))).toEqual({
    temps: [-5],
    without: [
      [20, circle],
      [21, circle],
    ],
  });
});

test("two events of one id: the same one counts, whichever came first, and the doubt is listed", () => {
  const [a, b] = [reading(10, -5), reading(10, -6)];
  expect(temps(a, b)).toEqual(temps(b, a));
  expect(temps(a, b).without).toEqual([[10, "another event has the same id"]]);
});

test("an event corrected under another id answers to both of its ids", () => {
  const wanted = (number: number, departure: string): EventOf<"departure-wanted"> => ({
    id: id(number),
    at: at(0),
    kind: "departure-wanted",
    aircraft: "lynx",
    departure,
  });
  const events: LogbookEvent[] = [
    SET_UP,
    wanted(10, "2026-01-12T09:00:00Z"),
    correction(20, 10, wanted(30, "2026-01-12T11:00:00Z")),
  ];
  const departures = (more: LogbookEvent[]) =>
    deriveBase([...events, ...more])
      ?.aircraft.get("lynx")
      ?.departures.map((d) => [d.id, d.departure]);
  expect(departures([])).toEqual([[id(30), Date.parse("2026-01-12T11:00:00Z")]]);
  for (const of of [10, 30]) {
    expect(
      departures([{ id: id(40), at: at(50), kind: "departure-dropped", aircraft: "lynx", of: id(of) }]),
    ).toEqual([]);
  }
});
