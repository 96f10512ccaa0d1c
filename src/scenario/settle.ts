import type { Finding } from "../findings/index.js";
import type { Scenario } from "../simulation/index.js";
import type { WeatherSeries } from "../weather/index.js";
import type { AircraftScenario, SourceIssue } from "./aircraft-scenario.js";
import { burnersIndoors, heatersOnTooLong } from "./heater-rules.js";
import { initialStateOf, type KnownTemps, knownFrom } from "./initial-state.js";
import type { StandingAircraft } from "./standing-aircraft.js";

/** What the parts of a scenario are read and settled into beside their values: every fault, doubt and assumption. */
export interface Notes {
  readonly issues: SourceIssue[];
  readonly warnings: SourceIssue[];
  /** What was left open and what was taken instead. */
  readonly assumptions: Finding[];
}

/** All that is told of an aircraft and its night, before its temperatures are settled. */
export interface ScenarioParts
  extends StandingAircraft,
    Pick<Scenario, "start" | "duration" | "events">,
    Pick<AircraftScenario, "name" | "zone" | "want" | "limits" | "batteryFitted" | "learned" | "ensemble"> {
  /** As its source gives it, and cut to the scenario. */
  readonly weather: { readonly whole: WeatherSeries; readonly cut: WeatherSeries };
  /** [s] that the heaters on at the start have been on; undefined where nobody knows, or none is. */
  readonly heatedFor: number | undefined;
  readonly known: KnownTemps;
}

/** The scenario with its temperatures at the start; undefined, with issues, where it may not or cannot be. */
export function settle(parts: ScenarioParts, notes: Notes): AircraftScenario | undefined {
  const { installation, kit, configuration, site, start, duration, events, weather, heatedFor, known } =
    parts;
  notes.warnings.push(...heatersOnTooLong(kit, configuration, events, duration));
  notes.issues.push(...burnersIndoors(kit, configuration, events));
  if (notes.issues.length > 0) return undefined;
  const initial = initialStateOf(
    known,
    parts,
    { start, heatedFor, weather: weather.whole },
    notes.assumptions,
  );
  if (initial === undefined) {
    notes.issues.push({
      path: "initial.shut_down_h_ago",
      expected: "a shut-down no more than a day before the weather begins",
      received: String(Number(((known.shutDownAgo ?? 0) / 3600).toFixed(4))),
    });
    return undefined;
  }
  const { name, zone, want, limits, batteryFitted, learned, ensemble } = parts;
  return {
    name,
    zone,
    scenario: { installation, kit, start, duration, weather: weather.cut, site, initial, events },
    want,
    limits,
    batteryFitted,
    learned,
    ensemble,
    knownFrom: knownFrom(known),
    assumptions: notes.assumptions,
    warnings: notes.warnings,
  };
}
