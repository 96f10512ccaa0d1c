/** Findings: what must hold for a start: titles, reasons, what a margin means. Code to its values; keys carry their unit. */
export type CriteriaFindings = Record<never, never>;
