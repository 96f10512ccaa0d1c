import { sourced } from "../findings/index.js";

/** Cautions about starting cold. The handbook, the engine's and the battery's makers come before all of them. */
export const START_CAUTIONS = {
  congealedOil: sourced(
    "congealed-oil",
    {},
    "Continental O-470-B operator's manual, WARNING on superficial preheat",
  ),
  noOilPressure: sourced(
    "no-oil-pressure",
    {},
    "Lycoming IO-390-D series installation and operation manual, cold-weather starting",
  ),
  crankShort: sourced("crank-short", {}, "Lycoming Service Instruction 1505 (1 Jul 2002)"),
  kickBack: sourced("kick-back", {}, "Continental IO-240 manual p. 4-8"),
  frozenBattery: sourced("frozen-battery", {}, "usual battery-maker caution, from memory"),
  removeBattery: sourced("remove-battery", {}, "Cessna 172S NAV III POH Supplement 8"),
  coldCharging: sourced(
    "cold-charging",
    {},
    "SAE 430132 (1943), 40 °F; lithium: battery makers' articles, 0 °C",
  ),
  intakeFire: sourced("intake-fire", {}, "Cessna 172 handbook, cold start"),
  overPriming: sourced(
    "over-priming",
    {},
    "Continental IO-240 manual p. 4-8; washed walls: common practice, no published source",
  ),
  frostedPlugs: sourced(
    "frosted-plugs",
    {},
    "Cessna 172S NAV III POH Supplement 8; Cessna 172 handbook, cold start",
  ),
  primeByHandbook: sourced(
    "prime-by-handbook",
    {},
    "Cessna 172N, 172RG and TR182 handbooks: 1 to 8 strokes, by type and by preheat",
  ),
  frozenBreather: sourced("frozen-breather", {}, "FAA AC 91-13C (1979) para 4-5; FAA-P-8740-24"),
  groundRun: sourced("short-ground-run", {}, "Lycoming SL L180B (165 to 200 °F); Continental SIL 99-1"),
  propeller: sourced("live-propeller", {}, "common practice, no published source; the handbook decides"),
  handTurning: sourced("hand-turning", {}, "Cessna 172N handbook; Lycoming SL L180B, second-hand"),
};
