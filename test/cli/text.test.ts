import { describe, expect, test } from "vitest";
import { failureOf } from "../../src/cli/exit.js";
import { createProgress } from "../../src/cli/progress.js";
import { fitting, type Style, styleFor } from "../../src/cli/style.js";
import { chartLines } from "../../src/cli/text/chart.js";
import { assumed, cared, clock, day, ofHundred, percent, span, wrapped } from "../../src/cli/text/words.js";
import { finding } from "../../src/findings/index.js";

const UTF8: Style = styleFor({ env: { LANG: "nb_NO.UTF-8" }, isTty: false });
const ASCII: Style = styleFor({ env: { LANG: "C" }, isTty: false });
const FAHRENHEIT: Style = styleFor({ env: { LANG: "C.UTF-8" }, isTty: false }, { units: "f" });
const plain = (text: string) => fitting(text, UTF8);

describe("style", () => {
  test("the first locale that is set decides on letters", () => {
    const unicode = (env: Record<string, string>) => styleFor({ env, isTty: true }).unicode;
    expect(unicode({ LANG: "en_GB.utf8" })).toBe(true);
    expect(unicode({ LANG: "en_GB.UTF-8", LC_ALL: "C" })).toBe(false);
    expect(unicode({ LC_ALL: "", LC_CTYPE: "C.UTF-8" })).toBe(true);
    expect(unicode({})).toBe(false);
  });

  test("colour only on a terminal that wants it", () => {
    const red = (env: Record<string, string>, isTty: boolean) => styleFor({ env, isTty }).colors.red("x");
    expect(red({ TERM: "xterm" }, true)).toBe("\u001b[31mx\u001b[39m");
    for (const off of [red({}, false), red({ NO_COLOR: "1" }, true), red({ TERM: "dumb" }, true)])
      expect(off).toBe("x");
    expect(red({ NO_COLOR: "" }, true)).not.toBe("x");
  });

  test("without UTF-8 nothing but ASCII is left, and signs keep their meaning", () => {
    const text = fitting("−6 °C ± 2 K, ≥ 5 m² → Elsäkerhetsverket … ░ ☃", ASCII);
    expect(text).toBe("-6 C +/- 2 K, >= 5 m2 -> Elsakerhetsverket ... ? ?");
  });
});

describe("words", () => {
  test("temperatures and differences in either unit", () => {
    expect(plain(UTF8.values.temp(-30.4))).toBe("-30 °C");
    expect(plain(UTF8.values.temp(-0.2))).toBe("0 °C");
    expect(plain(FAHRENHEIT.values.temp(-40))).toBe("-40 °F");
    expect(plain(UTF8.values.difference(2.5))).toBe("2.5 K");
    expect(plain(FAHRENHEIT.values.difference(2.5))).toBe("4.5 F°");
  });

  test("sentences of a document follow the unit, with as many decimals, and leave other numbers alone", () => {
    const said = (text: string) => plain(FAHRENHEIT.say(text));
    expect(said("at -25 °C, 7.2 K short of -20 °C")).toBe("at -13 °F, 13.0 F° short of -4 °F");
    expect(said("oil at 74 to 93 °C, -6..12 °C")).toBe("oil at 165 to 199 °F, 21..54 °F");
    expect(said("taken at -15.0 °C, known to ±3 K")).toBe("taken at 5.0 °F, known to ±5 F°");
    const other = "SAE 15W-50, 12 kW, 5 K/h, 300 Kelvin, 40 °F, 90 %";
    expect(said(other)).toBe(other);
    expect(UTF8.say("at -25 °C, 7.2 K short")).toBe("at -25 °C, 7.2 K short");
  });

  test("what was assumed follows the unit; cautions keep the one they were published in", () => {
    expect(assumed(["The hangar is at 5 °C."], FAHRENHEIT).map(plain)).toContain("- The hangar is at 41 °F.");
    expect(cared([{ text: "Below -34 °C take it out.", source: "a handbook" }], FAHRENHEIT)).toContain(
      "- Below -34 °C take it out. (a handbook)",
    );
    expect(assumed([], UTF8)).toEqual([]);
  });

  test("winds, and chances out of 100 that never promise more than was counted", () => {
    expect(
      ["kt", "mps", "kmh"].map((wind) =>
        plain(styleFor({ env: {}, isTty: false }, { windUnits: wind as "kt" }).values.wind(5)),
      ),
    ).toEqual(["10 kt", "5 m/s", "18 km/h"]);
    expect([1, 0.995, 0.889, 0.01, 0.004].map(ofHundred)).toEqual([
      "over 99 of 100",
      "over 99 of 100",
      "88 of 100",
      "1 of 100",
      "under 1 of 100",
    ]);
  });

  test("spans of time", () => {
    expect([0, 0.25, 1, 1.37, 2, 0.999].map((h) => plain(span(h)))).toEqual([
      "0 min",
      "15 min",
      "1 h",
      "1 h 20 min",
      "2 h",
      "1 h",
    ]);
  });

  test("chances are neither certain nor hopeless by rounding", () => {
    expect([0, 0.004, 0.5, 0.996, 1].map((p) => plain(percent(p)))).toEqual([
      "0 %",
      "under 1 %",
      "50 %",
      "over 99 %",
      "100 %",
    ]);
  });

  test("times with their day where it is another one", () => {
    const evening = { at_h: 0, time: "2026-01-14T23:35+01:00" };
    const morning = { at_h: 10, time: "2026-01-15T09:35+01:00" };
    expect(plain(clock(evening, morning))).toBe("Wed 23:35");
    expect(clock(morning, morning)).toBe("09:35");
    expect(day(morning)).toBe("Thu 15 Jan 2026");
  });

  test("wrapping breaks between words only and never exceeds the width", () => {
    const text = "one two three four five six seven eight nine ten";
    const lines = wrapped(text, 20, "- ");
    expect(lines.every((line) => line.length <= 20)).toBe(true);
    expect(lines.map((line) => line.slice(2)).join(" ")).toBe(text);
    expect(lines[0].startsWith("- ") && lines[1].startsWith("  ")).toBe(true);
  });
});

describe("chart", () => {
  const hours = Array.from({ length: 25 }, (_, i) => i);
  const flat = (celsius: number) => ({
    p05_c: hours.map(() => celsius - 2),
    p50_c: hours.map(() => celsius),
    p95_c: hours.map(() => celsius + 2),
  });
  const rising = {
    p05_c: hours.map((h) => h - 32),
    p50_c: hours.map((h) => h - 30),
    p95_c: hours.map((h) => h - 28),
  };
  const chart = {
    course: {
      time_h: hours,
      parts: { oil: rising, crankshaft: flat(-20), heads: flat(-14), outside_air: flat(-30) },
      energy_kwh: { p05: hours, p50: hours, p95: hours },
    },
    from_h: 0,
    to_h: 24,
    start: Date.UTC(2026, 0, 14, 17) / 1000,
    zone: "Europe/Oslo",
    marks: [{ at_h: 12, letter: "P", label: "plug in" }],
    limit_c: -6,
  };
  const rowOf = (lines: string[], letter: string, column: number) =>
    lines.findIndex((line) => line[column] === letter);

  test("puts every line at its temperature: warmer higher, rising to the right", () => {
    const lines = chartLines(chart, UTF8).slice(1);
    const [oilEarly, oilLate] = [rowOf(lines, "o", 8), rowOf(lines, "o", 78)];
    expect(oilLate).toBeLessThan(oilEarly);
    expect(rowOf(lines, "h", 40)).toBeLessThan(rowOf(lines, "c", 40));
    expect(rowOf(lines, "c", 40)).toBeLessThan(rowOf(lines, ".", 40));
    expect(lines.every((line) => line.length <= 80)).toBe(true);
  });

  test("labels rows with round temperatures, and the line of the limit lies between its neighbours", () => {
    const lines = chartLines(chart, UTF8).slice(1);
    const labelled = lines.flatMap((line, row) =>
      /^ +(-?\d+) │/.test(line) ? [{ row, value: Number(line.slice(0, 5)) }] : [],
    );
    const step = (labelled[0].value - labelled[1].value) / (labelled[1].row - labelled[0].row);
    const limit = lines.findIndex((line) => line.includes("┄┄┄"));
    expect(Math.abs(labelled[0].value - step * (limit - labelled[0].row) - -6)).toBeLessThanOrEqual(step / 2);
  });

  test("names local hours under the axis and the marks below them", () => {
    const lines = chartLines(chart, UTF8);
    const hoursLine = lines.find((line) => line.includes("18:00")) ?? "";
    expect(hoursLine.indexOf("18:00") + 2).toBe(7);
    const marks = lines[lines.indexOf(hoursLine) + 1];
    expect(hoursLine.slice(marks.indexOf("P") - 2).startsWith("06:00")).toBe(true);
  });

  test("hours keep their names through a change of the clock", () => {
    const lines = chartLines({ ...chart, start: Date.UTC(2026, 2, 28, 17) / 1000 }, UTF8);
    const labels = lines
      .find((line) => line.includes("18:00"))
      ?.trim()
      .split(/ +/);
    expect(labels).toContain("06:00");
    expect(labels).not.toContain("05:00");
  });

  test("is plain ASCII where it must be", () => {
    expect(
      chartLines(chart, ASCII)
        .map((line) => fitting(line, ASCII))
        .join("\n"),
    ).toMatch(/^[\n -~]+$/);
  });
});

describe("progress", () => {
  const recorder = (isTTY: boolean) => {
    const written: string[] = [];
    const stream = {
      isTTY,
      write: (text: string) => written.push(text) > 0,
    } as unknown as NodeJS.WriteStream;
    return { written, progress: createProgress("plan", stream) };
  };

  test("is silent where nobody watches", () => {
    const { written, progress } = recorder(false);
    progress.show(0.5);
    progress.clear();
    expect(written).toEqual([]);
  });

  test("shows each step once and leaves a clean line", () => {
    const { written, progress } = recorder(true);
    progress.show(0.5);
    progress.show(0.5);
    progress.show(undefined);
    progress.clear();
    expect(written).toEqual(["\rplan 50 %\u001b[K", "\rplan ...\u001b[K", "\r\u001b[K"]);
  });
});

test("each way to fail has its own exit code", () => {
  const issue = { path: "hours", expected: "a number", received: "nothing" };
  expect(failureOf({ status: "refused", issues: [issue] })).toEqual({
    code: 2,
    lines: ["hours: expected a number, received nothing"],
  });
  expect(
    failureOf({ status: "failed", message: finding("not-calculated", { remedy: "no step" }) }).code,
  ).toBe(3);
  expect(failureOf({ status: "cancelled", message: finding("was-stopped", {}) }).code).toBe(130);
});
