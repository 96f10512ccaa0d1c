import type { Said, SaidCaution } from "../../src/findings/index.js";
import { english } from "../../src/words/index.js";

/** In English, with plain spaces. */
export function plain(said: Said | SaidCaution): string {
  return english(said).replaceAll("\u00a0", " ");
}
