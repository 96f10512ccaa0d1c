/** Findings: what a heater switch did and what holds it off. Code to its values; keys carry their unit. */
export type SwitchingFindings = Record<never, never>;
