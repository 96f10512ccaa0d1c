import { expect, test } from "vitest";
import { overridden } from "../../src/documents/index.js";
import { EXAMPLE } from "./example-document.js";

const HEATERS = ["sump-pad-220"];

test("nothing asked for, nothing changed", () => {
  expect(overridden(JSON.stringify(EXAMPLE), {})).toEqual(EXAMPLE);
});

test("without cover: none fitted and none put on later, other events stay", () => {
  const move = { at_h: 3, do: "move", to: "hangar" };
  const events = [{ at_h: 1, do: "cover_on", covers: ["insulated-cover"] }, move];
  expect(overridden({ ...EXAMPLE, events }, { withoutCover: true })).toEqual({
    ...EXAMPLE,
    fitted: { covers: [] },
    events: [move],
  });
});

test("other heaters: the kit's only ones, off at the start, all of them used", () => {
  const document = {
    ...EXAMPLE,
    plugged_in: ["whole-engine-4"],
    want: { ...EXAMPLE.want, heaters: ["whole-engine-4"] },
  };
  expect(overridden(document, { heaters: HEATERS })).toEqual({
    ...EXAMPLE,
    kit: { ...EXAMPLE.kit, heaters: HEATERS },
    plugged_in: [],
  });
});

test("wish and ensemble change by key", () => {
  expect(overridden(EXAMPLE, { departure: "11:00", chance: 0.95, members: 100, seed: 2 })).toEqual({
    ...EXAMPLE,
    want: { ...EXAMPLE.want, departure: "11:00", chance: 0.95 },
    ensemble: { members: 100, seed: 2 },
  });
});

test("an engine temperature takes the place of single readings", () => {
  const document = { ...EXAMPLE, initial: { oil_c: 10, all_c: 0, uncertainty_k: 4 } };
  expect(overridden(document, { engine_c: -31.5 })).toEqual({
    ...EXAMPLE,
    initial: { all_c: -31.5, uncertainty_k: 4 },
  });
});

test("reports replace the weather, and one report only its like", () => {
  expect(overridden(EXAMPLE, { taf: "TAF A" })).toEqual({ ...EXAMPLE, weather: { taf: "TAF A" } });
  const reports = { ...EXAMPLE, weather: { metar: "METAR A", taf: "TAF A" } };
  expect(overridden(reports, { taf: "TAF B" })).toEqual({
    ...EXAMPLE,
    weather: { metar: "METAR A", taf: "TAF B" },
  });
});

test("what is no document is left for the reader to refuse", () => {
  expect(overridden("{", { chance: 0.5 })).toBe("{");
  expect(overridden(7, { chance: 0.5 })).toBe(7);
});
