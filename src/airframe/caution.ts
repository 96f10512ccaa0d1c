import { eachOnce, keyOf, type SaidCaution } from "../findings/index.js";

/** What to be careful about, and who says so. */
export type Caution = SaidCaution;

const TP_10643_HANGARS = "Transport Canada TP 10643 ch. 4, Hangars";

/** Cautions that stand beside the numbers of this folder, the first needed first; handbook, maker, local code and licensed people come before them. */
export const AIRFRAME_CAUTIONS = {
  carbonMonoxide: {
    text: "A burner without a flue fills a closed hangar with carbon monoxide: never run it inside. Heat with electricity or a flue, or burn outside and duct the air in.",
    source: "US Army TM 1-1500-204-23-9 (never run inside a structure)",
  },
  hinges: {
    text: "Water in hinges, trim, gear or static ports freezes and blocks them: blow it out, and move every control to its stops before going out and before take-off.",
    source:
      "FAA aviation maintenance technician handbook after AC 120-60 (freezing in controls, hinges, valves, switches); the rest common practice, no published source",
  },
  clearIce: {
    text: "Rain on a skin or fuel below freezing turns to clear ice that cannot be seen: feel for it.",
    source: "Transport Canada TP 14052 1.3 (ice in air well above 0 °C over cold fuel)",
  },
  coolBeforeSnow: {
    text: "With snow or rain outside, bring the skin below freezing first (doors open): a warm skin melts the snow, and the water freezes on.",
    source: TP_10643_HANGARS,
  },
  warmFuel: {
    text: "Fuel warmed in the hangar keeps the skin over a tank warm long after roll-out and melts snow on it: better not hangar with much fuel in the wing.",
    source: TP_10643_HANGARS,
  },
  climbColder: {
    text: "Free controls on the ground prove little: what is still liquid may freeze in colder air. If a control or trim stiffens, do not force it; go down into air above freezing.",
    source: "common practice, no published source; the aircraft's handbook decides",
  },
  clean: {
    text: "Frost, ice or snow on wing, tail, controls, propeller, windshield or static ports: no take-off until it is all off. There is no such thing as a little frost; do not polish it smooth.",
    source: "14 CFR 91.527(a); Canadian Aviation Regulations 602.11; Transport Canada TP 10643",
  },
  inspect: {
    text: "A forecast is no inspection: look and feel with the bare hand, in light, just before take-off, whatever is shown here.",
    source: "critical surface inspection, Canadian standard 622.11; use of the hand from memory",
  },
  coverSweats: {
    text: "Wings sweat under covers and covers freeze to wings: fit them dry on a clean dry wing, take them off in time, look underneath.",
    source: "Transport Canada TP 10643 ch. 4, Wing Covers",
  },
  rough: {
    text: "Roughness of 0.4 mm already takes much lift and adds drag; clear ice and thin frost are hard to see.",
    source: "Transport Canada TP 14052 1.3",
  },
  underTank: {
    text: "Frost under the wing at cold fuel tanks is accepted only where the authority and the aircraft's maker say so.",
    source: "14 CFR 91.527(a); Canadian Aviation Regulations 602.11",
  },
  dryBeforeOut: {
    text: "Be sure it is completely dry before it goes out: pooled water freezes again on critical surfaces and in critical places.",
    source: "Transport Canada TP 10643 ch. 4, Wing Covers",
  },
  brushFirst: {
    text: "Brush or pull off loose snow before it comes in: melting it costs hours and wets the hangar.",
    source: "common practice, no published source",
  },
  gentleHeat: {
    text: "Warm the hangar's air, no hotter than the hand bears; never blow hot air or pour hot water on a cold windshield: it crazes or cracks.",
    source: "US Army CRREL TR-02-13 p. 117; US Army TM 1-1500-204-23-1",
  },
  hangarVapour: {
    text: "Fans and heaters that can spark stay out of the zone up to 0.45 m above the floor and 1.5 m around engines and tanks.",
    source: "NFPA 70 (NEC) Art. 513.3",
  },
} as const satisfies Record<string, Caution>;

/** Each caution once, the first needed first; what a course alone calls for comes last. */
export function inOrderOfNeed(cautions: readonly Caution[]): Caution[] {
  const known = Object.values(AIRFRAME_CAUTIONS).map(keyOf);
  const rank = (caution: Caution) => {
    const at = known.indexOf(keyOf(caution));
    return at < 0 ? known.length : at;
  };
  return eachOnce(cautions).toSorted((a, b) => rank(a) - rank(b));
}
