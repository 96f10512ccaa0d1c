/** Findings: what to take care of beside a number. Code to its values; keys carry their unit. */
export type CautionsFindings = Record<never, never>;
