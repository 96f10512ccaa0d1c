/** Findings: why a plan is so, and what would help. Code to its values; keys carry their unit. */
export type PlanningFindings = Record<never, never>;
