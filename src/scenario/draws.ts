import { HEAT_SPREADS, heaterBasis } from "../aircraft/index.js";
import { type Finding, finding } from "../findings/index.js";
import { type FittedAircraft, posteriorFor } from "../learning/index.js";
import { type Draws, drawEnsemble, type MultiplierPosterior } from "../simulation/index.js";
import type { AircraftScenario } from "./aircraft-scenario.js";

/** A scenario with the cases drawn for it: what results are made from. */
export interface DrawnScenario {
  readonly read: AircraftScenario;
  readonly draws: Draws;
}

/** Draws every case once: from what was learned of the aircraft, and as its base's record asks, where there is either. */
export function drawnFrom(read: AircraftScenario): DrawnScenario {
  const { members, seed, correction } = read.ensemble;
  const { weather } = read.scenario;
  const posterior = posteriorOf(read);
  const said: Finding[] = heatUnsure(read);
  if (read.learned !== undefined && posterior !== undefined)
    said.push(...learnedSaid(read.learned, posterior));
  if (correction !== undefined) {
    const { plans, airShift, spread } = correction;
    said.push(finding("corrected-by-record", { plans, colder_k: -airShift, spread }));
  }
  const draws = drawEnsemble({
    members,
    seed,
    weather,
    ...(posterior === undefined ? {} : { posterior }),
    ...(correction === undefined ? {} : { correction }),
  });
  return { read: { ...read, assumptions: [...read.assumptions, ...said] }, draws };
}

/** What was learned, as far as it holds for how the aircraft stands and what heats it; undefined where nothing was. */
export function posteriorOf({ scenario, want, learned }: AircraftScenario): MultiplierPosterior | undefined {
  if (learned === undefined) return undefined;
  const { place, coversOn, heatersOn } = scenario.initial.configuration;
  const setting = { place, covers: [...coversOn].sort() };
  return posteriorFor(learned, { setting, heaters: want?.heaters ?? [...heatersOn] });
}

/** Of each heater wanted whose numbers were not measured. */
function heatUnsure({ scenario, want }: AircraftScenario): Finding[] {
  const wanted = scenario.kit.heaters.filter(({ id }) => want?.heaters.includes(id));
  return wanted.flatMap((heater) => {
    const { kind } = heaterBasis(heater);
    if (kind === "measured") return [];
    const percent = Math.round(100 * HEAT_SPREADS[kind].logSd);
    return [finding("heat-unsure", { heater: heater.name, kind, percent })];
  });
}

function learnedSaid({ evidence, multipliers }: FittedAircraft, used: MultiplierPosterior): Finding[] {
  const own = evidence.filter(({ of }) => of === undefined);
  const others = [...new Set(evidence.flatMap(({ of }) => of ?? []))];
  return [
    ...(own.length === 0
      ? []
      : [
          finding("learned-from", {
            readings: own.reduce((sum, e) => sum + e.readings, 0),
            origins: own.map((e) => e.origin),
            isReset: used !== multipliers,
          }),
        ]),
    ...(others.length === 0 ? [] : [finding("learned-at-base", { aircraft: others })]),
  ];
}
