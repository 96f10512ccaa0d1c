import { finding, type SaidCaution } from "../../findings/index.js";
import type { FirstScreen } from "../../first-screen/index.js";
import type { StampDocument } from "../../index.js";
import { type Style, speakingOn } from "../style.js";
import { DEFERENCE, fact, wrapped } from "./words.js";

/** The first screen of an answer: what to do, in the order in which it is needed, within 24 lines of 80 characters. */
export interface Opening {
  /** One sentence that says it all. */
  readonly verdict: string;
  /** What was asked: aircraft, kit, night. One line. */
  readonly about: string;
  /** Rows of their own, one or two a thing that is answered for. */
  readonly table?: readonly string[];
  /** Each a label and a short sentence; without a label more of the one before. */
  readonly facts: readonly (readonly [label: string, text: string])[];
  /** Those that belong to this kit and this night, the gravest first. */
  readonly cautions: readonly SaidCaution[];
}

/** A first screen in words. @param beside whose day clock times are of, unless they are told with another */
export function openingOf(
  { verdict, facts, cautions }: FirstScreen,
  about: string,
  beside: StampDocument,
  style: Style,
): Opening {
  const say = speakingOn(beside, style);
  const told = facts.flatMap(({ label, texts }) =>
    texts.map((text, i) => [i === 0 ? say(finding("label", { of: label })) : "", say(text)] as const),
  );
  return { verdict: verdict.map(say).join(" "), about, facts: told, cautions };
}

/** [lines] of a first screen. */
const SCREEN = 24;
const MOST_CAUTIONS = 3;

/** The first screen, and behind it everything else where that was asked for. */
export function screen(opening: Opening, rest: () => string[], style: Style): string[] {
  const head = openingLines(opening, style);
  const more = wrapped("The handbook and the engine maker decide. More: --all", style.width);
  const first = [
    ...head,
    ...cautionLines(opening.cautions, SCREEN - head.length - 1 - more.length, style),
    "",
  ];
  if (style.all) return [...first, ...rest(), "", ...wrapped(DEFERENCE, style.width)];
  return [...first, ...more];
}

function openingLines({ verdict, about, table = [], facts }: Opening, style: Style): string[] {
  return [
    ...wrapped(verdict, style.width).map((line) => style.colors.bold(line)),
    ...wrapped(about, style.width),
    "",
    ...table,
    ...facts.flatMap(([label, text]) => fact(label, text, style)),
  ];
}

/** Cautions that fit in so many lines, the gravest first and that one always. */
function cautionLines(cautions: readonly SaidCaution[], room: number, style: Style): string[] {
  const told = cautions.map((caution) => wrapped(style.say(caution), style.width, "! ", "  "));
  const kept: string[][] = [];
  for (const lines of told) {
    const isRoom = kept.flat().length + lines.length <= room;
    if (kept.length < MOST_CAUTIONS && (isRoom || kept.length === 0)) kept.push(lines);
  }
  return kept.flat();
}
