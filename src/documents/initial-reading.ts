import type { PartName } from "../aircraft/index.js";
import type { KnownTemps } from "../scenario/index.js";
import { kelvinFromCelsius, SECONDS_OF_HOUR, SECONDS_OF_MINUTE } from "../units/index.js";
import { fault, type Notes } from "./reading.js";
import type { ScenarioDocument } from "./scenario-schema.js";

type InitialSection = NonNullable<ScenarioDocument["initial"]>;

type PartKey = Exclude<
  keyof InitialSection,
  "all_c" | "shut_down_h_ago" | "ground_run_min" | "snow_on_cowl_kg_m2" | "uncertainty_k"
>;

/** Parts of the engine by the keys of a document's initial temperatures. */
export const PARTS_OF_KEY: Readonly<Record<PartKey, readonly PartName[]>> = {
  sump_c: ["sump"],
  oil_c: ["oil"],
  crankcase_c: ["crankcase"],
  crankshaft_c: ["crankshaft"],
  cylinders_c: ["barrels"],
  heads_c: ["heads_front", "heads_rear"],
  accessories_c: ["accessories"],
  hub_c: ["hub"],
  cowl_air_c: ["cowl_air"],
  cowl_skin_c: ["cowl_skin"],
  battery_c: ["battery"],
  coolant_c: ["coolant"],
};

/** What a document knows of the temperatures at the start. */
export function knownTempsOf(initial: InitialSection): KnownTemps {
  const { all_c, shut_down_h_ago, ground_run_min, snow_on_cowl_kg_m2, uncertainty_k } = initial;
  return {
    temps: new Map(
      Object.entries(PARTS_OF_KEY).flatMap(([key, parts]) => {
        const celsius = initial[key as PartKey];
        return celsius === undefined ? [] : parts.map((part) => [part, kelvinFromCelsius(celsius)] as const);
      }),
    ),
    others: all_c === undefined ? undefined : kelvinFromCelsius(all_c),
    shutDownAgo: shut_down_h_ago === undefined ? undefined : shut_down_h_ago * SECONDS_OF_HOUR,
    groundRun: ground_run_min === undefined ? undefined : ground_run_min * SECONDS_OF_MINUTE,
    snowOnCowl: snow_on_cowl_kg_m2,
    sd: uncertainty_k,
  };
}

/** Refuses two states at once. */
export function checkInitial({ all_c, shut_down_h_ago }: InitialSection, notes: Notes): void {
  if (all_c === undefined || shut_down_h_ago === undefined) return;
  fault(notes, ["initial"], "either all_c or shut_down_h_ago, not both", { all_c, shut_down_h_ago });
}
