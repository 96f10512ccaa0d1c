import { styleFor } from "../../src/cli/style.js";
import { awayText } from "../../src/cli/text/away-text.js";
import { baseText } from "../../src/cli/text/base-text.js";
import { frostText } from "../../src/cli/text/frost-text.js";
import { kitText } from "../../src/cli/text/kit-text.js";
import { planText } from "../../src/cli/text/plan-text.js";
import { simulationText } from "../../src/cli/text/simulation-text.js";
import { thawText } from "../../src/cli/text/thaw-text.js";
import { winterText } from "../../src/cli/text/winter-text.js";
import type { Finding } from "../../src/findings/index.js";
import { english, speaker } from "../../src/words/index.js";
import { nb } from "../../src/words/nb/index.js";

const STYLE = styleFor({ env: { LANG: "C.UTF-8" }, isTty: false }, { all: true });
const norwegian = speaker({ temp: "c", wind: "mps" }, "nb", nb);

const TEXTS = {
  plan: planText,
  simulation: simulationText,
  away: awayText,
  "frost-outlook": frostText,
  "thaw-outlook": thawText,
  "kit-comparison": kitText,
  "winter-study": winterText,
  "base-plan": baseText,
};

/** All that the command line prints of an answer. */
export function printed(answer: object): readonly string[] {
  const { kind } = answer as { readonly kind: keyof typeof TEXTS };
  return (TEXTS[kind] as (of: object, style: typeof STYLE) => string[])(answer, STYLE);
}

/** Every finding in an answer, in words. */
export function inBothLanguages(value: unknown): string[] {
  if (typeof value !== "object" || value === null) return [];
  if ("code" in value && "values" in value) return [english(value as Finding), norwegian(value as Finding)];
  return Object.values(value).flatMap(inBothLanguages);
}
