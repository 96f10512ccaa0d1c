import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import {
  deriveBase,
  eventInCurrentForm,
  eventsToCsv,
  eventsToJson,
  type LogbookEvent,
  readBaseSetUp,
  readEvents,
  readEventsCsv,
  unsafeSwitches,
} from "../../src/logbook/index.js";
import { english } from "../../src/words/index.js";
import { id } from "./example-base.js";

// Files as version 1 wrote them: what a switch was told in other words, heaters without limits, plans with another key.

const read = (name: string) => readFileSync(`test/logbook/fixtures/${name}`, "utf8");
const written: { events: Record<string, unknown>[] } = JSON.parse(read("logbook-1.json"));
const oldBase = written.events[0].base as { aircraft: { switches: { via: object }[] }[] };

function setUpFrom(source: unknown) {
  const reading = readBaseSetUp(source);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading.setUp;
}

test("a set-up of version 1 is read with the words and limits of today", () => {
  const setUp = setUpFrom(JSON.stringify(oldBase));
  expect(setUp.soakline_base).toBe(3);
  expect(setUp.aircraft[0].probes[0].via).toEqual({ kind: "mqtt", topic: "strip/lynx/oil", pointer: "/t" });
  expect(setUp.aircraft[0].switches[0]).toMatchObject({ id: "pad", longest_on_min: 240, on_time_s: 300 });
  expect(setUp.aircraft[0].switches[0].via).toEqual({
    kind: "mqtt",
    say: { topic: "strip/pad/set", on: "ON", off: "OFF", keep: true },
    hear: { topic: "strip/pad/state", pointer: "/relay", on: "on", off: "off" },
    ask: { topic: "strip/pad/ask", payload: "" },
  });
  expect(setUp.aircraft[1].switches[0].via).toEqual({
    kind: "http",
    say: {
      on: { method: "POST", url: "http://relay.lan/on" },
      off: { method: "POST", url: "http://relay.lan/off" },
    },
    hear: { request: { method: "GET", url: "http://relay.lan/" }, pointer: "/is", on: "1", off: "0" },
  });
  expect(setUp.aircraft[0].kit.heaters[0]).toMatchObject({
    id: "own-pad",
    least_on_h: 0.5,
    runs: "anywhere",
    attended: false,
  });
  expect([...unsafeSwitches(setUp)]).toEqual([]);
});

test("what version 1 did not know is named, in the words of today", () => {
  const [lynx, wren] = oldBase.aircraft;
  const switches = [{ ...lynx.switches[0], via: { ...lynx.switches[0].via, command_topic: 7, speed: 3 } }];
  const reading = readBaseSetUp({ ...oldBase, aircraft: [{ ...lynx, switches }, wren] });
  if (reading.ok) throw new Error("it was accepted");
  expect(reading.issues.map(({ path }) => path)).toEqual([
    "aircraft[0].switches[0].via.say.topic",
    "aircraft[0].switches[0].via.speed",
  ]);
});

test.each([
  ["JSON", () => readEvents(read("logbook-1.json"))],
  ["CSV", () => readEventsCsv(read("logbook-1.csv"))],
])(
  "an export of version 1 in %s is read whole, also what a correction says, and goes out in today's form",
  (_, reading) => {
    const { events, issues } = reading();
    expect(issues).toEqual([]);
    expect(events.map((event) => event.id)).toEqual([1, 2, 3, 4, 6].map(id));
    expect(events[0]).toMatchObject({ kind: "set-up", base: setUpFrom(oldBase) });
    expect(events[2]).toMatchObject({ kind: "plan-issued", weakest: "oil-pumps" });
    expect(events[2]).not.toHaveProperty("binding");
    expect(events[3]).toMatchObject({ instead: { kind: "plan-issued", weakest: "bearings" } });
    expect(events[4]).toMatchObject({ instead: { base: { soakline_base: 3, name: "Old strip, renamed" } } });
    const state = deriveBase(events);
    expect(state?.setUp.name).toBe("Old strip, renamed");
    expect(state?.aircraft.get("lynx")?.plan).toMatchObject({ weakest: "bearings" });
    expect(readEvents(eventsToJson(events))).toEqual({ events, issues: [] });
    expect(readEventsCsv(eventsToCsv(events))).toEqual({ events, issues: [] });
    // Read once, it stays as it is.
    for (const event of events) expect(eventInCurrentForm(event)).toBe(event);
  },
);

/** An export of version 1 whose relay has no on-time, and of another in which a later set-up has mended it. */
function withRelay(later: "mended" | "none") {
  const [lynx, wren] = oldBase.aircraft;
  const { on_time_s: _, ...endless } = wren.switches[0] as { on_time_s?: number };
  const base = { ...oldBase, aircraft: [lynx, { ...wren, switches: [endless] }] };
  const first = { ...written.events[0], base };
  const mended = { ...written.events[0], id: id(9), at: "2025-12-05T12:00:00Z" };
  return later === "mended" ? [mended, first] : [first, written.events[1]];
}

test("a switch without an end is refused where it would stand, and kept where it is history", () => {
  const standing = readEvents({ soakline_logbook: 1, events: withRelay("none") });
  expect(standing.issues.map(({ path }) => path)).toEqual([
    "events[0].base.aircraft[1].switches[0].on_time_s",
  ]);
  expect(standing.events.map((event) => event.id)).toEqual([id(2)]);
  const former = readEvents({ soakline_logbook: 1, events: withRelay("mended") });
  expect(former.issues).toEqual([]);
  expect(former.events).toHaveLength(2);
  const table = readEventsCsv(eventsToCsv(former.events));
  expect(table).toEqual({ events: former.events, issues: [] });
  // One by one, as a client sends them, each is new.
  expect(readEvents(withRelay("mended")).issues.map(({ path }) => path)).toEqual([
    "[1].base.aircraft[1].switches[0].on_time_s",
  ]);
});

test("a logbook of version 1 that stands with such a switch is read, and the switch is named", () => {
  const events = withRelay("none").map(eventInCurrentForm) as LogbookEvent[];
  const state = deriveBase(events);
  expect([...unsafeSwitches(state!.setUp).keys()]).toEqual(["wren/relay"]);
  expect(state?.aircraft.get("wren")?.switches.size).toBe(1);
});

test("a fault that an earlier program wrote as a sentence stands as it was; one of today says what was found", () => {
  const common = { kind: "fault", at: "2026-01-10T12:00:00.000Z", fault: "device-offline" } as const;
  const sentence = { ...common, id: id(51), text: "the switch does not answer" };
  const found = {
    ...common,
    id: id(52),
    text: { code: "probe-silent", values: { probe: "oil", within_s: 600 } },
  };
  const events = [sentence, found] as LogbookEvent[];
  for (const reading of [readEvents(eventsToJson(events)), readEventsCsv(eventsToCsv(events))])
    expect(reading).toEqual({ events, issues: [] });
  const faults = events.flatMap((event) => (event.kind === "fault" ? [english(event.text)] : []));
  expect(faults).toEqual(["the switch does not answer", "nothing fresh from oil within 600 s"]);
});
