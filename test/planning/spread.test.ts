import { describe, expect, test } from "vitest";
import { decisiveCarriers, firstCarriers, spreadOver } from "../../src/planning/spread.js";

const MEMBERS = 50;
const old = Float64Array.from({ length: 2 * MEMBERS }, (_, k) => 260 + ((k * 7) % 23));

describe("spreadOver", () => {
  test.each([
    ["first", firstCarriers(8, MEMBERS)],
    ["decisive", decisiveCarriers(8, old.subarray(0, MEMBERS), 0.9)],
  ])("carries a linear change over exactly: %s carriers", (_, carriers) => {
    const change = (temp: number) => 0.7 * temp + 60;
    const few = Float64Array.from(
      [0, 1].flatMap((row) => [...carriers.members].map((m) => change(old[row * MEMBERS + m]))),
    );
    const out = new Float64Array(old.length);
    spreadOver(few, old, carriers, out);
    out.forEach((temp, k) => {
      expect(temp).toBeCloseTo(change(old[k]), 9);
    });
  });

  test("the few keep what was played", () => {
    const carriers = firstCarriers(8, MEMBERS);
    const few = Float64Array.from({ length: 16 }, (_, k) => 250 + ((k * 11) % 17));
    const out = new Float64Array(old.length);
    spreadOver(few, old, carriers, out);
    for (let row = 0; row < 2; row++) {
      for (let m = 0; m < 8; m++) expect(out[row * MEMBERS + m]).toBeCloseTo(few[row * 8 + m], 9);
    }
  });
});

describe("decisiveCarriers", () => {
  test("are close to the member on whom the chance hangs, and everybody has the nearest in rank", () => {
    const margins = Float64Array.from({ length: 200 }, (_, m) => (m * 77) % 200);
    const { members, likes } = decisiveCarriers(16, margins, 0.9);
    const ranks = [...members].map((m) => margins[m]);
    expect(new Set(ranks).size).toBe(ranks.length);
    expect(ranks.filter((rank) => Math.abs(rank - 20) <= 8).length).toBeGreaterThanOrEqual(8);
    expect(Math.max(...ranks)).toBeGreaterThan(180);
    margins.forEach((rank, m) => {
      const gap = Math.abs(ranks[likes[m]] - rank);
      expect(gap).toBe(Math.min(...ranks.map((other) => Math.abs(other - rank))));
    });
  });

  test("need not be fewer than the members", () => {
    const { members, likes } = decisiveCarriers(16, Float64Array.of(3, 1, 2), 0.9);
    expect([...members].sort()).toEqual([0, 1, 2]);
    expect([...likes].map((k) => members[k])).toEqual([0, 1, 2]);
  });
});
