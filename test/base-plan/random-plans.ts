import type { BaseDocument } from "../../src/index.js";
import { createRandom } from "../../src/numerics/index.js";

const START = "2026-01-14T22:00:00+01:00";
const HOUR_MS = 3_600_000;
const HEATERS = [
  ["whole-engine-4"],
  ["sump-pad-100"],
  ["sump-pad-220", "battery-blanket-60"],
  ["ducted-electric-1500"],
  ["ducted-fuel-12000"],
  ["in-cowl-400"],
  [],
  [],
];
const ENGINES = ["four-light-100", "four-carburettor-160", "four-injected-200"];

/** A small base that a seed gives: kit, places, weather, wishes, circuits, people and carts of every kind. */
export function randomPlanned(seed: number, members = 20): BaseDocument {
  const random = createRandom(seed);
  const int = (from: number, to: number) => from + Math.floor((to - from + 1) * random.uniform());
  const pick = <T>(list: readonly T[]): T => list[int(0, list.length - 1)];
  const may = (share: number) => random.uniform() < share;
  const at = (h: number) => new Date(Date.parse(START) + h * HOUR_MS).toISOString();
  const hours = 7;
  const air = int(-32, 6);
  const change = int(-5, 3);
  const hasHangar = may(0.5);
  const count = may(0.5) ? 1 : 2;
  const bays = 2;
  return {
    ...{ soakline: 2, kind: "base", name: "A small base", start: START, zone: "CET", hours },
    weather: {
      issued: START,
      points: [0, 4, hours].map((at_h) => ({
        ...{ at_h, air_c: air + (change * at_h) / hours, wind_mps: int(0, 6) },
        ...{ dew_point_c: air - 8, cloud_fraction: 0.5 },
      })),
    },
    ensemble: { members, seed: int(1, 1000) },
    ...(hasHangar ? { hangar: { air_c: Math.max(air, int(-8, 8)), bays, move_min: pick([0, 20]) } } : {}),
    circuits: Array.from({ length: int(1, 2) }, (_, i) => ({
      id: `c${i}`,
      limit_a: pick([3, 6, 10, 16]),
      voltage_v: 230,
      outlets: int(1, 2),
      generator: may(0.15),
    })),
    carts: may(0.5) ? [{ id: "cart", heater: pick(["ducted-electric-1500", "ducted-fuel-12000"]) }] : [],
    ...(may(0.4)
      ? {
          people: [
            { from: at(0), to: at(int(1, 2)), count: 1 },
            { from: at(int(4, 5)), to: at(hours), count: int(1, 2) },
          ],
        }
      : {}),
    aircraft: Array.from({ length: count }, (_, i) => {
      const heaters = pick(HEATERS);
      const unplug = pick([0, 5, 20]);
      const covers = may(0.6) ? ["insulated-cover"] : [];
      return {
        id: `a${i}`,
        scenario: {
          name: `A${i}`,
          aircraft: pick(ENGINES),
          kit: { heaters: [...heaters], covers },
          place: hasHangar && may(0.4) ? "hangar" : "ramp",
          fitted: { covers },
          initial: { all_c: air + int(0, 6), uncertainty_k: 2 },
          want: {
            departure: at(hours - 0.5 - i * pick([0, 0.5, 1.5])),
            chance: pick([0.7, 0.9]),
            unplug_before_min: unplug,
            cover_off_before_min: Math.min(unplug, pick([0, 10])),
          },
        },
        switching: pick(["hand", "network"]),
      };
    }),
  };
}
