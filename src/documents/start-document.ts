import type { StartBriefing } from "../starting/index.js";
import type { StartDocument } from "./result-schema.js";

/** What to know at the start, as it is stored, exchanged and shown. */
export function startDocument({ notes }: StartBriefing): StartDocument {
  return {
    notes: notes.map(({ topic, text, cautions }) => ({ topic, text, cautions: [...cautions] })),
  };
}
