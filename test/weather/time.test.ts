import fc from "fast-check";
import { expect, test } from "vitest";
import { epochFromLocal, isTimeZone, localText, monthsLater, utcText } from "../../src/weather/index.js";
import { epochNear } from "../../src/weather/time.js";

const OSLO = "Europe/Oslo";

test("a local time is read in its zone and an offset wins over the zone", () => {
  expect(epochFromLocal("2026-01-10T05:00", OSLO)).toEqual({
    ok: true,
    epoch: Date.UTC(2026, 0, 10, 4) / 1000,
  });
  expect(epochFromLocal("2026-07-10 05:00", OSLO)).toEqual({
    ok: true,
    epoch: Date.UTC(2026, 6, 10, 3) / 1000,
  });
  expect(epochFromLocal("2026-01-10T05:00:30-07:00", OSLO)).toEqual({
    ok: true,
    epoch: Date.UTC(2026, 0, 10, 12, 0, 30) / 1000,
  });
  expect(epochFromLocal("2026-01-10T05:00z")).toEqual({ ok: true, epoch: Date.UTC(2026, 0, 10, 5) / 1000 });
});

test("the hour the clock skips is a gap", () => {
  expect(epochFromLocal("2026-03-29T02:30", OSLO)).toMatchObject({ ok: false, reason: "gap" });
  expect(epochFromLocal("2026-03-29T03:00", OSLO)).toMatchObject({ ok: true });
});

test("the hour the clock repeats is an overlap with both instants", () => {
  expect(epochFromLocal("2026-10-25T02:30", OSLO)).toMatchObject({
    ok: false,
    reason: "overlap",
    earlier: Date.UTC(2026, 9, 25, 0, 30) / 1000,
    later: Date.UTC(2026, 9, 25, 1, 30) / 1000,
  });
});

test.each([
  ["10 January", OSLO, "invalid"],
  ["2026-02-30T05:00", OSLO, "invalid"],
  ["2026-01-10T25:00", OSLO, "invalid"],
  ["2026-01-10T05:00", undefined, "no zone"],
  ["2026-01-10T05:00", "Nowhere/Ravnholt", "unknown zone"],
])("%s in %s fails as %s", (text, zone, reason) => {
  expect(epochFromLocal(text, zone)).toMatchObject({ ok: false, reason });
});

test("local text keeps the two passes of a repeated hour apart", () => {
  expect(localText(Date.UTC(2026, 9, 25, 0, 30) / 1000, OSLO)).toBe("2026-10-25T02:30+02:00");
  expect(localText(Date.UTC(2026, 9, 25, 1, 30) / 1000, OSLO)).toBe("2026-10-25T02:30+01:00");
  expect(utcText(Date.UTC(2026, 0, 10, 4) / 1000)).toBe("2026-01-10T04:00Z");
  expect(() => localText(0, "Nowhere/Ravnholt")).toThrow(/unknown zone/);
  expect(() => localText(Number.NaN, OSLO)).toThrow(/invalid epoch/);
  expect(isTimeZone(OSLO)).toBe(true);
});

test("reading what localText writes gives the same minute back, in any zone", () => {
  const zones = [OSLO, "America/Whitehorse", "Antarctica/Troll", "Asia/Kolkata", "UTC"];
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 60_000_000 }), fc.constantFrom(...zones), (minutes, zone) => {
      const epoch = minutes * 60;
      expect(epochFromLocal(localText(epoch, zone))).toEqual({ ok: true, epoch });
    }),
    { numRuns: 200 },
  );
});

test("a day of the month is placed in the nearest month that has it", () => {
  const reference = Date.UTC(2026, 2, 1, 0, 10) / 1000;
  expect(epochNear(28, 23, 50, reference)).toBe(Date.UTC(2026, 1, 28, 23, 50) / 1000);
  expect(epochNear(1, 24, 0, reference)).toBe(Date.UTC(2026, 2, 2) / 1000);
  expect(epochNear(31, 12, 0, Date.UTC(2026, 10, 15) / 1000)).toBe(Date.UTC(2026, 9, 31, 12) / 1000);
  expect(epochNear(32, 0, 0, reference)).toBeUndefined();
  expect(epochNear(5, 24, 30, reference)).toBeUndefined();
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 2e9 }),
      fc.integer({ min: -13 * 86400, max: 13 * 86400 }),
      (r, away) => {
        const time = Math.floor((r + away) / 60) * 60;
        const date = new Date(time * 1000);
        expect(epochNear(date.getUTCDate(), date.getUTCHours(), date.getUTCMinutes(), r)).toBe(time);
      },
    ),
    { numRuns: 300 },
  );
});

test("months later is the same local time, across daylight saving and the ends of short months", () => {
  const at = (text: string) => {
    const read = epochFromLocal(text, OSLO);
    if (!read.ok) throw new Error(read.reason);
    return read.epoch;
  };
  expect(monthsLater(at("2026-02-01T00:00"), OSLO, 2)).toBe(at("2026-04-01T00:00"));
  expect(monthsLater(at("2026-01-31T12:00"), OSLO, 1)).toBe(at("2026-02-28T12:00"));
  expect(() => monthsLater(0, "Nowhere/Place", 1)).toThrow(/unknown zone/);
});
