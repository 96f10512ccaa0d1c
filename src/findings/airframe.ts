/** Findings: frost, thaw, drying and freezing again. Code to its values; keys carry their unit. */
export type AirframeFindings = Record<never, never>;
