import { describe, expect, test } from "vitest";
import { csvOf, findingsOf, noisy, warming } from "./log-files.js";

const MINUTES = 400;
const air = noisy(MINUTES, (m) => -24 + Math.sin(m / 90), 2);
const oil = noisy(MINUTES, warming(-23, 60, 80), 3);
const heads = noisy(MINUTES, warming(-23, 12, 150), 4);
const log = (change: Readonly<Record<string, readonly (number | string)[]>> = {}) =>
  csvOf({ oil_c: oil, CHT_c: heads, OAT_c: air, ...change });
const replaced = (values: readonly number[], change: Readonly<Record<number, number | string>>) =>
  values.map((value, k) => change[k] ?? value);

describe("nothing is found in what heaters and weather do", () => {
  test("a night with a pad", () => {
    expect(findingsOf(log())).toEqual([]);
  });

  test.each([
    [
      "pad surface, 1 K/s for two minutes",
      { pad_c: noisy(MINUTES, (m) => Math.min(Math.max(60 * (m - 59), 0), 120) - 22, 5) },
    ],
    [
      "pad switched by a thermostat, 50 K up and down each minute",
      { pad_c: noisy(MINUTES, (m) => (m < 60 ? -22 : 60 + (m % 2) * 50), 5) },
    ],
    [
      "pad unplugged over warm oil",
      { pad_c: noisy(MINUTES, (m) => (m < 200 ? 150 : 20 + 130 * Math.exp(-(m - 200) / 3)), 5) },
    ],
    ["oil at 0.05 K/s", { oil_c: noisy(MINUTES, (m) => -23 + Math.min(Math.max(m - 60, 0) * 3, 80), 5) }],
    [
      "door of a hangar, open for two minutes",
      { hangar_c: noisy(MINUTES, (m) => (m === 90 || m === 91 ? -4 : 8), 5) },
    ],
    ["pulled out of the hangar", { OAT_c: noisy(MINUTES, (m) => (m < 200 ? 8 : -24), 5) }],
    [
      "pulled into the hangar: the excess over the air shrinks at once",
      { OAT_c: noisy(MINUTES, (m) => (m < 350 ? -24 : 12), 5) },
    ],
    ["ducted air into the cowl", { cowl_c: noisy(MINUTES, (m) => (m < 60 ? -24 : 70), 5) }],
    [
      "heads just shut down, cooling by 0.06 K/s",
      { CHT_c: noisy(MINUTES, (m) => -24 + 174 * Math.exp(-m / 40), 5) },
    ],
    ["a noisy thermocouple", { CHT_c: noisy(MINUTES, warming(-23, 12, 150), 4, 1.5) }],
    ["whole degrees, settled for hours", { oil_c: oil.map((t) => String(Math.round(t > 36 ? 37 : t))) }],
    [
      "a sensor that truly passes 85 °C",
      {
        oil_c: noisy(MINUTES, warming(-23, 120, 80), 3, 0)
          .map((t, k) => (k === 240 ? 85 : t))
          .map((t, k) => (k > 230 && k < 250 ? 84.6 + (k - 230) * 0.04 : t)),
      },
    ],
  ])("%s", (_, change) => {
    const kinds = findingsOf(log(change)).filter(([, , rejected]) => rejected);
    expect(kinds).toEqual([]);
  });

  test("a head that warms and cools as quickly as running an engine makes it", () => {
    const run = noisy(MINUTES, (m) =>
      m < 100 ? -23 : m < 112 ? -23 + 11 * (m - 100) : -23 + 132 * Math.exp(-(m - 112) / 45),
    );
    expect(findingsOf(log({ CHT_c: run }))).toEqual([]);
  });
});

describe("spikes", () => {
  test.each([
    ["one up", { 120: 40 }, "line 122"],
    ["one down", { 120: -60 }, "line 122"],
    ["three in a row", { 200: 90, 201: 91, 202: 88 }, "lines 202-204"],
    ["the second reading", { 1: -10 }, "line 3"],
  ])("%s", (_, change, place) => {
    expect(findingsOf(log({ oil_c: replaced(oil, change) }))).toEqual([
      ["spike", `${place}, column oil_c`, true],
    ]);
  });

  test("four in a row are no spike any more but a probe that was out", () => {
    const out = replaced(oil, { 300: -24, 301: -24, 302: -24, 303: -24 });
    expect(findingsOf(log({ oil_c: out }))).toEqual([["fell-out", "lines 302-305, column oil_c", true]]);
  });

  test("beside an empty cell", () => {
    const change = replaced(oil, { 119: "", 120: 70 });
    expect(findingsOf(log({ oil_c: change })).map(([kind, place]) => [kind, place])).toEqual([
      ["no-value-in-cold", "line 121, column oil_c"],
      ["spike", "line 122, column oil_c"],
    ]);
  });
});

describe("stuck", () => {
  const still = (from: number, to: number, values: readonly number[]) =>
    values.map((value, k) => (k > from && k < to ? values[from] : value));

  test("a fine probe that keeps still while the oil warms is left out after its first reading", () => {
    expect(findingsOf(log({ CHT_c: still(80, 160, heads) }))).toEqual([
      ["stuck", "lines 83-161, column CHT_c", true],
    ]);
  });

  test("short of half an hour, or while nothing moves, it is nothing", () => {
    expect(findingsOf(log({ CHT_c: still(80, 108, heads) }))).toEqual([]);
    expect(findingsOf(log({ CHT_c: still(5, 55, heads) }))).toEqual([]);
  });

  test("coarse or settled, it is kept with doubt", () => {
    const whole = heads.map((t) => Math.round(t));
    expect(
      findingsOf(
        log({
          CHT_c: whole.map((t, k) => (k > 200 ? whole[200] : t)),
          oil_c: oil.map((t, k) => (k > 390 ? 44 : t)),
        }),
      ).filter(([, , rejected]) => rejected),
    ).toEqual([]);
    const never = heads.map(() => -23);
    expect(findingsOf(log({ CHT_c: never }))).toEqual([["stuck", "lines 2-401, column CHT_c", false]]);
  });
});

describe("fell out", () => {
  /** Out at minute `at`, in the air with a lag [min]; back at `back`. */
  const outAt = (at: number, lag: number, back = MINUTES) =>
    oil.map((value, k) =>
      k < at || k >= back ? value : air[k] + (oil[at - 1] - air[k]) * Math.exp(-(k - at + 1) / lag),
    );

  test.each([1, 2, 4])("a probe of %i min in the air, to the end of the log", (lag) => {
    expect(findingsOf(log({ oil_c: outAt(250, lag) }))).toEqual([
      ["fell-out", "lines 252-401, column oil_c", true],
    ]);
  });

  test("put back, it is believed again", () => {
    const [finding] = findingsOf(log({ oil_c: outAt(200, 2, 300) }));
    expect(finding).toEqual(["fell-out", "lines 202-301, column oil_c", true]);
  });

  test("readings ten minutes apart", () => {
    const every = (values: readonly number[]) => values.filter((_, k) => k % 10 === 0);
    const text = csvOf({ oil_c: every(outAt(250, 2)), OAT_c: every(air) }, 600);
    expect(findingsOf(text)).toEqual([["fell-out", "lines 27-41, column oil_c", true]]);
  });

  test("out in the air of a warm hangar, off a cold engine", () => {
    const cold = noisy(MINUTES, (m) => -20 + m / 40, 7);
    const out = cold.map((value, k) => (k < 100 ? value : 12 - 30 * Math.exp(-(k - 99) / 2)));
    const hangar = noisy(MINUTES, () => 12, 8);
    expect(findingsOf(csvOf({ oil_c: out, hangar_c: hangar }))).toEqual([
      ["fell-out", "lines 102-401, column oil_c", true],
    ]);
  });

  test("a cold engine heated quickly past the air is not out", () => {
    const hot = noisy(MINUTES, (m) => -20 + Math.min(Math.max(m - 60, 0) * 3, 60), 7);
    expect(findingsOf(csvOf({ oil_c: hot, hangar_c: noisy(MINUTES, () => 12, 8) }))).toEqual([]);
  });

  test("without a probe in the air it is kept with doubt", () => {
    expect(findingsOf(csvOf({ oil_c: outAt(250, 2), CHT_c: heads }))).toEqual([
      ["fell-out", "lines 252-401, column oil_c", false],
    ]);
    expect(findingsOf(csvOf({ oil_c: outAt(250, 2) }))).toEqual([
      ["fell-out", "lines 252-401, column oil_c", false],
    ]);
  });

  test("off the pad: only where a part is warm", () => {
    const pad = (end: number) =>
      noisy(MINUTES, (m) => (m < 300 ? 150 : end + (150 - end) * Math.exp(-(m - 299) / 2)), 9);
    expect(findingsOf(log({ pad_c: pad(-24.5) }))).toEqual([
      ["fell-out", "lines 302-401, column pad_c", true],
    ]);
    expect(findingsOf(log({ pad_c: pad(30) }))).toEqual([]);
  });
});

describe("no value", () => {
  const warmAir = noisy(MINUTES, () => 2, 12);
  const warm = noisy(MINUTES, () => 4, 11);

  test.each(["---", "nan", "Err", "OL", "", "-55.0", "-127", "n/a", "NO PROBE"])(
    "%j in deep cold",
    (cell) => {
      const change = replaced(heads, { 10: cell, 11: cell, 12: cell });
      expect(findingsOf(log({ CHT_c: change }))).toEqual([
        ["no-value-in-cold", "lines 12-14, column CHT_c", true],
      ]);
    },
  );

  test("the same where it is not cold", () => {
    const text = (cell: string) => csvOf({ oil_c: replaced(warm, { 10: cell }), OAT_c: warmAir });
    expect(findingsOf(text("---"))).toEqual([["bad-value", "line 12, column oil_c", true]]);
    expect(findingsOf(text("-127.0"))).toEqual([["bad-value", "line 12, column oil_c", true]]);
    expect(findingsOf(text(""))).toEqual([["gap", "line 12, column oil_c", true]]);
    expect(findingsOf(text("85.0"))).toEqual([["bad-value", "line 12, column oil_c", true]]);
  });

  test("in °F", () => {
    const f = (values: readonly number[]) => values.map((c) => (c * 9) / 5 + 32);
    const text = csvOf({
      oil_f: replaced(f(warm), { 10: "-196.6", 20: "185.0", 30: "-67.0" }),
      OAT_f: f(warmAir),
    });
    expect(findingsOf(text).map(([kind, place]) => [kind, place])).toEqual([
      ["bad-value", "line 12, column oil_f"],
      ["bad-value", "line 22, column oil_f"],
      ["bad-value", "line 32, column oil_f"],
    ]);
  });

  test("power-on at the very start", () => {
    expect(findingsOf(log({ oil_c: replaced(oil, { 0: "85.0" }) }))).toEqual([
      ["no-value-in-cold", "line 2, column oil_c", true],
    ]);
  });

  test("a probe that is asked only every third minute is told of once", () => {
    const third = warm.map((value, k) => (k % 3 === 0 ? value : ""));
    const findings = findingsOf(csvOf({ oil_c: third, OAT_c: warmAir }));
    expect(findings).toHaveLength(1);
    expect(findings[0][1]).toMatch(/^lines 3-4, 6-7, .* column oil_c$/);
  });
});
