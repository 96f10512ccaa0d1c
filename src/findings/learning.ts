/** Findings: what a temperature log tells, and what it cannot. Code to its values; keys carry their unit. */
export type LearningFindings = Record<never, never>;
