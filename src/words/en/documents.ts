import type { DocumentsFindings } from "../../findings/index.js";
import type { Phrases } from "../phrases.js";

export const documents: Phrases<DocumentsFindings> = {
  "own-words": ({ text }) => text,
  "of-aircraft": ({ name, finding }, say) => `${name}: ${say.finding(finding)}`,
};
