import { eachOnce, keyOf, type SaidCaution, sourced } from "../findings/index.js";

/** What to be careful about, and who says so. */
export type Caution = SaidCaution;

const TP_10643_HANGARS = "Transport Canada TP 10643 ch. 4, Hangars";

/** Cautions that stand beside the numbers of this folder, the first needed first; handbook, maker, local code and licensed people come before them. */
export const AIRFRAME_CAUTIONS = {
  carbonMonoxide: sourced(
    "burner-without-flue",
    {},
    "US Army TM 1-1500-204-23-9 (never run inside a structure)",
  ),
  hinges: sourced(
    "water-in-hinges",
    {},
    "FAA aviation maintenance technician handbook after AC 120-60 (freezing in controls, hinges, valves, switches); the rest common practice, no published source",
  ),
  clearIce: sourced(
    "clear-ice",
    {},
    "Transport Canada TP 14052 1.3 (ice in air well above 0 °C over cold fuel)",
  ),
  coolBeforeSnow: sourced("cool-before-snow", {}, TP_10643_HANGARS),
  warmFuel: sourced("warm-fuel", {}, TP_10643_HANGARS),
  climbColder: sourced(
    "colder-climb",
    {},
    "common practice, no published source; the aircraft's handbook decides",
  ),
  clean: sourced(
    "clean-wing",
    {},
    "14 CFR 91.527(a); Canadian Aviation Regulations 602.11; Transport Canada TP 10643",
  ),
  inspect: sourced(
    "look-and-feel",
    {},
    "critical surface inspection, Canadian standard 622.11; use of the hand from memory",
  ),
  coverSweats: sourced("sweating-cover", {}, "Transport Canada TP 10643 ch. 4, Wing Covers"),
  rough: sourced("roughness", {}, "Transport Canada TP 14052 1.3"),
  underTank: sourced("frost-under-tank", {}, "14 CFR 91.527(a); Canadian Aviation Regulations 602.11"),
  dryBeforeOut: sourced("dry-before-out", {}, "Transport Canada TP 10643 ch. 4, Wing Covers"),
  brushFirst: sourced("brush-first", {}, "common practice, no published source"),
  gentleHeat: sourced("gentle-heat", {}, "US Army CRREL TR-02-13 p. 117; US Army TM 1-1500-204-23-1"),
  hangarVapour: sourced("hangar-sparks", {}, "NFPA 70 (NEC) Art. 513.3"),
};

/** Each caution once, the first needed first; what a course alone calls for comes last. */
export function inOrderOfNeed(cautions: readonly Caution[]): Caution[] {
  const known = Object.values(AIRFRAME_CAUTIONS).map(keyOf);
  const rank = (caution: Caution) => {
    const at = known.indexOf(keyOf(caution));
    return at < 0 ? known.length : at;
  };
  return eachOnce(cautions).toSorted((a, b) => rank(a) - rank(b));
}
