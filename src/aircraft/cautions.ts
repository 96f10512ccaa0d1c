import { sourced } from "../findings/index.js";

/** Cautions that several pieces of equipment share; the handbook, the makers and local code come before all of them. */
export const CAUTIONS = {
  inspectDaily: sourced("inspect-daily", {}, "Transport Canada Airworthiness Notice B037 (1997)"),
  unattended: sourced("unattended", {}, "FAA AC 91-13C (1979), engine preheat; wording from memory"),
  carbonMonoxide: sourced(
    "burner-outside",
    {},
    "US Army TM 1-1500-204-23-9 (run outside structures, duct in)",
  ),
  hotAir: sourced(
    "hot-air-limit",
    {},
    "US Army TM 1-1500-204-23-1 (251 °F); Cessna 172S NAV III POH Supplement 8 (120 °C)",
  ),
  hangarVapour: sourced("heater-sparks", {}, "NFPA 70 (NEC) Art. 513.3"),
  superficial: sourced(
    "warm-gauges",
    {},
    "Continental O-470-B operator's manual, WARNING on superficial preheat; Lycoming SI 1505",
  ),
  hotSurface: sourced("hot-surface", {}, "project judgement; limit as the heater's description says"),
  inCowlRejected: sourced(
    "in-cowl-rejected",
    {},
    "Lycoming Service Instruction 1505; IO-390-D series manual p. 42",
  ),
  sumpOnly: sourced("sump-only", {}, "trade articles, second-hand; see also Continental O-470-B WARNING"),
  immersion: sourced(
    "immersion-covered",
    {},
    "US Army TM 1-1500-204-23-3; Machinery Lubrication Nov-Dec 2016 p. 47",
  ),
  cords: sourced("cords", {}, "Elsäkerhetsverket (Sweden), advice on engine heaters"),
  batteryHeat: sourced("battery-hydrogen", {}, "usual battery-maker caution, from memory"),
  removeBeforeStart: sourced("remove-before-start", {}, "common practice, no published source"),
};
