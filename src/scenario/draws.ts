import { type Finding, finding } from "../findings/index.js";
import { type FittedAircraft, posteriorFor } from "../learning/index.js";
import { type Draws, drawEnsemble, type MultiplierPosterior } from "../simulation/index.js";
import type { AircraftScenario } from "./aircraft-scenario.js";

/** A scenario with the cases drawn for it: what results are made from. */
export interface DrawnScenario {
  readonly read: AircraftScenario;
  readonly draws: Draws;
}

/** Draws every case once, from what was learned of the aircraft where something was. */
export function drawnFrom(read: AircraftScenario): DrawnScenario {
  const { members, seed } = read.ensemble;
  const { weather } = read.scenario;
  const posterior = posteriorOf(read);
  if (read.learned === undefined || posterior === undefined) {
    return { read, draws: drawEnsemble({ members, seed, weather }) };
  }
  const assumptions = [...read.assumptions, learnedText(read.learned, posterior)];
  return { read: { ...read, assumptions }, draws: drawEnsemble({ members, seed, weather, posterior }) };
}

/** What was learned, as far as it holds for how the aircraft stands and what heats it; undefined where nothing was. */
export function posteriorOf({ scenario, want, learned }: AircraftScenario): MultiplierPosterior | undefined {
  if (learned === undefined) return undefined;
  const { place, coversOn, heatersOn } = scenario.initial.configuration;
  const setting = { place, covers: [...coversOn].sort() };
  return posteriorFor(learned, { setting, heaters: want?.heaters ?? [...heatersOn] });
}

function learnedText({ evidence, multipliers }: FittedAircraft, used: MultiplierPosterior): Finding {
  return finding("learned-from", {
    readings: evidence.reduce((sum, e) => sum + e.readings, 0),
    origins: evidence.map((e) => e.origin),
    isReset: used !== multipliers,
  });
}
