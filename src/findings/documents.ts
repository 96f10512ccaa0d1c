/** Findings: what a document left open and what was taken instead. Code to its values; keys carry their unit. */
export type DocumentsFindings = Record<never, never>;
