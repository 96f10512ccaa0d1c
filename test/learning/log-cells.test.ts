import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { readTemperatureLog } from "../../src/learning/index.js";
import type { LogReading } from "../../src/learning/log-options.js";
import { START } from "./log-files.js";

interface MadeRow {
  /** Minute of its time; undefined: a time that is none. */
  readonly minute: number | undefined;
  readonly cells: readonly string[];
  /** How many of its cells are written. */
  readonly written: number;
}

const COLUMNS = ["oil_c", "CHT_c", "OAT_c"];

const cell = fc.oneof(
  { weight: 12, arbitrary: fc.integer({ min: -400, max: 900 }).map((tenths) => (tenths / 10).toFixed(1)) },
  { weight: 6, arbitrary: fc.constantFrom("-22.3", "-22.4", "-22.3") },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      "",
      "---",
      "nan",
      "85.0",
      "-55.0",
      "-127",
      "999",
      "warm",
      "-12,5",
      "1e3",
      "-22 °C",
    ),
  },
);
const row: fc.Arbitrary<MadeRow> = fc.record({
  minute: fc.oneof({ weight: 12, arbitrary: fc.nat(300) }, { weight: 1, arbitrary: fc.constant(undefined) }),
  cells: fc.array(cell, { minLength: 3, maxLength: 3 }),
  written: fc.oneof({ weight: 20, arbitrary: fc.constant(3) }, { weight: 1, arbitrary: fc.nat(2) }),
});
/** Rows mostly in order, and stretches of them that stand still or have no value. */
const rows = fc
  .array(row, { minLength: 1, maxLength: 120 })
  .chain((made) =>
    fc
      .boolean()
      .map((sorted) => (sorted ? [...made].sort((a, b) => (a.minute ?? 0) - (b.minute ?? 0)) : made)),
  );

test("law: every cell is in the log as it stands in the file, or in a finding that rejects it, and never in both", () => {
  const kinds = new Set<string>();
  fc.assert(
    fc.property(rows, (made) => {
      const lines = made.map(({ minute, cells, written }) => {
        const time = minute === undefined ? "noon" : new Date((START + minute * 60) * 1000).toISOString();
        return [time, ...cells.slice(0, written)]
          .map((text) => (text.includes(",") ? `"${text}"` : text))
          .join(",");
      });
      const reading = readTemperatureLog([["time", ...COLUMNS].join(","), ...lines].join("\n"));
      if (!reading.ok) {
        expect(made.every(({ minute, written }) => minute === undefined || written < 3)).toBe(true);
        return;
      }
      const rejected = rejectedCells(reading);
      for (const { kind } of reading.log.findings) kinds.add(kind);
      const firstOf = new Map<number, number>();
      made.forEach(({ minute, written }, i) => {
        if (minute !== undefined && written === 3 && !firstOf.has(minute)) firstOf.set(minute, i);
      });
      let accepted = 0;
      made.forEach(({ minute, cells }, i) => {
        COLUMNS.forEach((name, p) => {
          const k =
            minute === undefined || firstOf.get(minute) !== i
              ? -1
              : reading.log.time.indexOf(START + minute * 60);
          const temp = k < 0 ? Number.NaN : reading.log.probes[p].temps[k];
          const isIn = !Number.isNaN(temp);
          if (isIn) {
            accepted++;
            expect(temp - 273.15).toBeCloseTo(Number.parseFloat(cells[p].replace(",", ".")), 9);
          }
          expect(rejected.has(`${i + 2} ${name}`), `line ${i + 2}, column ${name}: ${cells[p]}`).toBe(!isIn);
        });
      });
      const inLog = reading.log.probes.reduce(
        (sum, { temps }) => sum + temps.filter((t) => !Number.isNaN(t)).length,
        0,
      );
      expect(accepted).toBe(inLog);
      expect(accepted + rejected.size).toBe(3 * made.length);
    }),
    { numRuns: 300, seed: 4 },
  );
  // A clock that goes back and a probe that stands still are too rare to come by chance (log-times, log-doubts).
  const met = [
    "bad-time",
    "bad-value",
    "duplicate",
    "fell-out",
    "gap",
    "no-value-in-cold",
    "out-of-order",
    "spike",
  ];
  expect([...kinds].sort()).toEqual(met);
});

/** "line column" of every cell that findings reject. */
function rejectedCells(reading: LogReading & { readonly ok: true }): ReadonlySet<string> {
  const cells = new Set<string>();
  for (const { place, rejected } of reading.log.findings) {
    const match = /^lines? ([\d, -]+?)(?:, column (.*))?$/.exec(place);
    expect(match, place).not.toBeNull();
    if (!rejected || match === null) continue;
    for (const range of match[1].split(", ")) {
      const [first, last = first] = range.split("-").map(Number);
      for (let line = first; line <= last; line++) {
        for (const column of match[2] === undefined ? COLUMNS : [match[2]]) cells.add(`${line} ${column}`);
      }
    }
  }
  return cells;
}

const FILES = ["rows", "clock-back", "spikes", "unknown-columns"].map((file) =>
  readFileSync(`examples/logs/bad/${file}.csv`, "utf8").split("\n").slice(0, 60).join("\n"),
);
FILES.push(readFileSync("examples/logs/marten-ramp.csv", "utf8").split("\n").slice(0, 40).join("\n"));

test("damaged files are read soundly or refused with a reason, never thrown at", () => {
  const damage = fc.record({
    at: fc.nat({ max: 5000 }),
    put: fc.oneof(
      fc.constantFrom(
        "",
        "/",
        "-",
        ",",
        ";",
        "\t",
        "\n",
        "\r",
        '"',
        "T",
        "Z",
        " ",
        "#",
        "\ufeff",
        "°F",
        "9999999999999",
      ),
      fc.string({ maxLength: 3 }),
    ),
  });
  let read = 0;
  fc.assert(
    fc.property(fc.constantFrom(...FILES), fc.array(damage, { maxLength: 12 }), (text, edits) => {
      const broken = edits.reduce((out, { at, put }) => {
        const place = at % (out.length + 1);
        return out.slice(0, place) + put + out.slice(place + 1);
      }, text);
      const reading = readTemperatureLog(broken, { zone: "Europe/Oslo" });
      if (!reading.ok) {
        expect(reading.issues.length).toBeGreaterThan(0);
        for (const { place, expected } of reading.issues) expect(place !== "" && expected !== "").toBe(true);
        return;
      }
      read++;
      const { time, probes } = reading.log;
      for (let k = 1; k < time.length; k++) expect(time[k]).toBeGreaterThan(time[k - 1]);
      for (const { temps } of probes) {
        expect(temps).toHaveLength(time.length);
        for (const temp of temps) expect(Number.isNaN(temp) || (temp > 183 && temp < 674)).toBe(true);
      }
    }),
    { numRuns: 300 },
  );
  expect(read).toBeGreaterThan(50);
});
