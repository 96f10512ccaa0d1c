import { coverById, heaterById, installationById } from "../../src/aircraft/index.js";
import type { ValidationCase, ValidationGroup } from "./case.js";
import { HOUR, play } from "./heating-runs.js";

/** Heating runs on a four-cylinder aircraft with a pad of about 220 W under the sump. */
const installation = installationById("four-carburettor-160");
const pad = heaterById("sump-pad-220");
const quilt = coverById("improvised-quilt");
const PAD = "heater:sump-pad-220:pad";
const plugIn = { at: 0, change: { do: "plug-in" as const, heaters: [pad.id] } };
const coverOn = (at: number) => ({ at, change: { do: "cover-on" as const, covers: [quilt.id] } });
const common = { installation, heaters: [pad], covers: [quilt], wind: 1 };

const hangar = play(
  {
    ...common,
    place: "hangar",
    air: 8.5,
    initial: { oil: 9.4, sump: 9, heads_front: 6, heads_rear: 6, battery: 6, others: 7 },
    events: [plugIn, coverOn(5 * HOUR)],
  },
  [3 * HOUR, 5 * HOUR, 17 * HOUR],
);
const ramp = play(
  { ...common, place: "ramp", air: -23, initial: { others: -23 }, events: [plugIn, coverOn(0)] },
  [600, 0.5 * HOUR, 2 * HOUR, 4 * HOUR, 9 * HOUR],
);

const heads = (t: Readonly<Record<string, number>>) => (t.heads_front + t.heads_rear) / 2;

function reading(name: string, expected: number, got: number, tolerance = 4): ValidationCase {
  return {
    name,
    source: "heating runs, readings to about ±2 K and ±10 min",
    mark: "common practice, no published source",
    unit: "°C",
    expected,
    tolerance,
    toleranceReason:
      tolerance === 4 ? "twice the reading error" : "pad temperature differs by tens of kelvin over its area",
    isCalibration: true,
    got: () => got,
  };
}

export const PRACTICE: ValidationGroup = {
  title: "heating runs with a 220 W sump pad, which the contacts were fitted to",
  part: "engine",
  cases: [
    reading("closed hangar 7-10 °C, no cover, 3 h: oil", 54, hangar[0].oil),
    reading("closed hangar, 3 h: heads", 15.5, heads(hangar[0])),
    reading("closed hangar, 5 h: oil", 55.5, hangar[1].oil),
    reading("closed hangar, 5 h: heads", 18.3, heads(hangar[1])),
    reading("closed hangar, 5 h: battery", 10.5, hangar[1].battery),
    reading("then quilt on and inlets blocked, settled: heads", 29, heads(hangar[2])),
    reading("then quilt on, settled: oil", 61, hangar[2].oil),
    reading("then quilt on, settled: pad", 230, hangar[2][PAD], 40),
    reading("ramp -23 °C, loose quilts, 0.5 h: oil", -1, ramp[1].oil),
    reading("ramp -23 °C, 2 h: oil", 28, ramp[2].oil),
    reading("ramp -23 °C, 4 h: oil", 34, ramp[3].oil),
    reading("ramp -23 °C, 4 h: heads", -7, heads(ramp[3])),
    reading("ramp -23 °C, 4 h: battery", -17, ramp[3].battery),
    reading("ramp -23 °C, 9 h: oil", 34, ramp[4].oil),
    reading("ramp -23 °C, 9 h: heads", -7, heads(ramp[4])),
    reading("ramp -23 °C, 9 h: battery", -17, ramp[4].battery),
    {
      ...reading("ramp -23 °C, 10 min: pad above 150 °C", 190, ramp[0][PAD], 40),
      toleranceReason:
        "the reading says only 'above 150'; below 230 because that is the settled value in a warm hangar",
    },
  ],
};
