import type { Caution } from "../aircraft/index.js";

/** Cautions about starting cold. The handbook, the engine's and the battery's makers come before all of them. */
export const START_CAUTIONS = {
  congealedOil: {
    text: "Gauges can read warm while oil in sump, filter and lines is still congealed; the damage may show many hours later.",
    source: "Continental O-470-B operator's manual, WARNING on superficial preheat",
  },
  noOilPressure: {
    text: "Stop the engine at once when there is no oil pressure within 10 s; where the engine's handbook says otherwise, the handbook decides.",
    source: "Lycoming IO-390-D series installation and operation manual, cold-weather starting",
  },
  crankShort: {
    text: "Crank 5 s at a time at most, start straight after the preheat and use external power where the handbook allows it.",
    source: "Lycoming Service Instruction 1505 (1 Jul 2002)",
  },
  kickBack: {
    text: "A part-charged battery can let the engine kick back and break the starter drive; charge or warm it first.",
    source: "Continental IO-240 manual p. 4-8",
  },
  frozenBattery: {
    text: "Never charge, jump-start or load a battery that may be frozen or that bulges: it can burst. Acid burns: eye protection, gloves.",
    source: "usual battery-maker caution, from memory",
  },
  removeBattery: {
    text: "Take the battery out and keep it warm when it gets colder than -34 °C outside.",
    source: "Cessna 172S NAV III POH Supplement 8",
  },
  coldCharging: {
    text: "A battery this cold takes up next to no charge, lithium is harmed by it: warm it before charging, and do not count on the alternator to refill it.",
    source: "SAE 430132 (1943), 40 °F; lithium: battery makers' articles, 0 °C",
  },
  intakeFire: {
    text: "Fuel pumped in with the throttle lies in the intake and burns on a backfire: keep cranking to draw the flames in, have somebody outside with an extinguisher.",
    source: "Cessna 172 handbook, cold start",
  },
  overPriming: {
    text: "Too much prime floods the induction, can lock a cylinder hydraulically and washes the oil off cold cylinder walls.",
    source: "Continental IO-240 manual p. 4-8; washed walls: common practice, no published source",
  },
  frostedPlugs: {
    text: "When it fires and quits, the plugs frost over: no further tries until the engine has been warmed above 0 °C.",
    source: "Cessna 172S NAV III POH Supplement 8; Cessna 172 handbook, cold start",
  },
  primeByHandbook: {
    text: "How much prime, and how, is the handbook's to say.",
    source: "Cessna 172N, 172RG and TR182 handbooks: 1 to 8 strokes, by type and by preheat",
  },
  frozenBreather: {
    text: "Water from the case freezes in the breather: pressure builds up, a filler cap or a seal gives and the oil is lost. Check the breather at each preflight.",
    source: "FAA AC 91-13C (1979) para 4-5; FAA-P-8740-24",
  },
  groundRun: {
    text: "A short ground run makes more water than it drives off: fly an hour with the oil at 74 to 93 °C, or do not run it.",
    source: "Lycoming SL L180B (165 to 200 °F); Continental SIL 99-1",
  },
  handTurning: {
    text: "Handbooks disagree about pulling the propeller through by hand: some ask for it, others warn that it wipes the oil off. Treat every propeller as live.",
    source: "Cessna 172N handbook; Lycoming SL L180B, second-hand",
  },
} as const satisfies Record<string, Caution>;
