import { coverById, installationById } from "../../src/aircraft/index.js";
import type { ValidationGroup } from "./case.js";
import { HOUR, play } from "./heating-runs.js";

/** Cooling after shut-down at -20 °C; time constants read between half an hour and two hours, after the first mixing. */
const installation = installationById("four-carburettor-160");
const warm = { oil: 80, sump: 75, heads_front: 110, heads_rear: 110, others: 65 };
const AIR = -20;
const common = { installation, heaters: [], place: "ramp" as const, air: AIR, initial: warm, events: [] };
const TIMES = [0.5 * HOUR, 1.5 * HOUR];
const plugs = coverById("inlet-plugs");
const plugged = play({ ...common, covers: [plugs], coversOn: [plugs.id], wind: 2 }, TIMES);

/** [h] τ of an exponential through both readings. */
function timeConstant(course: readonly Readonly<Record<string, number>>[], part: string): number {
  return (TIMES[1] - TIMES[0]) / HOUR / Math.log((course[0][part] - AIR) / (course[1][part] - AIR));
}

const SHARED = {
  source: "time constants drawn together from cooling reports on air-cooled aircraft engines",
  mark: "common practice, no published source" as const,
  unit: "h",
};

export const COOLING: ValidationGroup = {
  title: "an aircraft engine cooling on the ramp",
  part: "engine",
  cases: [
    {
      ...SHARED,
      name: "oil, inlets plugged",
      expected: 2.4,
      tolerance: 0.8,
      toleranceReason: "2-2.8 h reported; wind and oil quantity differ",
      got: () => timeConstant(plugged, "oil"),
    },
  ],
};
