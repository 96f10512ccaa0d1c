import type { Said } from "../src/findings/index.js";
import { english } from "../src/words/index.js";

/** Findings as English lines, with plain spaces before units. */
export function plainWords(said: readonly Said[]): string {
  return said.map((one) => english(one).replaceAll("\u00a0", " ")).join("\n");
}
