/** What to be careful about, and who says so. */
export interface Caution {
  readonly text: string;
  readonly source: string;
}

const TP_10643_HANGARS = "Transport Canada TP 10643 ch. 4, Hangars";

/** Cautions that stand beside the numbers of this folder; handbook, maker, local code and licensed people come first. */
export const AIRFRAME_CAUTIONS = {
  clean: {
    text: "Frost, ice or snow on wing, tail, control surfaces, propeller, windshield or instrument ports: no take-off until it is all off. There is no such thing as a little frost; it is not to be polished smooth either.",
    source: "14 CFR 91.527(a); Canadian Aviation Regulations 602.11; Transport Canada TP 10643",
  },
  underTank: {
    text: "Frost under the wing at cold fuel tanks is accepted only where the authority and the aircraft's maker say so.",
    source: "14 CFR 91.527(a); Canadian Aviation Regulations 602.11",
  },
  inspect: {
    text: "A forecast is no inspection: look and feel with the bare hand, in light, just before take-off, whatever is shown here.",
    source: "critical surface inspection, Canadian standard 622.11; use of the hand from memory",
  },
  rough: {
    text: "Roughness of 0.4 mm already takes much lift and adds drag; clear ice and thin frost are hard to see.",
    source: "Transport Canada TP 14052 1.3",
  },
  coverSweats: {
    text: "Wings sweat under covers and covers freeze to wings: fit them dry on a clean dry wing, take them off in time, look underneath.",
    source: "Transport Canada TP 10643 ch. 4, Wing Covers",
  },
  dryBeforeOut: {
    text: "Be sure it is completely dry before it goes out: pooled water freezes again on critical surfaces and in critical places.",
    source: "Transport Canada TP 10643 ch. 4, Wing Covers",
  },
  hinges: {
    text: "Water left in hinges, control gaps, trim, valves, switches, landing gear and static ports freezes and blocks them. Blow or wipe them out, move every control and the trim full travel before going out and again before take-off, and check ports and drain holes.",
    source:
      "FAA aviation maintenance technician handbook after AC 120-60 (freezing in controls, hinges, valves, switches); the rest common practice, no published source",
  },
  coolBeforeSnow: {
    text: "With snow or rain outside, bring the skin below freezing first (doors open) or it will melt the snow and the water will freeze on.",
    source: TP_10643_HANGARS,
  },
  warmFuel: {
    text: "Fuel warmed in the hangar keeps the skin over a tank warm long after roll-out and melts snow on it; open doors hardly cool it. Better not hangar with much fuel in the wing when snow is about.",
    source: TP_10643_HANGARS,
  },
  brushFirst: {
    text: "Brush or pull off loose snow before it comes in: melting it costs hours and wets the hangar.",
    source: "common practice, no published source",
  },
  gentleHeat: {
    text: "Warm air no hotter than the hand bears; never hot air or water straight on a cold windshield: it crazes or cracks.",
    source: "US Army CRREL TR-02-13 p. 117; US Army TM 1-1500-204-23-1",
  },
  hangarVapour: {
    text: "Fans and heaters that can spark stay out of the zone up to 0.45 m above the floor and 1.5 m around engines and tanks.",
    source: "NFPA 70 (NEC) Art. 513.3",
  },
  carbonMonoxide: {
    text: "A burner without a flue fills a closed hangar with carbon monoxide and water; run it outside and duct the air in.",
    source: "US Army TM 1-1500-204-23-9 (never run inside a structure)",
  },
  clearIce: {
    text: "Rain on a skin or fuel below 0 °C freezes to clear ice that cannot be seen: feel for it.",
    source: "Transport Canada TP 14052 1.3 (ice in air well above 0 °C over cold fuel)",
  },
  climbColder: {
    text: "Free controls on the ground prove little: what is still liquid may freeze after minutes in colder air. If a control or trim stiffens, do not force it; go down into air above 0 °C.",
    source: "common practice, no published source; the aircraft's handbook decides",
  },
} as const satisfies Record<string, Caution>;
