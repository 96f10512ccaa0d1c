import { CAUTIONS } from "../../cautions.js";
import type { Heater } from "../../kit.js";

const DUCT_ORIGIN =
  "power and flow: common practice, no published source; supply limit: 120 °C at harness and hoses (Cessna 172S NAV III POH Supplement 8)";

/** Fan heater on the mains, blowing through a hose into the cowl. */
export const DUCTED_ELECTRIC_1500: Heater = {
  id: "ducted-electric-1500",
  name: "ducted hot air, electric, 1.5 kW",
  elements: [],
  duct: { power_w: 1500, flow_m3_per_s: 0.025, supply_max_c: 100, energy: "electric" },
  stirring: 2,
  longest_on_h: 4,
  attended: true,
  cautions: [CAUTIONS.hotAir, CAUTIONS.superficial, CAUTIONS.hangarVapour, CAUTIONS.unattended],
  origins: {
    duct: DUCT_ORIGIN,
    stirring: "project judgement: jets of a few m/s double the exchange of still air",
    longest_on_h: "project judgement",
  },
};

/** Burner cart outside, blowing through a duct into the cowl. */
export const DUCTED_FUEL_12000: Heater = {
  id: "ducted-fuel-12000",
  name: "ducted hot air, fuel-fired, 12 kW",
  elements: [],
  duct: { power_w: 12_000, flow_m3_per_s: 0.1, supply_max_c: 100, energy: "fuel" },
  stirring: 4,
  longest_on_h: 2,
  attended: true,
  cautions: [CAUTIONS.carbonMonoxide, CAUTIONS.unattended, CAUTIONS.hotAir, CAUTIONS.superficial],
  origins: {
    duct: "lower end of US Army TM 1-1500-204-23-9 fig. 9-15: 40 000 Btu/h (12 kW); flow from 435 cfm cut to what a light cowl passes; supply within 66-138 °C and below 120 °C at hoses",
    stirring: "project judgement",
    longest_on_h: "project judgement",
  },
};
