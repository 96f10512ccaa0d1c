/** Findings: what the weather's sources left open. Code to its values; keys carry their unit. */
export type WeatherFindings = Record<never, never>;
