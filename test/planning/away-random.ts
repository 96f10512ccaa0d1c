import { COVERS, INSTALLATIONS } from "../../src/aircraft/index.js";
import type { ScenarioDocument } from "../../src/documents/index.js";
import { createRandom } from "../../src/numerics/index.js";

/** Any aircraft, covers, place, weather, shut-down and return; few cases, so that a share that is counted wrong shows. */
export function randomAway(seed: number): ScenarioDocument {
  const { uniform } = createRandom(seed).stream("away");
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const one = <T>(list: readonly T[]): T => list[Math.floor(between(0, list.length - 1e-9))];
  const hours = 2 * Math.round(between(1, 2.6));
  const air = between(-38, 4);
  const drift = between(-1.5, 1.5);
  const wind = between(0, 10);
  const gust = between(0, 1.5);
  const covers = COVERS.map(({ id }) => id).filter(() => uniform() < 0.4);
  const isInside = uniform() < 0.15;
  const shutDown = one([0, 0.25, 0.5, 1, 2, 3]);
  const initial = one([
    { shut_down_h_ago: shutDown },
    { shut_down_h_ago: shutDown },
    { all_c: Math.round(between(air, 20)) },
    undefined,
  ]);
  return {
    soakline: 2,
    name: `away ${seed}`,
    aircraft: one(INSTALLATIONS).id,
    kit: { heaters: [], covers },
    start: "2026-01-15T12:00+01:00",
    zone: "Europe/Oslo",
    hours,
    place: isInside ? "hangar" : "ramp",
    hangar: { air_c: 8 },
    site: { roughness_m: 0.005 },
    ...(uniform() < 0.4 ? { fitted: { covers } } : {}),
    ...(initial === undefined ? {} : { initial }),
    ...(isInside ? { events: [{ at_h: Math.round(between(0, 1.5) * 4) / 4, do: "move", to: "ramp" }] } : {}),
    weather: {
      points: Array.from({ length: hours + 5 }, (_, i) => ({
        at_h: i - 4,
        air_c: Math.min(12, air + drift * (i - 4)),
        // The model takes surface coefficients as linear between two knots of the weather: a jump of the wind between
        // them would make one course two, by where it is cut.
        wind_mps: Math.max(0, wind + gust * Math.sin(i)),
        dew_point_c: Math.min(12, air + drift * (i - 4)) - between(1, 6),
        cloud_fraction: uniform(),
      })),
    },
    want: {
      departure: new Date(
        Date.parse("2026-01-15T12:00+01:00") + Math.round(between(0.4, hours) * 60) * 60_000,
      )
        .toISOString()
        .replace(/:00\.000Z$/, "Z"),
      chance: one([0.7, 0.8, 0.9, 0.9, 0.95]),
    },
    ensemble: { members: one([21, 25, 30]), seed },
  } as ScenarioDocument;
}
