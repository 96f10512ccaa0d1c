import { describe, expect, test } from "vitest";
import { type LogOptions, readTemperatureLog } from "../../src/learning/index.js";
import { localText } from "../../src/weather/index.js";

const OSLO = "Europe/Oslo";

function read(times: readonly string[], options: LogOptions = { zone: OSLO }) {
  const text = ["time,oil_c", ...times.map((time, i) => `${time},${(-20 + i / 10).toFixed(1)}`)].join("\n");
  const reading = readTemperatureLog(text, options);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading.log;
}

const shown = (times: readonly string[], options?: LogOptions) =>
  [...read(times, options).time].map((t) => localText(t, OSLO).slice(8));
const told = (times: readonly string[], options?: LogOptions) =>
  read(times, options).findings.map(({ kind, place, rejected }) => [kind, place, rejected]);

describe("the clock goes forward on 29 March 2026", () => {
  test("times in the skipped hour are rejected", () => {
    expect(told(["2026-03-29T01:50", "2026-03-29T02:00", "2026-03-29T02:10", "2026-03-29T03:00"])).toEqual([
      ["bad-time", "lines 3-4", true],
    ]);
  });
});

describe("the clock goes back on 25 October 2026", () => {
  const day = (clocks: string) => clocks.split(" ").map((clock) => `2026-10-25T${clock}`);

  test("both passes, told by the clock's falling back", () => {
    const times = day("01:30 02:00 02:30 02:00 02:30 03:00");
    expect(shown(times)).toEqual([
      "25T01:30+02:00",
      "25T02:00+02:00",
      "25T02:30+02:00",
      "25T02:00+01:00",
      "25T02:30+01:00",
      "25T03:00+01:00",
    ]);
    expect(told(times)).toEqual([
      ["ambiguous-time", "lines 3-4", false],
      ["ambiguous-time", "lines 5-6", false],
    ]);
  });

  test("hourly, both passes have one time", () => {
    expect(shown(day("01:00 02:00 02:00 03:00"))).toEqual([
      "25T01:00+02:00",
      "25T02:00+02:00",
      "25T02:00+01:00",
      "25T03:00+01:00",
    ]);
  });

  test("the first pass, as the log goes on from before without a pause", () => {
    expect(shown(day("01:40 01:50 02:00 02:10"))).toContain("25T02:10+02:00");
  });

  test("the second pass, as the log goes on after it without a pause", () => {
    expect(shown(day("02:40 02:50 03:00 03:10"))).toContain("25T02:50+01:00");
  });

  test("a logger that shows the hour once: rejected, or as chosen", () => {
    const times = day("01:50 02:00 02:10 02:20 02:30 02:40 02:50 03:00 03:10");
    expect(told(times)).toEqual([
      ["ambiguous-time", "lines 3-8", true],
      ["gap", "lines 2, 9", false],
    ]);
    expect(shown(times, { zone: OSLO, overlap: "later" })).toContain("25T02:50+01:00");
    expect(told(times, { zone: OSLO, overlap: "earlier" })[0]).toEqual([
      "ambiguous-time",
      "lines 3-8",
      false,
    ]);
  });

  test("an offset leaves no doubt", () => {
    expect(shown(["2026-10-25T02:30+02:00", "2026-10-25T02:30+01:00"])).toEqual([
      "25T02:30+02:00",
      "25T02:30+01:00",
    ]);
    expect(told(["2026-10-25T02:30+02:00", "2026-10-25T02:30+01:00"])).toEqual([]);
  });
});

describe("order", () => {
  const clocks = (text: string) => text.split(" ").map((clock) => `2026-01-10T${clock}Z`);

  test("newest first is turned round and told once", () => {
    const times = clocks("05:03 05:02 05:01 05:00");
    expect([...read(times).time]).toEqual([...read(clocks("05:00 05:01 05:02 05:03")).time]);
    expect(told(times)).toEqual([["out-of-order", "lines 2, 5", false]]);
  });

  test("a block out of order is moved, a repeated time left out", () => {
    expect(told(clocks("05:00 05:03 05:01 05:02 05:04 05:04 05:05"))).toEqual([
      ["out-of-order", "lines 4-5", false],
      ["duplicate", "line 7", true],
    ]);
    expect(read(clocks("05:00 05:03 05:01 05:02 05:04")).probes[0].temps).toEqual(
      new Float64Array([-20, -19.8, -19.7, -19.9, -19.6].map((t) => t + 273.15)),
    );
  });

  test("a gap is told where it is far over the usual step", () => {
    expect(told(clocks("05:00 05:01 05:02 05:10 05:11 05:40 05:41"))).toEqual([["gap", "lines 6-7", false]]);
    expect(told(clocks("05:00 05:30 06:00 07:30"))).toEqual([]);
  });
});

test.each([
  ["12:05 am", "00:05"],
  ["12:05 pm", "12:05"],
  ["1:05 PM", "13:05"],
  ["11:05 a.m.", "11:05"],
])("%s is %s", (half, whole) => {
  expect([...read([`13/01/2026 ${half}`], { zone: "UTC" }).time]).toEqual([
    Date.parse(`2026-01-13T${whole}Z`) / 1000,
  ]);
});

test("no such clock: 13:05 pm is no time", () => {
  expect(told(["13/01/2026 1:05 pm", "13/01/2026 13:05 pm"], { zone: "UTC" })).toEqual([
    ["bad-time", "line 3", true],
  ]);
});

test("the header in the middle, as of a logger that starts again", () => {
  expect(told(["2026-01-10T05:00Z", "time", "2026-01-10T05:01Z"])).toEqual([["bad-time", "line 3", true]]);
});
