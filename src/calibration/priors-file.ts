import { lowerCholesky } from "../numerics/index.js";
import type { MeasuredRun } from "./measured-run.js";
import type { Population } from "./population.js";
import { POPULATION } from "./unknowns.js";

/** Text of src/aircraft/calibrated.ts: what engines and nights are like, and on which runs that rests. */
export function priorsFile(runs: readonly MeasuredRun[], population: Population): string {
  const n = POPULATION.length;
  const root = lowerCholesky(population.covariance, n);
  const engines = [...new Set(runs.map((run) => run.aircraft.described_as))].sort().map((id) => {
    const of = runs.filter((run) => run.aircraft.described_as === id);
    return [id, { runs: of.length, aircraft: new Set(of.map((run) => run.aircraft.id)).size }] as const;
  });
  const numbers = (of: ArrayLike<number>) => `[${Array.from(of, rounded).join(", ")}]`;
  return [
    "// Written by `npm run calibrate` from data/measured-runs; do not change it by hand.",
    "",
    "/** ln(multiplier) of an engine and a night that nobody knows yet: mean + factor z, z standard normal. */",
    "export const CALIBRATED = {",
    `  names: ${JSON.stringify(POPULATION)},`,
    `  mean: [${Array.from(population.mean, (value) => Number(value.toFixed(2)) + 0).join(", ")}],`,
    "  /** Rows of the lower-triangular root of the covariance: between aircraft, between nights, and of the mean itself. */",
    "  factor: [",
    ...POPULATION.map((_, i) => `    ${numbers(root.subarray(i * n, (i + 1) * n))},`),
    "  ],",
    "  /** Standard deviations between aircraft of a class, and of one aircraft from night to night. */",
    `  between_aircraft: ${numbers(population.betweenAircraft)},`,
    `  between_nights: ${numbers(population.betweenNights)},`,
    "  /** [K] by which readings are off beside all that. */",
    `  model_error_k: ${rounded(population.modelError)},`,
    "  /** Measured runs, and how many aircraft they are of, by the installation that describes them. */",
    `  engines: ${JSON.stringify(Object.fromEntries(engines))} as Readonly<Record<string, RestsOn>>,`,
    "} as const;",
    "",
    "export interface RestsOn {",
    "  readonly runs: number;",
    "  readonly aircraft: number;",
    "}",
    "",
  ].join("\n");
}

const rounded = (value: number) => String(Number(value.toFixed(3)) + 0);
