import { readBaseDocument } from "../../src/base-documents/index.js";
import { coursePlayer } from "../../src/base-plan/exact.js";
import type { BaseAircraft } from "../../src/base-plan/index.js";
import type { BaseDocument } from "../../src/index.js";
import { createRandom } from "../../src/numerics/index.js";
import { allCriteria } from "../../src/readiness/index.js";
import { usedKit } from "../../src/scenario/index.js";
import { drawEnsemble } from "../../src/simulation/index.js";

export const HOUR = 3600;
const START = "2026-01-14T20:00:00+01:00";

export interface Trainers {
  readonly engine?: string;
  readonly heater?: string;
  readonly covers?: readonly string[];
  /** [°C] at the start, and twelve hours later. */
  readonly air?: readonly [number, number];
  /** [h] after the start. */
  readonly departures?: readonly number[];
  readonly chance?: number;
  readonly switching?: "hand" | "network";
  readonly members?: number;
  /** [min] */
  readonly unplugBefore?: number;
}

/** Two trainers, one outlet, a cold night that gets colder. */
export function twoTrainers({
  engine = "four-light-100",
  heater = "whole-engine-4",
  covers = ["insulated-cover"],
  air = [-22, -27],
  departures = [12, 13.5],
  chance = 0.9,
  switching = "network",
  members = 200,
  unplugBefore = 10,
}: Trainers = {}): BaseDocument {
  const hours = Math.ceil(Math.max(...departures)) + 2;
  const at = (h: number) => new Date(Date.parse(START) + h * HOUR * 1000).toISOString();
  return {
    ...{ soakline: 2, kind: "base", name: "Two trainers", start: START, zone: "CET", hours },
    weather: {
      issued: START,
      points: Array.from({ length: hours + 1 }, (_, h) => ({
        at_h: h,
        air_c: air[0] + (air[1] - air[0]) * Math.min(1, h / 12),
        wind_mps: 2.5,
        dew_point_c: Math.min(...air) - 4,
        cloud_fraction: 0.2,
      })),
    },
    ensemble: { members, seed: 1 },
    circuits: [{ id: "ramp", name: "Ramp", limit_a: 16, voltage_v: 230, outlets: 1 }],
    aircraft: departures.map((departure, i) => ({
      id: `t${i}`,
      scenario: {
        ...{ name: i === 0 ? "Teal" : "Wigeon", aircraft: engine, place: "ramp" },
        kit: { heaters: [heater], covers: [...covers] },
        fitted: { covers: [...covers] },
        initial: { all_c: air[0], uncertainty_k: 2 },
        want: {
          departure: at(departure),
          chance,
          unplug_before_min: unplugBefore,
          cover_off_before_min: unplugBefore,
        },
      },
      switching,
    })),
  };
}

/** What each aircraft of a base would bring with heat in blocks [s], played as it is with the plan's own model. */
export function playersOf(document: BaseDocument) {
  const base = readBaseDocument(document);
  if (!base.ok) throw new Error(JSON.stringify(base.issues));
  const { members, seed } = base.ensemble;
  const { weather } = drawEnsemble({ members, seed, weather: base.aircraft[0].read.scenario.weather });
  return base.aircraft.map(({ id, read, circuits, switched, connected, carts, told }) => {
    const { scenario, want, limits } = read;
    if (want === undefined) throw new Error(`${id} is not wanted`);
    const own = drawEnsemble({
      members,
      seed: Math.floor(2 ** 31 * createRandom(seed).stream(`aircraft ${id}`).uniform()),
      weather: scenario.weather,
    });
    const { wish, heaters } = want;
    const criteria = allCriteria(scenario.installation, usedKit(read), limits);
    const plan = { scenario, wish, heaters, criteria, draws: { ...own, weather } };
    const aircraft: BaseAircraft = { id, name: read.name, plan, circuits, switched, connected, carts, told };
    const play = coursePlayer(aircraft, base.limits);
    return {
      id,
      wish,
      unplug: wish.departure - wish.unplugBefore,
      play: (blocks: readonly { readonly from: number; readonly to: number }[]) =>
        play({ circuit: 0, cart: undefined, heaters, blocks, stay: undefined, givesUpOutlet: false }),
    };
  });
}
