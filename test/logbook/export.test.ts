import fc from "fast-check";
import { expect, test } from "vitest";
import { EVENT_COLUMNS } from "../../src/logbook/export-csv.js";
import {
  eventSchema,
  eventsToCsv,
  eventsToJson,
  type LogbookEvent,
  type ProbeReading,
  readEvents,
  readEventsCsv,
  readingsToCsv,
  readReadingsCsv,
} from "../../src/logbook/index.js";
import { id, SET_UP } from "./example-base.js";
import { madeEvent, madeLogbook } from "./made-events.js";

const NOTE: LogbookEvent = { id: id(7), at: "2026-01-11T06:00:00Z", kind: "note", note: "frost" };
/** Logbooks whose every event is in order. */
const logbooks = madeLogbook(20).map((events) => events.filter((e) => readEvents(e).issues.length === 0));

test("every key of every event has its column", () => {
  const keys = new Set(eventSchema.options.flatMap((option) => Object.keys(option.shape)));
  expect(keys).toEqual(new Set(Object.keys(EVENT_COLUMNS)));
});

test("a logbook comes back whole from JSON and from CSV", () => {
  fc.assert(
    fc.property(logbooks, (events) => {
      expect(readEvents(eventsToJson(events))).toEqual({ events, issues: [] });
      expect(readEventsCsv(eventsToCsv(events))).toEqual({ events, issues: [] });
    }),
    { numRuns: 150 },
  );
});

test.each([
  "=1+1",
  "'=x",
  "+47",
  "-5",
  "@home",
  "'quoted'",
  '"',
  'a "b", c',
  "two\r\nlines\ntwo",
  ";",
  " padded ",
  "\t",
])("a note %j comes back as it was, and no cell of it begins like a formula", (note) => {
  const csv = eventsToCsv([{ ...NOTE, note }]);
  expect(csv).not.toMatch(/(^|,)"?[=+@]/m);
  expect(readEventsCsv(csv).events).toEqual([{ ...NOTE, note }]);
});

test("a table from a spreadsheet: semicolons, a byte order mark, few columns, empty lines", () => {
  const csv = `\ufeffkind;id;at;aircraft;part;temp_c\nreading;${id(3)};2026-01-11T06:00:00Z;lynx;oil;-12.5\n\n`;
  expect(readEventsCsv(csv)).toEqual({
    events: [
      {
        kind: "reading",
        id: id(3),
        at: "2026-01-11T06:00:00Z",
        aircraft: "lynx",
        part: "oil",
        temp_c: -12.5,
      },
    ],
    issues: [],
  });
});

test("of a table the good rows are kept and each bad one is named with its place", () => {
  const csv = [
    "id,at,kind,aircraft,part,temp_c,instead",
    `${id(1)},2026-01-11T06:00:00Z,reading,lynx,oil,cold,`,
    `${id(2)},2026-01-11T06:00:00Z,shut-down,lynx,,,`,
    `${id(3)},yesterday,shut-down,lynx,,,`,
    `${id(4)},2026-01-11T06:00:00Z,shut-down,lynx`,
  ].join("\n");
  const { events, issues } = readEventsCsv(csv);
  expect(events.map((e) => e.id)).toEqual([id(2)]);
  expect(issues.map((i) => `${i.path}: ${i.received}`)).toEqual([
    'row 2.temp_c: "cold"',
    'row 4.at: "yesterday"',
    "row 5: 4",
  ]);
});

test("a table with strange, doubled or missing columns is refused as a whole", () => {
  const { events, issues } = readEventsCsv(`id,at,colour,at\n${id(1)},2026-01-11T06:00:00Z,red,x\n`);
  expect(events).toEqual([]);
  expect(issues.map((i) => [i.path, i.received])).toEqual([
    ["row 1", '"colour"'],
    ["row 1", '"at"'],
    ["row 1", "nothing"],
  ]);
  expect(readEventsCsv("").issues).toHaveLength(3);
});

test("of a batch the good events are kept and each bad one is named with its place", () => {
  const bad = { ...NOTE, kind: "shut-down", aircraft: "LYNX" };
  const setUp = { ...SET_UP, base: { zone: "here" } };
  expect(readEvents([NOTE, bad, 3]).events).toEqual([NOTE]);
  expect(readEvents([NOTE, bad, 3]).issues.map((i) => i.path)).toEqual(["[1].aircraft", "[2]"]);
  expect(readEvents({ soakline_logbook: 1, events: [bad] }).issues.map((i) => i.path)).toEqual([
    "events[0].aircraft",
  ]);
  expect(readEvents(bad)).toMatchObject({ events: [], issues: [{ path: "aircraft" }] });
  expect(readEvents(setUp).issues.map((i) => i.path)).toContain("base.name");
  expect(readEvents("[")).toMatchObject({ events: [], issues: [{ path: "document" }] });
});

test("what only the content shows is refused too", () => {
  const placed = (event: unknown) => readEvents(event).issues.map((i) => `${i.path}: ${i.expected}`);
  const base = { ...(SET_UP as { base: object }).base, zone: "+01:00" };
  expect(placed({ ...SET_UP, base })).toEqual(['base.zone: an IANA time zone such as "Europe/Oslo"']);
  expect(placed({ ...NOTE, kind: "forecast", origin: "x", weather: { epw_file: "/etc/passwd" } })).toEqual([
    "weather.epw_file: the weather itself, not the name of a file",
  ]);
  const correction = { ...NOTE, kind: "correction", of: id(7), instead: null };
  expect(placed(correction)).toEqual(["of: the id of another event"]);
  expect(placed({ ...correction, of: id(8), instead: { ...NOTE, id: id(8) } })).toEqual([
    "instead.id: an id of its own",
  ]);
  expect(placed({ ...correction, of: id(8), instead: { ...SET_UP, base } })).toEqual([
    'instead.base.zone: an IANA time zone such as "Europe/Oslo"',
  ]);
});

test("an export of another version, or with strange keys, is refused", () => {
  const refusal = (document: object) => readEvents(document).issues.map((i) => `${i.path}: ${i.received}`);
  expect(refusal({ soakline_logbook: 3, events: [] })).toEqual(["soakline_logbook: 3"]);
  expect(refusal({ soakline_logbook: "1", events: [] })).toEqual(['soakline_logbook: "1"']);
  expect(readEvents({ soakline_logbook: 1, events: [NOTE] })).toEqual({ events: [NOTE], issues: [] });
  expect(refusal({ soakline_logbook: 1, events: {} })).toEqual(["events: {}"]);
  expect(refusal({ soakline_logbook: 1, events: [], more: 1 })).toEqual(["more: 1"]);
});

test("no text makes the readers throw", () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.json(),
        madeEvent(5).map((e) => eventsToCsv([e]).slice(3)),
      ),
      (text) => {
        for (const read of [readEvents, readEventsCsv]) {
          for (const event of read(text).events)
            expect(readEvents(event)).toEqual({ events: [event], issues: [] });
        }
        expect(readReadingsCsv(text).readings).toEqual([]);
      },
    ),
    { numRuns: 300 },
  );
});

test("readings come back whole from CSV", () => {
  const temps = fc.record({
    aircraft: fc.constantFrom("base", "lynx"),
    probe: fc.constantFrom("oil", "outside-2"),
    time: fc.integer({ min: 0, max: 4e12 }),
    tempC: fc.double({ min: -90, max: 400, noNaN: true }).map((t) => (t === 0 ? 0 : t)),
  });
  fc.assert(
    fc.property(fc.array(temps, { minLength: 1 }), (readings: ProbeReading[]) => {
      expect(readReadingsCsv(readingsToCsv(readings))).toEqual({ readings, issues: [] });
    }),
  );
});

test("of readings the good rows are kept and each fault is named with its line", () => {
  const csv =
    "aircraft,probe,time,temp_c\nlynx,oil,2026-01-11T06:00:00Z,-3\nLynx,oil,noon,hot\nlynx,oil,2026-01-11T06:00,1\nlynx,oil\n";
  const { readings, issues } = readReadingsCsv(csv);
  expect(readings).toEqual([
    { aircraft: "lynx", probe: "oil", time: Date.parse("2026-01-11T06:00:00Z"), tempC: -3 },
  ]);
  expect(issues.map((i) => i.path)).toEqual([
    "line 5",
    "line 3.aircraft",
    "line 3.time",
    "line 3.temp_c",
    "line 4.time",
  ]);
  expect(readReadingsCsv("a,b\n1,2\n").issues).toHaveLength(1);
});
