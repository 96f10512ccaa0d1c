import pc from "picocolors";
import type { StampDocument, WindUnit } from "../index.js";
import { type Say, type Speak, sayIn, speaker } from "../words/index.js";
import { clock } from "./text/clock.js";

/** How text is to look on this terminal. */
export interface Style {
  readonly colors: ReturnType<typeof pc.createColors>;
  /** Whether letters beyond ASCII can be shown. */
  readonly unicode: boolean;
  readonly units: "c" | "f";
  readonly wind: WindUnit;
  /** Everything is wanted, not only the first screen. */
  readonly all: boolean;
  readonly width: number;
  /** Findings in words. */
  readonly say: Speak;
  /** Values in words. */
  readonly values: Say;
}

/** What the user asked for of the looks. */
export interface Looks {
  readonly units?: "c" | "f";
  readonly windUnits?: WindUnit;
  readonly all?: boolean;
}

export interface Terminal {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly isTty: boolean;
}

/** [characters] of every line of text output. */
const WIDTH = 80;

export function styleFor(
  { env, isTty }: Terminal,
  { units = "c", windUnits = "mps", all = false }: Looks = {},
): Style {
  const colors = pc.createColors(wantsColor(env, isTty));
  const of = { temp: units, wind: windUnits };
  const say = speaker(of);
  const values = sayIn("en", of, say);
  return { colors, unicode: isUtf8(env), units, wind: windUnits, all, width: WIDTH, say, values };
}

/** The same words where clock times of another day than this one's are told with it. */
export function speakingOn(beside: StampDocument, { units, wind }: Style): Speak {
  return speaker({ temp: units, wind }, "en", undefined, { clock: (time) => clock({ time }, beside) });
}

/** Colour only on a terminal that has it, never with NO_COLOR (no-color.org). */
function wantsColor(env: Terminal["env"], isTty: boolean): boolean {
  if ((env.NO_COLOR ?? "") !== "" || env.TERM === "dumb") return false;
  return isTty;
}

/** The locale decides: the first of LC_ALL, LC_CTYPE and LANG that is set (POSIX, Environment Variables, 8.2). */
function isUtf8(env: Terminal["env"]): boolean {
  const locale = [env.LC_ALL, env.LC_CTYPE, env.LANG].find((value) => value !== undefined && value !== "");
  return /utf-?8/i.test(locale ?? "");
}

const ASCII: readonly (readonly [RegExp, string])[] = [
  [/ ?°([CF])/g, " $1"],
  [/°/g, " deg"],
  [/±/g, "+/-"],
  [/[–—−]/g, "-"],
  [/→/g, "->"],
  [/…/g, "..."],
  [/²/g, "2"],
  [/³/g, "3"],
  [/≥/g, ">="],
  [/≤/g, "<="],
  [/µ/g, "u"],
  [/·/g, "."],
];

/** Text as this terminal can show it. */
export function fitting(text: string, { unicode }: Style): string {
  const spaced = text.replaceAll("\u00a0", " ");
  if (unicode) return spaced;
  const replaced = ASCII.reduce((result, [pattern, plain]) => result.replace(pattern, plain), spaced);
  return [...replaced.normalize("NFD")].map(asciiOf).join("");
}

function asciiOf(letter: string): string {
  if (letter < "\u0080") return letter;
  return /\p{M}/u.test(letter) ? "" : "?";
}
