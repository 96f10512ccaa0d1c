import fc from "fast-check";
import { expect, test } from "vitest";
import { createLocalClock, epochFromLocal } from "../../src/weather/index.js";

const ZONES = [
  "Europe/Oslo",
  "America/St_Johns",
  "Australia/Lord_Howe",
  "Asia/Kathmandu",
  "UTC",
  "Nowhere/Ravnholt",
  undefined,
];

test("law: reads every text as the reader of single times does", () => {
  const two = (max: number) => fc.integer({ min: 0, max }).map((value) => String(value).padStart(2, "0"));
  const text = fc
    .record({
      year: fc.integer({ min: 1970, max: 2060 }),
      month: two(13),
      day: two(32),
      hour: two(24),
      minute: two(60),
      rest: fc.constantFrom("", ":00", ":59", ":60", ":07.25", ":07.123456", " "),
      offset: fc.constantFrom(
        "",
        "",
        "",
        "Z",
        "z",
        "+01:00",
        "-0330",
        " +05:45",
        "+19:00",
        "-01:75",
        "+25:00",
      ),
      between: fc.constantFrom("T", " ", "t", "_"),
    })
    .map((t) => `${t.year}-${t.month}-${t.day}${t.between}${t.hour}:${t.minute}${t.rest}${t.offset}`);
  const clocks = ZONES.map((zone) => ({ zone, clock: createLocalClock(zone) }));
  fc.assert(
    fc.property(text, fc.constantFrom(...clocks), (value, { zone, clock }) => {
      expect(clock(value)).toEqual(epochFromLocal(value, zone));
    }),
    { numRuns: 2000 },
  );
});

test.each(["Europe/Oslo", "America/St_Johns", "Australia/Lord_Howe"])(
  "%s: every ten minutes through the two changes of the clock",
  (zone) => {
    const clock = createLocalClock(zone);
    const kinds = new Set<string>();
    for (const [month, days] of [
      [3, 31],
      [4, 30],
      [10, 31],
      [11, 30],
    ] as const) {
      for (let minute = 0; minute < days * 1440; minute += 10) {
        const text = new Date(Date.UTC(2026, month - 1, 1) + minute * 60_000).toISOString().slice(0, 16);
        if (!/T0[0-4]/.test(text)) continue;
        const reading = clock(text);
        expect(reading).toEqual(epochFromLocal(text, zone));
        kinds.add(reading.ok ? "ok" : reading.reason);
      }
    }
    expect([...kinds].sort()).toEqual(["gap", "ok", "overlap"]);
  },
);
