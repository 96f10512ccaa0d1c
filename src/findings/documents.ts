import type { Finding } from "./index.js";

/** Findings: what a document left open and what was taken instead. Code to its values; keys carry their unit. */
export interface DocumentsFindings {
  /** What a user's document says in words of its own. */
  readonly "own-words": { readonly text: string };
  /** What was found of one aircraft of several. */
  readonly "of-aircraft": { readonly name: string; readonly finding: Finding };
}
