import { describe, expect, test } from "vitest";
import { frostOutlookSchema } from "../../src/documents/index.js";
import { frostFromDocument } from "../../src/questions/index.js";
import { english } from "../../src/words/index.js";
import { completed, NIGHT, STAY } from "./airframe-documents.js";

describe("a frost outlook", () => {
  const outlook = completed(frostFromDocument(NIGHT));
  const covered = completed(frostFromDocument({ ...NIGHT, cover: "coated" }));

  test("is a document of its schema, also after a way through JSON", () => {
    for (const document of [outlook, covered])
      expect(frostOutlookSchema.parse(JSON.parse(JSON.stringify(document)))).toEqual(document);
  });

  test("tells of a clear calm night: frost, when, how long, on the document's clock", () => {
    const { upper, departure, start } = outlook;
    expect(start).toEqual({ at_h: 0, time: "2026-01-14T18:00+01:00" });
    expect(departure).toEqual({ at_h: 12, time: "2026-01-15T06:00+01:00" });
    expect(upper.verdict).toBe("likely");
    expect(upper.chance).toBe(upper.first.share);
    const first = upper.first.p50;
    if (first === null) throw new Error("missing first frost");
    expect(first.at_h).toBeGreaterThan(0);
    expect(first.at_h + upper.hours.p50).toBeCloseTo(12, 0);
    expect(Date.parse(first.time) - Date.parse(start.time)).toBeCloseTo(first.at_h * 3.6e6, -5);
    expect(outlook.members).toBe(20);
  });

  test("tries a cover where there is none, and takes off the one there is; both see the same night", () => {
    expect(outlook.other.cover).toBe("coated");
    expect(covered.other.cover).toBeNull();
    expect(covered.upper).toEqual(outlook.other.upper);
    expect(covered.other.upper).toEqual(outlook.upper);
    expect(covered.upper.most_frost_kg_per_m2.p50).toBeLessThan(outlook.upper.most_frost_kg_per_m2.p50);
    expect(outlook.course.cover_frost_kg_per_m2).toBeNull();
    expect(covered.course.cover_frost_kg_per_m2?.p50.at(-1)).toBeGreaterThan(0);
  });

  test("shows the night over time: ordered bands, the skin below air and frost point while frost grows", () => {
    const { time_h, ...series } = outlook.course;
    expect(time_h[0]).toBe(0);
    expect(time_h.at(-1)).toBe(12);
    for (const band of Object.values(series)) {
      if (band === null) continue;
      expect(band.p50.length).toBe(time_h.length);
      band.p50.forEach((middle, s) => {
        expect(band.p05[s]).toBeLessThanOrEqual(middle);
        expect(middle).toBeLessThanOrEqual(band.p95[s]);
      });
    }
    const end = time_h.length - 1;
    expect(series.upper_c.p50[end]).toBeLessThan(series.frost_point_c.p50[end]);
    expect(series.upper_frost_kg_per_m2.p50[end]).toBeCloseTo(
      outlook.upper.frost_at_departure_kg_per_m2.p50,
      3,
    );
  });

  test("cautions even where no frost is expected", () => {
    const points = NIGHT.weather.points?.map((p) => ({
      ...p,
      dew_point_c: -25,
      cloud_fraction: 1,
      wind_mps: 6,
    }));
    const dry = completed(frostFromDocument({ ...NIGHT, weather: { points } }));
    expect(dry.upper.verdict).toBe("none");
    expect(dry.cautions.map(english).join("\n")).toMatch(/A forecast is no inspection/);
    expect(dry.cautions.every(({ source }) => source !== "")).toBe(true);
  });

  test("what-ifs take the place of what the document says", () => {
    const { departure, members } = completed(
      frostFromDocument(NIGHT, { overrides: { departure: "04:00", members: 25 } }),
    );
    expect(departure.time).toBe("2026-01-15T04:00+01:00");
    expect(members).toBe(25);
  });

  test("the same seed gives the same night, another seed another", () => {
    expect(completed(frostFromDocument(NIGHT))).toEqual(outlook);
    const other = completed(frostFromDocument(NIGHT, { overrides: { seed: 2 } }));
    expect(other.upper.first).not.toEqual(outlook.upper.first);
  });
});

test("frost stops when told to, before either of its nights", () => {
  for (const last of [0, 0.5]) {
    const onProgress = (done = 0) => done < last;
    expect(frostFromDocument(NIGHT, { onProgress }).status).toBe("cancelled");
  }
});

test("a document of another kind is refused by that alone", () => {
  expect(frostFromDocument(STAY)).toEqual({
    status: "refused",
    issues: [{ path: "kind", expected: '"frost"', received: '"thaw"' }],
  });
});
