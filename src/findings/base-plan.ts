/** Findings: why an aircraft of a base does what it does. Code to its values; keys carry their unit. */
export type BasePlanFindings = Record<never, never>;
