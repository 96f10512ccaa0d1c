import { CAR_ENGINE, coolantHeater, FOAM_30_MM } from "./car-engine.js";
import type { ValidationCase, ValidationGroup } from "./case.js";
import { HOUR, play } from "./heating-runs.js";

const plugIn = { at: 0, change: { do: "plug-in" as const, heaters: ["coolant"] } };
const outdoors = { installation: CAR_ENGINE, covers: [], place: "ramp" as const, wind: 1, events: [plugIn] };

const MINUTES = [7, 26, 59, 82, 103];
const logged = play(
  { ...outdoors, heaters: [coolantHeater(375)], air: -1, initial: { others: 3 } },
  MINUTES.map((m) => m * 60),
);
const settled = play({ ...outdoors, heaters: [coolantHeater(375)], air: -1, initial: { others: -1 } }, [
  24 * HOUR,
])[0];
const prairie = play({ ...outdoors, heaters: [coolantHeater(400)], air: -25, initial: { others: -25 } }, [
  2 * HOUR,
  4 * HOUR,
  24 * HOUR,
]);

const hot = {
  ...outdoors,
  heaters: [],
  place: "hangar" as const,
  air: 20,
  initial: { others: 99, cowl_air: 40, cowl_skin: 25 },
  events: [],
};
const quarters = Array.from({ length: 200 }, (_, i) => (i + 1) * 900);
const bare = play(hot, quarters);
const foamed = play({ ...hot, covers: [FOAM_30_MM], coversOn: ["foam"] }, quarters);

/** [h] until the coolant is at 50 °C, linear between quarter hours. */
function hoursTo50(course: readonly Readonly<Record<string, number>>[]): number {
  const after = course.findIndex((t) => t.coolant < 50);
  if (after <= 0) return Number.NaN;
  const from = course[after - 1].coolant;
  return (after + (from - 50) / (from - course[after].coolant)) / 4;
}

const LOG: Omit<ValidationCase, "name" | "expected" | "got"> = {
  source:
    "logged run of a 1.5 l car, block heater metered at 384-370 W, -1 °C, Dec 2007 (owner's forum post with instrument readings)",
  mark: "published",
  unit: "°C",
  tolerance: 5,
  toleranceReason: "one run; masses, bay openings and wind are not given",
};

export const CARS: ValidationGroup = {
  title: "car engines heated and cooling, as far as published runs describe them",
  part: "engine",
  cases: [
    ...[10, 19, 26, 29, 31].map((expected, i) => ({
      ...LOG,
      name: `coolant after ${MINUTES[i]} min from 3 °C`,
      expected,
      got: () => logged[i].coolant,
    })),
    {
      ...LOG,
      name: "settled rise of the coolant over the air",
      expected: 35,
      unit: "K",
      tolerance: 7,
      toleranceReason: "extrapolated by the author of the run from its first hours",
      got: () => settled.coolant + 1,
    },
    {
      name: "share of the four-hour benefit after two hours",
      source: "University of Saskatchewan field tests (1972), carried by betterfarming.com 2012",
      mark: "published",
      unit: "1",
      expected: 0.75,
      tolerance: 0.1,
      toleranceReason: "second-hand round figure over many vehicles",
      got: () => (prairie[0].coolant + 25) / (prairie[1].coolant + 25),
    },
    {
      name: "a whole night brings what four hours bring",
      source: "University of Saskatchewan field tests (1972), carried by betterfarming.com 2012",
      mark: "published",
      unit: "1",
      expected: 1,
      tolerance: 0.15,
      toleranceReason: "second-hand, 'the same'",
      got: () => (prairie[1].coolant + 25) / (prairie[2].coolant + 25),
    },
    {
      name: "cooling from about 100 to 50 °C, 30 mm foam over bare",
      source: "N. Deussen, FH Köln, 1.4 l car in 30 mm PU foam: about 15 h against about 2 h (press reports)",
      mark: "published",
      unit: "1",
      expected: 7.5,
      tolerance: 2,
      toleranceReason: "press figures to the hour; room temperature not given",
      got: () => hoursTo50(foamed) / hoursTo50(bare),
    },
  ],
};
