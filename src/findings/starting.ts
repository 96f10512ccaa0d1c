/** Findings: cranking, battery, fuel, clearances and moisture before a start. Code to its values; keys carry their unit. */
export type StartingFindings = Record<never, never>;
