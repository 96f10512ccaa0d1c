import type { Caution } from "./kit.js";

/** Cautions that several pieces of equipment share; the handbook, the makers and local code come before all of them. */
export const CAUTIONS = {
  inspectDaily: {
    text: "Inspect wiring, pad and nearby hoses before the first flight of each day the heater was used; installation is work for a licensed mechanic.",
    source: "Transport Canada Airworthiness Notice B037 (1997)",
  },
  unattended: {
    text: "Do not leave it running unattended or refuel it while it runs; keep an extinguisher at hand and the duct away from hoses, covers and upholstery.",
    source: "FAA AC 91-13C (1979), engine preheat; wording from memory",
  },
  carbonMonoxide: {
    text: "A burner makes carbon monoxide: never run it inside a closed hangar or cabin, and duct the hot air in.",
    source: "US Army TM 1-1500-204-23-9 (run outside structures, duct in)",
  },
  hotAir: {
    text: "Keep air on ignition harness, hoses and rubber below 120 °C; too hot too fast ruins seals and belts.",
    source: "US Army TM 1-1500-204-23-1 (251 °F); Cessna 172S NAV III POH Supplement 8 (120 °C)",
  },
  hangarVapour: {
    text: "No open element, brush motor or switch low in a hangar or near fuel openings: up to 0.45 m above the floor and within 1.5 m of engines and tanks is a hazardous zone.",
    source: "NFPA 70 (NEC) Art. 513.3",
  },
  superficial: {
    text: "Air in the cowl warms heads and gauges long before oil and bearings: warm readings alone do not mean a warm engine.",
    source: "Continental O-470-B operator's manual, WARNING on superficial preheat; Lycoming SI 1505",
  },
  hotSurface: {
    text: "The heater's surface may pass its limit: look at it while it heats, and keep oil, hoses and covers off it.",
    source: "project judgement; limit as the heater's description says",
  },
  inCowlRejected: {
    text: "Engine makers reject small electric heaters in the cowl opening: they warm the air and the gauges, not the oil.",
    source: "Lycoming Service Instruction 1505; IO-390-D series manual p. 42",
  },
  sumpOnly: {
    text: "Heat under the oil alone leaves cylinders and bearings cold and can drive moisture onto them.",
    source: "trade articles, second-hand; see also Continental O-470-B WARNING",
  },
  immersion: {
    text: "Only with the element fully covered by oil; still cold oil cokes above about 1.6 W/cm² (10 W/in²).",
    source: "US Army TM 1-1500-204-23-3; Machinery Lubrication Nov-Dec 2016 p. 47",
  },
  cords: {
    text: "Outdoor leads IP44 or better, never coiled, unplugged when not in use.",
    source: "Elsäkerhetsverket (Sweden), advice on engine heaters",
  },
  batteryHeat: {
    text: "Never charge a frozen battery; a warm battery gives off hydrogen when charged: ventilate.",
    source: "usual battery-maker caution, from memory",
  },
  removeBeforeStart: {
    text: "Take off cover and plugs and count them before starting; a forgotten plug overheats the engine.",
    source: "common practice, no published source",
  },
} as const satisfies Record<string, Caution>;
