import { finding } from "../../../findings/index.js";
import { CAUTIONS } from "../../cautions.js";
import type { Heater, Procedure } from "../../kit.js";
import { MEASURED_RUNS } from "./measured-runs.js";

const DUCT_ORIGIN =
  "power and flow: common practice, no published source; supply limit: 120 °C at harness and hoses (Cessna 172S NAV III POH Supplement 8)";

const LEAST_ON = "IO-390-D series operation and installation manual p. 42: at least 30 minutes in all";
const HOT_AIR_PAUSE_ORIGIN = "project judgement: five minutes for the checks the makers ask for";

/** Hot air by hand. */
const HOT_AIR: Procedure = {
  steps: [
    finding("hot-air-in-turn", {}),
    finding("hot-air-feel", {}),
    finding("hot-air-top", {}),
    finding("hot-air-wait", {}),
    finding("hot-air-start", {}),
  ],
  pause_min: 5,
  source:
    "Lycoming Service Instruction 1505 and IO-390-D series manual p. 42; oil off the dipstick: US Army TM 5-3805-255-14",
};

/** Fan heater on the mains, blowing through a hose into the cowl. */
export const DUCTED_ELECTRIC_1500: Heater = {
  id: "ducted-electric-1500",
  name: "ducted hot air, electric, 1.5 kW",
  basis: { kind: "measured", runs: 3 },
  elements: [],
  duct: { power_w: 1500, flow_m3_per_s: 0.025, supply_max_c: 100, energy: "electric", nozzle_m: 0.1 },
  stirring: 2,
  least_on_h: 0.5,
  longest_on_h: 4,
  attended: true,
  runs: "anywhere",
  procedure: HOT_AIR,
  cautions: [CAUTIONS.hotAir, CAUTIONS.superficial, CAUTIONS.hangarVapour, CAUTIONS.unattended],
  origins: {
    basis: MEASURED_RUNS,
    duct: DUCT_ORIGIN,
    stirring: "project judgement: jets of a few m/s double the exchange of still air",
    least_on_h: LEAST_ON,
    longest_on_h: "project judgement",
    procedure: HOT_AIR_PAUSE_ORIGIN,
  },
};

/** Burner cart outside, blowing through a duct into the cowl. */
export const DUCTED_FUEL_12000: Heater = {
  id: "ducted-fuel-12000",
  name: "ducted hot air, fuel-fired, 12 kW",
  basis: { kind: "measured", runs: 1 },
  elements: [],
  duct: { power_w: 12_000, flow_m3_per_s: 0.1, supply_max_c: 100, energy: "fuel", nozzle_m: 0.15 },
  stirring: 4,
  least_on_h: 0.5,
  longest_on_h: 2,
  attended: true,
  runs: "outdoors",
  displacement_least_l: 3,
  procedure: HOT_AIR,
  cautions: [CAUTIONS.carbonMonoxide, CAUTIONS.unattended, CAUTIONS.hotAir, CAUTIONS.superficial],
  origins: {
    basis: MEASURED_RUNS,
    duct: "lower end of US Army TM 1-1500-204-23-9 fig. 9-15: 40 000 Btu/h (12 kW); flow from 435 cfm cut to what a light cowl passes; supply within 66-138 °C and below 120 °C at hoses",
    stirring: "project judgement",
    least_on_h: LEAST_ON,
    longest_on_h: "project judgement",
    displacement_least_l:
      "project judgement: 12 kW into the cowl of a smaller engine scorches what is near before the case is warm",
    procedure: HOT_AIR_PAUSE_ORIGIN,
  },
};
