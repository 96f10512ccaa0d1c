/** Findings: how winters and kits are compared. Code to its values; keys carry their unit. */
export type WinterFindings = Record<never, never>;
