import { type Configuration, INPUT_NAMES } from "../aircraft/index.js";
import { interpolateLinear } from "../numerics/index.js";
import {
  centralDraws,
  configurationAt,
  createForcing,
  type Forcing,
  type Scenario,
  type Timeline,
} from "../simulation/index.js";

export interface BatchSetting {
  readonly scenario: Scenario;
  /** [K] measured in the hangar, at times [s] since the scenario's start; replaces the site's one value. */
  readonly hangarAir?: { readonly time: readonly number[]; readonly temps: readonly number[] };
  /** Weather with errors of its own for each member; the scenario's own weather for all of them without it. */
  readonly forcing?: { readonly forcing: Forcing; readonly members: number };
}

/** Where each member stands, and by how much its air differs. */
export interface Surrounded {
  readonly members: number;
  /** [K] lasting error of the air, outside and hangar alike, per member; the sky goes with it. */
  readonly airBias?: Float64Array;
  /** What is done with the aircraft; member m follows timelines[variant[m]], all the first one without `variant`. */
  readonly timelines: readonly Timeline[];
  readonly variant?: ArrayLike<number>;
}

/** What is around the members of a batch: the weather, the measured hangar, and each member's own error of the air. */
export interface Surroundings {
  /** [s] where the weather bends. */
  readonly knots: readonly number[];
  /** [K] air around the aircraft before the members' own errors. */
  tempAirAt(configuration: Configuration, t: number): number;
  /** Writes the inputs (inputs x members) at time t, in the configurations that hold from `stretchFrom` on. */
  write(of: Surrounded, stretchFrom: number, t: number, out: Float64Array): void;
}

const TEMPERATURE_INPUTS = (["outside_air", "cowl_surroundings", "supply_air"] as const).map((name) =>
  INPUT_NAMES.indexOf(name),
);

export function createSurroundings({ scenario, hangarAir, forcing: given }: BatchSetting): Surroundings {
  const { site } = scenario;
  const { forcing, members: forced } = given ?? {
    forcing: createForcing(scenario, centralDraws(scenario.weather)),
    members: 1,
  };
  const scratch = new Float64Array(INPUT_NAMES.length * forced);

  /** [K] measured hangar air less the site's. */
  function hangarOffset({ place }: Configuration, t: number): number {
    if (place !== "hangar" || hangarAir === undefined) return 0;
    return interpolateHeld(hangarAir.time, hangarAir.temps, t) - site.tempHangar;
  }

  return {
    knots: forcing.knots,
    tempAirAt: (configuration, t) =>
      configuration.place === "hangar"
        ? site.tempHangar + hangarOffset(configuration, t)
        : forcing.tempAirAt(t, 0),
    write({ members, airBias, timelines, variant }, stretchFrom, t, out) {
      timelines.forEach((timeline, v) => {
        const configuration = configurationAt(timeline, stretchFrom);
        const offset = hangarOffset(configuration, t);
        forcing.write(configuration, t, scratch);
        for (let m = 0; m < members; m++) {
          if ((variant?.[m] ?? 0) !== v) continue;
          const column = forced === 1 ? 0 : m;
          for (let i = 0; i < INPUT_NAMES.length; i++) out[i * members + m] = scratch[i * forced + column];
          for (const i of TEMPERATURE_INPUTS) out[i * members + m] += offset + (airBias?.[m] ?? 0);
        }
      });
    },
  };
}

/** Linear between the points, held at the first and last value beyond them. */
export function interpolateHeld(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  return interpolateLinear(x, y, Math.max(x[0], Math.min(x[x.length - 1], at)));
}
