import { expect, test } from "vitest";
import { readBaseSetUp, switchCautions, unsafeSwitches } from "../../src/logbook/index.js";
import { english } from "../../src/words/index.js";
import { BASE, baseWith, issuesOf, LYNX, lynxWith, WREN } from "./example-base.js";

const SWITCH = LYNX.switches[0];
const VIA = SWITCH.via.kind === "mqtt" ? SWITCH.via : undefined;
const viaWith = (changes: object) => lynxWith({ switches: [{ ...SWITCH, via: { ...VIA, ...changes } }] });
const sayWith = (changes: object) => viaWith({ say: { ...VIA?.say, ...changes } });
const hearWith = (changes: object) => viaWith({ hear: { ...VIA?.hear, ...changes } });

test("a sound base is read, as a value and as text", () => {
  expect(readBaseSetUp(BASE)).toEqual({ ok: true, setUp: BASE });
  expect(readBaseSetUp(JSON.stringify(BASE))).toEqual({ ok: true, setUp: BASE });
});

test("what is no base at all is named", () => {
  expect(issuesOf("{")[0]).toMatch(/^line 1: JSON/);
  expect(issuesOf("[]")).toEqual(["document: an object; []"]);
  expect(issuesOf({ ...BASE, soakline_base: 4 })).toEqual([
    "soakline_base: 3 or less: the document is of a newer program; 4",
  ]);
  expect(issuesOf({ ...BASE, soakline_base: "two" })[0]).toMatch(/^soakline_base: /);
  expect(issuesOf({ ...BASE, colour: "red" })[0]).toMatch(
    /^colour: no such key \(known: soakline_base, name/,
  );
});

test("faults in one section do not hide those in another", () => {
  expect(issuesOf(baseWith({ name: "", zone: "Europe/Nowhere", circuits: 3 }))).toEqual([
    'name: at least 1 characters; ""',
    "circuits: an array; 3",
    'zone: an IANA time zone such as "Europe/Oslo"; "Europe/Nowhere"',
  ]);
});

test.each(["+01:00", "Mars/Olympus", "2026-01-01T00:00[Europe/Oslo]"])("%s is no zone", (zone) => {
  expect(issuesOf(baseWith({ zone }))[0]).toMatch(/^zone: an IANA time zone/);
});

test.each<[string, unknown, RegExp]>([
  [
    "aircraft twice",
    baseWith({ aircraft: [LYNX, { ...WREN, id: "lynx" }] }),
    /^aircraft\[1\]\.id: an id that stands once/,
  ],
  ["the reserved id", lynxWith({ id: "base" }), /^aircraft\[0\]\.id: another id/],
  [
    "a circuit twice",
    baseWith({ circuits: [BASE.circuits[0], BASE.circuits[0]] }),
    /^circuits\[1\]\.id: an id that/,
  ],
  [
    "a probe twice",
    lynxWith({ probes: [LYNX.probes[0], LYNX.probes[0]] }),
    /^aircraft\[0\]\.probes\[1\]\.id: an id/,
  ],
  [
    "a base probe twice",
    baseWith({ probes: [BASE.probes[0], BASE.probes[0]] }),
    /^probes\[1\]\.id: an id that/,
  ],
  [
    "an unknown engine",
    lynxWith({ engine: "five-spoon-1" }),
    /^aircraft\[0\]\.engine: one of two-light-60, .*five-spoon/,
  ],
  [
    "an unknown heater",
    lynxWith({ kit: { heaters: ["stove"], covers: [] } }),
    /^aircraft\[0\]\.kit\.heaters\[0\]: one of sump-pad/,
  ],
  [
    "a heater of another engine",
    lynxWith({ kit: { ...LYNX.kit, heaters: ["whole-engine-6"] } }),
    /kit\.heaters\[0\]: a heater for 4 cylinders/,
  ],
  [
    "an unknown cover",
    lynxWith({ kit: { ...LYNX.kit, covers: ["tent"] } }),
    /^aircraft\[0\]\.kit\.covers\[0\]: one of .*tent/,
  ],
  [
    "a cover on that is not there",
    lynxWith({ known: { ...LYNX.known, covers_on: ["inlet-plugs"] } }),
    /^aircraft\[0\]\.known\.covers_on\[0\]: one of kit\.covers: insulated-cover/,
  ],
  [
    "both ways to begin",
    lynxWith({ known: { ...LYNX.known, initial: { all_c: 1, shut_down_h_ago: 1 } } }),
    /known\.initial: either/,
  ],
  [
    "an unknown circuit",
    lynxWith({ circuit: "ramp-32" }),
    /^aircraft\[0\]\.circuit: one of circuits: ramp-16; "ramp-32"/,
  ],
  [
    "a hangar that is not there",
    (({ hangar: _, ...rest }) => rest)(BASE),
    /^aircraft\[1\]\.known\.place: ramp/,
  ],
  [
    "laxer limits",
    lynxWith({ limits: { engine_at_least_c: -60 } }),
    /^aircraft\[0\]\.limits\.engine_at_least_c: /,
  ],
  [
    "covers off before unplugging",
    lynxWith({ habits: { chance: 0.9, unplug_before_min: 5, cover_off_before_min: 10 } }),
    /habits\.cover_off_before_min: 5 or less/,
  ],
  [
    "an unknown cart",
    baseWith({ carts: [{ id: "cart-1", heater: "stove" }] }),
    /^carts\[0\]\.heater: one of/,
  ],
  [
    "people before they come",
    baseWith({ people: [{ from: "2026-01-10T12:00:00Z", to: "2026-01-10T11:00:00Z", count: 1 }] }),
    /^people\[0\]\.to: a time after/,
  ],
  [
    "half a place",
    baseWith({ latitude_deg: 60 }),
    /^longitude_deg: latitude_deg and longitude_deg together; nothing/,
  ],
  [
    "a probe of many topics",
    lynxWith({ probes: [{ ...LYNX.probes[0], via: { kind: "mqtt", topic: "strip/+/oil" } }] }),
    /probes\[0\]\.via\.topic: one topic/,
  ],
  [
    "a probe without a topic",
    lynxWith({ probes: [{ ...LYNX.probes[1], via: { kind: "mqtt", pointer: "/t" } }] }),
    /probes\[0\]\.via\.topic: /,
  ],
])("%s is refused with its place", (_, source, expected) => {
  const issues = issuesOf(source);
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatch(expected);
});

test.each<[string, unknown, RegExp]>([
  [
    "a heater that is not in the kit",
    lynxWith({ switches: [{ ...SWITCH, heaters: ["sump-pad-220"] }] }),
    /switches\[0\]\.heaters\[0\]: one of kit\.heaters: whole-engine-4, in-cowl-400/,
  ],
  [
    "longer than the heater may",
    lynxWith({ switches: [{ ...SWITCH, heaters: ["in-cowl-400"], longest_on_min: 121 }] }),
    /longest_on_min: 120 or less, the longest in-cowl-400 may/,
  ],
  [
    "a heater that needs somebody beside it",
    lynxWith({
      kit: { ...LYNX.kit, heaters: ["whole-engine-4", "ducted-fuel-12000"] },
      switches: [{ ...SWITCH, heaters: ["ducted-fuel-12000"], longest_on_min: 60 }],
    }),
    /switches\[0\]\.heaters: heaters that may run with nobody beside them.*ducted-fuel/,
  ],
  ["every topic", sayWith({ topic: "strip/#" }), /via\.say\.topic: one topic: no \+ or #/],
  ["a state of many", hearWith({ topic: "strip/+/state" }), /via\.hear\.topic: one topic/],
  [
    "its own echo",
    hearWith({ topic: "strip/outlet-1/set" }),
    /via\.hear\.topic: another topic than say\.topic/,
  ],
  ["on and off alike", sayWith({ off: "ON" }), /via\.say\.off: something else than the on command/],
  ["states alike", hearWith({ off: "ON" }), /via\.hear\.off: another word than hear\.on/],
  [
    "one heater on two switches",
    lynxWith({ switches: [SWITCH, { ...SWITCH, id: "outlet-9", via: WREN.switches[0].via }] }),
    /switches\[1\]\.heaters\[0\]: a heater named once \(outlet-1 feeds it\)/,
  ],
])("a switch with %s is refused", (_, source, expected) => {
  expect(issuesOf(source).some((issue) => expected.test(issue))).toBe(true);
});

test("what asks a switch for its state cannot put it, or another, on", () => {
  expect(readBaseSetUp(viaWith({ ask: { topic: "strip/outlet-1/set", payload: "" } })).ok).toBe(true);
  expect(issuesOf(viaWith({ ask: { topic: "strip/outlet-1/set", payload: "ON" } }))).toEqual([
    'aircraft[0].switches[0].via.ask.payload: something else than the on command; "ON"',
  ]);
  expect(issuesOf(viaWith({ ask: { topic: "strip/#", payload: "" } }))).toEqual([
    'aircraft[0].switches[0].via.ask.topic: one topic: no + or #, and not beginning with $; "strip/#"',
  ]);
  const kit = { ...LYNX.kit, heaters: ["whole-engine-4", "sump-pad-220"] };
  const other = { ...SWITCH, id: "outlet-9", heaters: ["sump-pad-220"] };
  const via = {
    ...VIA,
    say: { ...VIA?.say, topic: "strip/outlet-9/set" },
    hear: { ...VIA?.hear, topic: "strip/outlet-9/state" },
    ask: { topic: "strip/outlet-1/set", payload: "ON" },
  };
  expect(issuesOf(lynxWith({ kit, switches: [SWITCH, { ...other, via }] }))).toEqual([
    'aircraft[0].switches[1].via.ask.topic: a topic that does not command another switch (outlet-1); "strip/outlet-1/set"',
  ]);
});

test("two switches that are commanded the same way are refused, also on two aircraft", () => {
  const sameTopic = { ...BASE, aircraft: [LYNX, { ...WREN, switches: [{ ...WREN.switches[0], via: VIA }] }] };
  expect(issuesOf(sameTopic)).toEqual([
    'aircraft[1].switches[0].via.say.topic: a command of its own: outlet-1 of lynx is commanded the same way; "strip/outlet-1/set"',
    'aircraft[1].switches[0].via.hear.topic: a state of its own: outlet-1 of lynx tells off the same way, and would confirm this one; "OFF"',
  ]);
  const via = WREN.switches[0].via;
  const sameRequest = lynxWith({ switches: [{ ...SWITCH, on_time_s: 300, via }] });
  expect(issuesOf(sameRequest)).toEqual([
    'aircraft[1].switches[0].via.say.on: a command of its own: outlet-1 of lynx is commanded the same way; "POST http://outlet-2.lan/relay"',
    'aircraft[1].switches[0].via.hear.request: a state of its own: outlet-1 of lynx tells off the same way, and would confirm this one; "0"',
  ]);
});

test("the headers of a request, which may be secret, are not repeated in an issue", () => {
  const { via } = WREN.switches[0];
  const on = { method: "POST", url: "http://outlet-2.lan/on", headers: { authorization: "Bearer hush" } };
  const hear = { ...via.hear, off: "none" };
  const http = { ...via, say: { on, off: on }, hear };
  const issues = issuesOf(lynxWith({ switches: [{ ...SWITCH, on_time_s: 300, via: http }] }));
  expect(issues).toEqual([
    'aircraft[0].switches[0].via.say.off: another request than on; "POST http://outlet-2.lan/on"',
  ]);
});

test("a switch over HTTP without an on-time is refused with its place; over MQTT it is taken with a caution", () => {
  const { on_time_s: _, ...endless } = WREN.switches[0];
  expect(issuesOf({ ...BASE, aircraft: [LYNX, { ...WREN, switches: [endless] }] })).toEqual([
    "aircraft[1].switches[0].on_time_s: the time after which the device itself goes off: over plain HTTP nobody switches it off when the server dies; nothing",
  ]);
  expect(switchCautions(BASE)).toMatchObject([
    {
      aircraft: "lynx",
      switch: "outlet-1",
      path: "aircraft[0].switches[0]",
      caution: { code: "switch-no-on-time" },
    },
  ]);
});

test("a switch that listens where another is commanded would take a command for a report", () => {
  const kit = { ...LYNX.kit, heaters: ["whole-engine-4", "sump-pad-220"] };
  const hear = { ...VIA?.hear, topic: "strip/outlet-1/set" };
  const via = { ...VIA, say: { ...VIA?.say, topic: "strip/outlet-9/set" }, hear };
  const other = { ...SWITCH, id: "outlet-9", heaters: ["sump-pad-220"], via };
  expect(issuesOf(lynxWith({ kit, switches: [SWITCH, other] }))).toEqual([
    'aircraft[0].switches[1].via.hear.topic: a topic that does not command another switch (outlet-1); "strip/outlet-1/set"',
  ]);
});

test("switches that stand and would be refused today are named with their reason, the others are not", () => {
  expect([...unsafeSwitches(BASE)]).toEqual([]);
  const { on_time_s: _, ...endless } = WREN.switches[0];
  const old = { ...BASE, aircraft: [LYNX, { ...WREN, switches: [endless] }] };
  expect([...unsafeSwitches(old)].map(([name, reason]) => [name, english(reason)])).toEqual([
    ["wren/outlet-2", expect.stringMatching(/^its set-up is not safe \(on_time_s: expected the time after/)],
  ]);
  const stove = { ...old, aircraft: [{ ...LYNX, kit: { ...LYNX.kit, heaters: ["stove"] } }] };
  expect([...unsafeSwitches(stove)].map(([name, reason]) => [name, english(reason)])).toEqual([
    ["lynx/outlet-1", expect.stringMatching(/kit\.heaters\[0\]: expected one of/)],
  ]);
});
