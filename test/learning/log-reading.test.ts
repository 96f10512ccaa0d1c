import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type LogOptions, readTemperatureLog } from "../../src/learning/index.js";
import { celsiusFromKelvin } from "../../src/units/index.js";

function read(text: string, options: LogOptions = {}) {
  const reading = readTemperatureLog(text, options);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading;
}

function refusal(text: string, options: LogOptions = {}) {
  const reading = readTemperatureLog(text, options);
  if (reading.ok) throw new Error("read, though it should not be");
  return reading.issues.map(({ place, received }) => [place, received]);
}

const FIVE = Date.UTC(2026, 0, 10, 5) / 1000;
const two = (rows: readonly string[], header = "time,oil_c") => [header, ...rows].join("\n");

describe("one reading of -12.5 °C at 5:00 UTC, written in many ways", () => {
  test.each<[string, string, LogOptions?]>([
    ["comma", "time,oil_c\n2026-01-10T05:00Z,-12.5\n"],
    ["quoted decimal comma", 'time,oil_c\n"2026-01-10T05:00Z","-12,5"\n'],
    ["semicolon, decimal comma, byte order mark", "\ufefftime;oil_c\r\n2026-01-10T05:00Z;-12,5\r\n"],
    ["tab, typographic minus", "time\toil (°C)\n2026-01-10T05:00Z\t\u221212.5\n"],
    ["old line ends", "time,oil_c\r2026-01-10T05:00Z,-12.5\r"],
    ["comments and blank lines", "# a\n\ntime,oil_c\n# b\n2026-01-10T05:00Z,-12.5\n\n"],
    ["row of units", "time,oil\n,degC\n2026-01-10T05:00Z,-12.5\n"],
    ["unit of the options", "time,oil\n2026-01-10T05:00Z,-12.5\n", { unit: "c" }],
    ["unit of one column", "time,oil\n2026-01-10T05:00Z,-12.5\n", { units: { Oil: "c" }, unit: "f" }],
    ["unit in the cells", "time,oil °C\n2026-01-10T05:00Z,-12.5 °C\n"],
    ["°F", "time,oil °F\n2026-01-10T05:00Z,9.5\n"],
    ["unit with a lost degree sign", "time,oil (\ufffdC)\n2026-01-10T05:00Z,-12.5\n"],
    ["offset", "time,oil_c\n2026-01-10T06:30+01:30,-12.5\n"],
    ["zone", "time,oil_c\n2026-01-10 06:00:00,-12.5\n", { zone: "Europe/Oslo" }],
    ["UTC by the name of the column", "Time (UTC),oil_c\n2026-01-10 05:00,-12.5\n", { zone: "Europe/Oslo" }],
    ["UTC behind the time", "time,oil_c\n2026-01-10 05:00 UTC,-12.5\n"],
    ["seconds since 1970", `timestamp,oil_c\n${FIVE},-12.5\n`],
    ["milliseconds since 1970", `timestamp,oil_c\n${FIVE}000,-12.5\n`],
    ["date and clock in two columns", "Date,Clock,oil_c\n2026-01-10,05:00:00,-12.5\n", { zone: "UTC" }],
    ["points in the date", "Datum;Öl °C\n10.01.2026 05:00;-12,5\n", { zone: "UTC" }],
    ["day first", "date time,oil_c\n10/1/26 5:00,-12.5\n13/1/26 5:00,-12.5\n", { zone: "UTC" }],
    ["month first", "date time,oil_c\n1/10/2026 5:00 AM,-12.5\n1/13/2026 5:00 AM,-12.5\n", { zone: "UTC" }],
    ["order told", "date time,oil_c\n1/10/2026 05:00,-12.5\n", { zone: "UTC", dateOrder: "month-first" }],
    ["year first with slashes", "time,oil_c\n2026/01/10 05:00:00,-12.5\n", { zone: "UTC" }],
    [
      "a column told",
      "when,T1\n2026-01-10T05:00Z,-12.5\n",
      { columns: { When: "time", t1: { part: "oil" } }, unit: "c" },
    ],
    ["lines above the header", "Logger 7\nStart;2026-01-10 04:00\ntime;oil_c\n2026-01-10T05:00Z;-12,5\n"],
    ["a delimiter at the end", "time;oil_c\n2026-01-10T05:00Z;-12,5;\n"],
  ])("%s", (_, text, options) => {
    const { log, needed } = read(text, options);
    expect(needed).toBeUndefined();
    expect(log.time[0]).toBe(FIVE);
    expect(log.probes.map(({ place }) => place)).toEqual([{ part: "oil" }]);
    expect(celsiusFromKelvin(log.probes[0].temps[0])).toBeCloseTo(-12.5, 9);
    expect(log.findings.filter(({ kind }) => kind !== "bad-value")).toEqual([]);
  });
});

describe("questions", () => {
  test("columns whose names say nothing, too much, or another quantity, and a column without a unit", () => {
    const { log, needed } = read(readFileSync("examples/logs/bad/unknown-columns.csv", "utf8"));
    expect(log.probes).toEqual([]);
    expect(log.time).toHaveLength(30);
    expect(needed?.map(({ column, ask, guesses }) => [column, ask, guesses.length])).toEqual([
      ["T1 (°C)", "place", 0],
      ["T2", "place", 0],
      ["CHT 2 (°C)", "place", 3],
    ]);
    expect(needed?.[0].samples).toEqual(["-21.1", "-20.8", "-21.0"]);
    const answered = read(readFileSync("examples/logs/bad/unknown-columns.csv", "utf8"), {
      columns: {
        "T1 (°C)": { part: "oil" },
        T2: { part: "crankcase" },
        "CHT 2 (°C)": { part: "heads_rear" },
        "rh (%)": "not-used",
      },
    });
    expect(answered.needed?.map(({ column, ask, guesses }) => [column, ask, guesses])).toEqual([
      ["T2", "unit", [{ part: "crankcase" }]],
    ]);
    expect(answered.log.probes.map(({ name }) => name)).toEqual(["T1 (°C)", "CHT 2 (°C)"]);
  });

  test("two columns of one name are told apart", () => {
    const { log } = read(two(["2026-01-10T05:00Z,1,2"], "time,oil_c,oil_c"));
    expect(log.probes.map(({ name }) => name)).toEqual(["oil_c", "oil_c (column 3)"]);
  });
});

describe("refused, with the reason", () => {
  test.each<[string, string, LogOptions, readonly (readonly [string, string])[]]>([
    ["nothing", "", {}, [["file", "fewer lines"]]],
    ["no rows", "time,oil_c\n", {}, [["file", "fewer lines"]]],
    ["no time", "oil_c,cht_c\n1,2\n", {}, [["header", "none among oil_c, cht_c"]]],
    ["a clock without a date", "time,oil_c\n05:00,2\n", {}, [["column time", "05:00"]]],
    [
      "two times",
      "time a,time b,oil_c\n2026-01-10T05:00Z,2026-01-10T05:00Z,1\n",
      {},
      [["header", "several: time a, time b"]],
    ],
    ["no probes", "time,x\n2026-01-10T05:00Z,1\n", { columns: { x: "not-used" } }, [["header", "time, x"]]],
    [
      "two units",
      "time,oil_c\n,°F\n2026-01-10T05:00Z,1\n",
      {},
      [["header, column oil_c", "°C by its name, °F by the row of units"]],
    ],
    [
      "unit against the options",
      "time,oil_c\n2026-01-10T05:00Z,1\n",
      { units: { oil_c: "f" } },
      [["header, column oil_c", "°C by its name, °F by the options"]],
    ],
    [
      "unknown column told",
      "time,oil_c\n2026-01-10T05:00Z,1\n",
      { columns: { T1: { part: "oil" } } },
      [["options, column T1", "T1"]],
    ],
    [
      "unknown part told",
      "time,T1_c\n2026-01-10T05:00Z,1\n",
      { columns: { T1_c: { part: "gizmo" } } },
      [["options, column T1_c", '{"part":"gizmo"}']],
    ],
    ["no zone", "time,oil_c\n2026-01-10T05:00,1\n", {}, [["column time", "2026-01-10T05:00"]]],
    [
      "unknown zone",
      "time,oil_c\n2026-01-10T05:00Z,1\n",
      { zone: "Nowhere/Ravnholt" },
      [["zone", "Nowhere/Ravnholt"]],
    ],
    [
      "dates that read both ways",
      "time,oil_c\n03/04/2026 05:00,1\n",
      { zone: "UTC" },
      [["column time", "03/04/2026 05:00"]],
    ],
    [
      "no row with a time",
      "time,oil_c\n2026-01-10T05:00Z\nyesterday,2\n",
      {},
      [["header", "none among time, oil_c"]],
    ],
    [
      "no row whose time exists",
      "time,oil_c\n2026-03-29T02:10,2\n",
      { zone: "Europe/Oslo" },
      [["file", "2026-03-29T02:10"]],
    ],
  ])("%s", (_, text, options, expected) => {
    expect(refusal(text, options)).toEqual(expected);
  });
});

/** What each example is to be told: kind, place, what was received. */
const EXAMPLES: Readonly<
  Record<
    string,
    { readonly options?: LogOptions; readonly findings: readonly (readonly [string, string, RegExp])[] }
  >
> = {
  "lynx-night.csv": { findings: [] },
  "marten-fahrenheit.csv": { findings: [] },
  "marten-ramp.csv": {
    options: { zone: "Etc/GMT-1" },
    findings: [["bad-value", "line 2", /^Logger 12; serial 0042$/]],
  },
  "wren-flight.csv": { options: { zone: "Europe/Oslo" }, findings: [] },
  "bad/probe-fell-out.csv": {
    findings: [["fell-out", "lines 303-562, column oil (°C)", /^-4\d\.\d K within [3-6] min$/]],
  },
  "bad/deep-cold.csv": {
    findings: [
      ["no-value-in-cold", "lines 133-152, column oil (°C)", /^-55.0 \(20 cells\)$/],
      ["no-value-in-cold", "line 203, column CHT (°C)", /^nothing$/],
      ["no-value-in-cold", "lines 43-132, column CHT (°C)", /^--- \(90 cells\)$/],
    ],
  },
  "bad/spikes.csv": {
    findings: [
      ["no-value-in-cold", "line 203, column oil (°C)", /^85.0$/],
      ["no-value-in-cold", "line 204, column OAT (°C)", /^-127.0$/],
      ["spike", "line 73, column oil (°C)", /^\+8.\d K and back -8.\d K$/],
      ["spike", "lines 183-184, column CHT (°C)", /^-25.\d K and back 2[45].\d K$/],
    ],
  },
  "bad/stuck.csv": {
    findings: [["stuck", "lines 204-422, column CHT (°C)", /^the same reading for 219 min$/]],
  },
  "bad/rows.csv": {
    findings: [
      ["bad-value", "line 35", /^3$/],
      ["bad-value", "line 39", /"/],
      ["bad-time", "line 36", /^2026-01-18 at 18:31:00Z$/],
      ["out-of-order", "line 26", /moved/],
      ["duplicate", "line 9", /the same row again/],
      ["duplicate", "line 13", /other values/],
      ["gap", "lines 64-65", /^none for 51 min$/],
      ["bad-value", "line 37, column oil (°C)", /^warm$/],
      ["bad-value", "line 38, column CHT (°C)", /^999.9$/],
    ],
  },
  "bad/clock-back.csv": {
    options: { zone: "Europe/Oslo" },
    findings: [
      ["ambiguous-time", "lines 123-182", /taken as 2026-10-25T02:00\+02:00$/],
      ["ambiguous-time", "lines 183-242", /taken as 2026-10-25T02:00\+01:00$/],
    ],
  },
  "bad/no-zone.csv": { options: { zone: "Europe/Oslo" }, findings: [] },
  "bad/dates-both-ways.csv": {
    options: { zone: "Europe/Oslo", dateOrder: "day-first" },
    findings: [["duplicate", "lines 4-5", /other values/]],
  },
  "bad/unknown-columns.csv": { findings: [] },
};

describe("examples", () => {
  test("each is in the table or among those refused", () => {
    const files = readdirSync("examples/logs", { recursive: true })
      .map(String)
      .filter((f) => f.endsWith(".csv"));
    expect(files.sort()).toEqual([...Object.keys(EXAMPLES), "bad/two-units.csv"].sort());
    for (const file of ["bad/two-units.csv", "bad/no-zone.csv", "bad/dates-both-ways.csv"])
      expect(refusal(readFileSync(`examples/logs/${file}`, "utf8")).length).toBeGreaterThan(0);
  });

  test.each(Object.entries(EXAMPLES))("%s", (file, { options, findings }) => {
    const { log } = read(readFileSync(`examples/logs/${file}`, "utf8"), { name: file, ...options });
    expect(log.origin).toMatch(new RegExp(`^file ${file}, lines \\d+-\\d+$`));
    expect(log.findings.map(({ kind, place }) => [kind, place])).toEqual(
      findings.map(([kind, place]) => [kind, place]),
    );
    log.findings.forEach(({ received }, i) => {
      expect(received).toMatch(findings[i][2]);
    });
  });

  test("what the pad does in its first minutes is no spike: it is all there", () => {
    const { log } = read(readFileSync("examples/logs/marten-ramp.csv", "utf8"), { zone: "Etc/GMT-1" });
    const pad = log.probes.find(({ name }) => name === "Pad surface")?.temps ?? new Float64Array();
    expect(pad.every(Number.isFinite)).toBe(true);
    const steepest = Math.max(...pad.subarray(1).map((temp, i) => temp - pad[i]));
    expect(steepest).toBeGreaterThan(20);
  });
});
