import fc from "fast-check";
import { expect, test } from "vitest";
import { leavingReport, nightFrost, thawAndDry } from "../../src/airframe/index.js";
import { readFrostDocument, readThawDocument } from "../../src/documents/index.js";
import { NIGHT, STAY } from "./airframe-documents.js";

// What a document may say, the models must be able to take: bounds of the schema are tried against bounds of the code.

const ends = (low: number, high: number) => fc.constantFrom(low, (low + high) / 2, high);
const bounds = fc.constantFrom;

const site = fc.record({
  roughness_m: ends(0.0001, 1),
  wing_height_m: ends(0.2, 10),
  open_sky_fraction: ends(0, 1),
  elevation_m: bounds(-500, 0, 5000),
});

const fuel = fc.record({ depth_mm: ends(5, 1000), temp_c: ends(-55, 40), full: fc.boolean() });

const panel = fc.record({
  name: fc.constant("p"),
  chord_m: ends(0.05, 10),
  span_m: ends(0.05, 50),
  upper_skin_j_per_m2k: ends(100, 1e5),
  lower_skin_j_per_m2k: ends(100, 1e5),
  emissivity: ends(0, 1),
  inside_j_per_m2k: ends(10, 1e6),
  inside_upper_w_per_m2k: ends(0, 1000),
  inside_lower_w_per_m2k: ends(0, 1000),
  origin: fc.constant("bounds"),
});

const cover = fc.record({
  resistance_m2k_per_w: ends(0.001, 10),
  heat_capacity_j_per_m2k: ends(50, 1e5),
  emissivity: ends(0, 1),
  vapour_leak: ends(0, 1),
  origin: fc.constant("bounds"),
});

const night = fc
  .record({ site, fuel, panel, cover, skin_c: ends(-60, 40), air: ends(-60, 50), below: bounds(0, 5, 50) })
  .map(({ air, below, ...sections }) => ({
    ...NIGHT,
    ...sections,
    hours: 1,
    weather: {
      points: [0, 1].map((at_h) => ({
        at_h,
        air_c: air,
        wind_mps: at_h * 60,
        dew_point_c: Math.min(45, Math.max(-80, air - below)),
        cloud_fraction: at_h,
      })),
    },
  }));

test("every frost document within the bounds can be calculated", () => {
  fc.assert(
    fc.property(night, (document) => {
      const reading = readFrostDocument(document);
      if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
      const { ensemble: _, ...middle } = reading.request;
      expect(nightFrost(middle).status).toBe("completed");
    }),
    { numRuns: 60, seed: 5 },
  );
});

const stay = fc
  .record({
    site,
    fuel,
    area_m2: ends(0.5, 1000),
    temp_c: ends(-60, 0),
    snow: fc.record({ kind: bounds("new", "settled", "wet", "ice"), depth_mm: bounds(0, 20, 500) }),
    film: bounds("dripping", "wiped"),
    gap: fc.record({
      depth_mm: ends(0.5, 100),
      width_mm: ends(0.01, 5),
      filled_fraction: ends(0, 1),
      length_m: ends(0, 1000),
    }),
    hangar: fc.record({
      length_m: ends(3, 200),
      width_m: ends(3, 200),
      height_m: ends(2, 25),
      insulated: fc.boolean(),
      set_c: ends(-30, 40),
      heater_kw: ends(0, 1000),
      unflued_burner: fc.boolean(),
      air_changes_per_h: ends(0, 60),
      fan_mps: ends(0, 15),
      floor_swept: fc.boolean(),
      humidity_percent: ends(0, 100),
    }),
    air: ends(-60, 45),
    leaving: fc.record({
      at_h: ends(0, 1),
      outside_min: bounds(0, 20, 1440),
      falling: bounds("nothing", "snow", "rain"),
      air_c: ends(-60, 50),
      wind_mps: ends(0, 80),
      cloud_fraction: ends(0, 1),
      cruise_ft: bounds(16_500, 29_527),
      climb_fpm: ends(40, 3937),
      airspeed_kt: ends(20, 291),
      sounding: bounds(
        [{ altitude_ft: -1640, air_c: -80 }],
        [
          { altitude_m: 5100, air_c: 50 },
          { altitude_m: 20_000, air_c: -80 },
        ],
      ),
    }),
  })
  .map(({ air, area_m2, temp_c, leaving, ...sections }) => ({
    ...STAY,
    ...sections,
    hours: 1,
    aircraft: { area_m2, temp_c },
    outside: { air_c: air, dew_point_c: air },
    roll_out: leaving,
  }));

test("every thaw document within the bounds can be calculated, and so can its roll-out", () => {
  fc.assert(
    fc.property(stay, (document) => {
      const reading = readThawDocument(document);
      if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
      const { ensemble: _, ...middle } = reading.request;
      const { status, result } = thawAndDry(middle);
      expect(status).toBe("completed");
      if (result === undefined || reading.rollOut === undefined) throw new Error("missing result");
      const report = leavingReport({ ...reading, request: middle }, reading.rollOut, result);
      expect(report).not.toHaveProperty("remedy");
    }),
    { numRuns: 40, seed: 5 },
  );
});
