import type { FaceDocument, FrostOutlookDocument } from "../../index.js";
import type { Style } from "../style.js";
import { mass, massValue, timeBandText } from "./airframe-text.js";
import type { Opening } from "./opening.js";
import { bareWind, clock, day } from "./words.js";

/** The first screen of a frosty night: expected or not, from when, how thick, what a cover does, and the last look. */
export function frostOpening(outlook: FrostOutlookDocument, style: Style): Opening {
  const { name, panel, departure, start, zone, members, cautions } = outlook;
  const [weak, face] = weakest(outlook);
  const by = clock(departure, departure);
  const frost = face.frost_at_departure_kg_per_m2;
  const still = style.values.risk({ share: face.chance_at_departure, members });
  return {
    verdict: verdict(outlook, style),
    about: `${name}, ${panel}; ${day(departure)}, from ${clock(start, departure)} on, times in ${zone}, chances over ${members} cases.`,
    facts: [
      [
        "Frost from",
        face.chance === 0 ? `not by ${by}` : timeBandText(face.first, departure, `not by ${by}`),
      ],
      [
        "How thick",
        `${frostWords(frost.p50)} at ${by}, ${mass(frost.p50)} (${massValue(frost.p05)} to ${massValue(frost.p95)}); still there in ${still} cases`,
      ],
      [
        "Weakest point",
        `${weak} skin, ${style.values.difference(face.most_below_air_k.p50)} below the air at its coldest`,
      ],
      otherFace(outlook, weak, style),
      coverFact(outlook, style),
      ["Weather", weather(outlook, style)],
      ["Last look", lastLook(outlook)],
      ["Somebody must", handwork(outlook)],
    ],
    cautions,
  };
}

/** The first line: the likelier face decides. "None" is never a clearance. */
function verdict(outlook: FrostOutlookDocument, style: Style): string {
  const { departure, members } = outlook;
  const [weak, face] = weakest(outlook);
  const place = weak === "upper" ? "on" : "under";
  const chance = `${style.values.risk({ share: face.chance, members })} cases`;
  const by = clock(departure, departure);
  if (face.verdict === "none")
    return `No frost expected ${place} the wing by ${by} (${chance}): look all the same.`;
  return `Frost ${face.verdict} ${place} the wing by ${by}: ${chance}.`;
}

function weakest({ upper, lower }: FrostOutlookDocument): ["upper" | "lower", FaceDocument] {
  return upper.chance >= lower.chance ? ["upper", upper] : ["lower", lower];
}

export function verdictWords(verdict: FaceDocument["verdict"]): string {
  return verdict === "none" ? "not expected" : verdict;
}

function otherFace({ upper, lower, members }: FrostOutlookDocument, weak: "upper" | "lower", style: Style) {
  const [label, face] = weak === "upper" ? ["Under wing", lower] : ["On the wing", upper];
  return [
    label,
    `${verdictWords(face.verdict)}, ${style.values.risk({ share: face.chance, members })} cases`,
  ] as const;
}

function coverFact({ cover, other, course, members }: FrostOutlookDocument, style: Style): [string, string] {
  const { verdict, chance, frost_at_departure_kg_per_m2: frost } = other.upper;
  const told = `${verdictWords(verdict)} on the wing, ${style.values.risk({ share: chance, members })} cases, ${mass(frost.p50)}`;
  if (cover === null) return ["With cover", told];
  const onCover = course.cover_frost_kg_per_m2?.p50.at(-1);
  return ["Without cover", onCover === undefined ? told : `${told}; on the cover itself ${mass(onCover)}`];
}

function weather({ course, start, departure }: FrostOutlookDocument, style: Style): string {
  const air = course.air_c.p50;
  const coldest = air.indexOf(Math.min(...air));
  const wind = course.wind_mps.p50;
  const hours = course.time_h[coldest] - (departure.at_h - start.at_h);
  const when = hours > -0.5 ? `at ${clock(departure, departure)}` : `${Math.round(-hours)} h before`;
  return `air down to ${style.values.temp(air[coldest])} ${when}; wind at the wing ${bareWind(Math.min(...wind), style)} to ${style.values.wind(Math.max(...wind))}`;
}

/** [kg/m2] an hour from which frost counts as growing: a tenth of what an eye begins to see. Project judgement. */
const GROWING = 0.0005;

function lastLook({ upper, departure, course }: FrostOutlookDocument): string {
  const by = clock(departure, departure);
  const frost = course.upper_frost_kg_per_m2.p50;
  const hourAgo = course.time_h.findLastIndex((h) => h <= course.time_h[course.time_h.length - 1] - 1);
  const grows = upper.chance > 0 && frost[frost.length - 1] - frost[Math.max(0, hourAgo)] >= GROWING;
  const why = grows ? "; frost still grows then" : "";
  return `just before take-off at ${by}, in light, with the bare hand${why}`;
}

function handwork({ upper, lower, cover, other }: FrostOutlookDocument): string {
  if (upper.verdict === "none" && lower.verdict === "none")
    return "look and feel all the same; clear off whatever is there";
  const fit =
    cover === null && other.upper.chance < upper.chance ? "fit a dry cover on a dry wing tonight, or " : "";
  return `${fit}clear all of it off before take-off`;
}

/** [kg/m2] of frost: what an eye begins to see, 0.4 mm of loose frost at 100 kg/m3 (rough, Transport Canada TP 14052 1.3), 2 mm. Project judgement. */
export const HARDLY_SEEN = 0.005;
const ROUGH = 0.04;
const THICK = 0.2;

export function frostWords(kilograms: number): string {
  if (kilograms < HARDLY_SEEN) return "none to see";
  if (kilograms < ROUGH) return "a thin film, hard to see";
  return kilograms < THICK ? "white frost, rough to the hand" : "thick frost";
}
