import type { PlanDocument } from "../../src/documents/index.js";
import { finding } from "../../src/findings/index.js";
import type { AircraftView } from "../../src/web/worker/protocol.js";

/** A plan as a document has it, and the aircraft it is for: what screens are given, made by hand. */
export const NOW = Date.UTC(2026, 0, 14, 20);
const HOUR = 3_600_000;
const START = NOW + 14 * HOUR;

export function stamp(at: number): PlanDocument["departure"] {
  return { at_h: (at - NOW) / HOUR, time: new Date(at).toISOString() };
}

export const AIRCRAFT: AircraftView = {
  ...{ id: "wren", name: "Wren", engine: "four", cylinders: 4, hasCoolant: false },
  ...{ place: "ramp", running: false, heatersOn: [], coversOn: [], chance: 0.9 },
  heaters: [
    {
      ...{
        id: "pad",
        name: "sump pad",
        powerW: 230,
        electric: true,
        attended: false,
        basis: { kind: "estimated" },
        longestOnH: 24,
      },
      ...{ cylinders: undefined, cautions: [] },
    },
    {
      ...{
        id: "burner",
        name: "burner",
        powerW: 12_000,
        electric: false,
        attended: true,
        basis: { kind: "estimated" },
        longestOnH: 2,
      },
      ...{ cylinders: undefined, cautions: [] },
    },
  ],
  covers: [],
  departures: [{ id: "d", departure: START, pulledOut: false, heaters: ["pad"] }],
  ...{ readings: [], faults: [], switches: [] },
  ...{ circuit: undefined, lastStart: undefined, heatingSince: undefined },
};

const CRITERION: PlanDocument["criteria"][number] = {
  ...{ id: "bearings", title: finding("criterion-bearings", {}), unit: "c", direction: "at-least" },
  ...{
    judged: "at-start",
    advisory: false,
    aim: "least",
    limit: -6,
    chance: 0.91,
    reason: finding("criterion-bearings-why", {}),
    source: "s",
  },
  value: { p05: -8, p50: 1, p95: 6 },
  margin: { p05: -2, p50: 7, p95: 12 },
};

const LINE = { reached: true, plug_in: stamp(NOW + 11 * HOUR), chance: 0.91, energy_kwh: 1.2 };
const STAY = { sure_h: 0.2, median_h: 0.5, horizon_h: 12 };

export function aPlan(change: Partial<PlanDocument>): PlanDocument {
  return {
    soakline: 2,
    kind: "plan",
    ...{ name: "Wren", aircraft: { id: "four", name: "four" }, start: stamp(NOW), zone: "UTC", members: 200 },
    ...{ assumptions: [], warnings: [], cautions: [], first_cautions: [] },
    ...{ status: "ready", message: null, look_first: [], aim: "least", heat_needed: true },
    lines: { least: LINE, warm_through: { ...LINE, plug_in: stamp(NOW + 9 * HOUR), energy_kwh: 2.4 } },
    heaters: [
      {
        ...{ id: "pad", name: "sump pad", attended: false, least_on_h: 0.5, longest_on_h: 24 },
        basis: { kind: "measured", runs: 2 },
        ...{ procedure: null, surfaces: [] },
      },
    ],
    ...{ barred: [], heating: null },
    ...{ plug_in: LINE.plug_in, unplug: stamp(START - HOUR / 4), cover_off: stamp(START - HOUR / 6) },
    ...{ departure: stamp(START), start_within_min: 25, wanted_chance: 0.9, chance: 0.91, warm_chance: 0.4 },
    ...{ chance_error: 0.02, weakest: "bearings", criteria: [CRITERION], start_briefing: { notes: [] } },
    too_hot: [],
    window: {
      opens: { sure: stamp(START - HOUR / 6), half: stamp(START - HOUR / 3) },
      closes: { sure: stamp(START + HOUR / 4), half: stamp(START + HOUR) },
    },
    covered_window: null,
    quarter_more: { chance: 0.93, warm_chance: 0.5 },
    stay_warm: { covered: STAY, uncovered: STAY },
    energy_kwh: { p05: 1, p50: 1.2, p95: 1.4 },
    ...{ curve: [], late: [], habits: [], toll: null, remedies: [] },
    happenings: [{ ...stamp(START - HOUR / 6), do: "cover_off", what: "cowl" }],
    course: { time_h: [0, 14, 16], parts: {}, energy_kwh: { p05: [], p50: [], p95: [] } },
    ...change,
  };
}
