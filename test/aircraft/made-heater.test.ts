import { expect, test } from "vitest";
import { type Heater, heaterById, installationById } from "../../src/aircraft/index.js";
import { heaterSchema } from "../../src/documents/index.js";
import { play } from "../validation/heating-runs.js";

/** A kind that the catalogue does not have: one record is all it takes. */
const MADE: Heater = {
  ...heaterById("sump-pad-100"),
  id: "made-crankcase-band-150",
  name: "made crankcase band, 150 W",
  elements: [
    {
      name: "band",
      power_w: 150,
      target: "crankcase",
      contact_w_per_k: 3,
      back_w_per_k: 0.1,
      heat_capacity_j_per_k: 200,
      area_cm2: 120,
      surface_max_c: 200,
    },
  ],
  origins: { "": "made for this test" },
};

test("a made heater is a record: documents take it and it heats what it sits on", () => {
  expect(heaterSchema.parse(MADE)).toEqual(MADE);
  const [cold, warm] = play(
    {
      installation: installationById("four-carburettor-160"),
      heaters: [MADE],
      covers: [],
      wind: 1,
      place: "hangar",
      air: -10,
      initial: { others: -10 },
      events: [{ at: 0, change: { do: "plug-in", heaters: [MADE.id] } }],
    },
    [0, 4 * 3600],
  );
  expect(cold.crankcase).toBeCloseTo(-10, 1);
  expect(warm.crankcase).toBeGreaterThan(0);
  expect(warm["heater:made-crankcase-band-150:band"]).toBeGreaterThan(warm.crankcase);
});
