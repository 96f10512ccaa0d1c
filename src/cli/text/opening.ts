import type { SaidCaution } from "../../findings/index.js";
import type { Style } from "../style.js";
import { DEFERENCE, fact, wrapped } from "./words.js";

/** The first screen of an answer: what to do, in the order in which it is needed, within 24 lines of 80 characters. */
export interface Opening {
  /** One sentence that says it all. */
  readonly verdict: string;
  /** What was asked: aircraft, kit, night. One line. */
  readonly about: string;
  /** Rows of their own, one or two a thing that is answered for. */
  readonly table?: readonly string[];
  /** At most eight, each a label and a short sentence. */
  readonly facts: readonly (readonly [label: string, text: string])[];
  /** The two or three that belong to this kit and this night. */
  readonly cautions: readonly SaidCaution[];
}

/** Most facts and cautions of a first screen. */
const MOST_FACTS = 8;
const MOST_CAUTIONS = 3;

/** The first screen, and behind it everything else where that was asked for. */
export function screen(opening: Opening, rest: () => string[], style: Style): string[] {
  const head = openingLines(opening, style);
  if (style.all) return [...head, "", ...rest(), "", ...wrapped(DEFERENCE, style.width)];
  return [...head, "", ...wrapped("The handbook and the engine maker decide. More: --all", style.width)];
}

function openingLines({ verdict, about, table = [], facts, cautions }: Opening, style: Style): string[] {
  if (facts.length > MOST_FACTS) throw new RangeError(`invalid facts: ${facts.length} (expected at most 8)`);
  return [
    ...wrapped(verdict, style.width).map((line) => style.colors.bold(line)),
    ...wrapped(about, style.width),
    "",
    ...table,
    ...facts.flatMap(([label, text]) => fact(label, text, style)),
    ...cautions
      .slice(0, MOST_CAUTIONS)
      .flatMap((caution) => wrapped(style.say(caution), style.width, "! ", "  ")),
  ];
}
