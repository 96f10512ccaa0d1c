import type { Configuration } from "../../src/aircraft/index.js";
import type { SolveResult } from "../../src/solver/index.js";
import type { Network, NetworkValues } from "../../src/thermal/index.js";

export interface Case {
  readonly installation: string;
  readonly heaters: readonly string[];
  readonly covers: readonly string[];
}

/** Where the cases find the package: its sources or its built folders. */
export type Library = Pick<
  typeof import("../../src/aircraft/index.js"),
  "coverById" | "heaterById" | "installationById" | "installationNetwork"
> &
  Pick<
    typeof import("../../src/simulation/index.js"),
    "centralDraws" | "configurationAt" | "prepareRun" | "timelineOf"
  > &
  Pick<typeof import("../../src/properties/index.js"), "GENERIC_OILS">;

export interface Problem<C> {
  readonly name: string;
  readonly network: Network;
  /** [m2/s] at 40 and 100 °C */
  readonly oil: { readonly nu40: number; readonly nu100: number };
  readonly valuesIn: (configuration: C) => NetworkValues;
  readonly writeInputs: (configuration: C, t: number, out: Float64Array) => void;
  readonly configurationAt: (t: number) => C;
  /** [s] start, jumps and end. */
  readonly bounds: readonly number[];
  readonly initial: ArrayLike<number> & Iterable<number>;
  readonly sampleTimes: Iterable<number>;
}

/** Plain data; its fields are what integrate.py and benchmarks/problem-file.mjs read. */
export interface Description {
  readonly name: string;
  readonly parts: readonly { readonly name: string }[];
  readonly links: readonly { readonly law: string }[];
  readonly stretches: readonly {
    readonly from: number;
    readonly to: number;
    readonly configuration: number;
    readonly inputsFrom: readonly number[];
    readonly inputsTo: readonly number[];
  }[];
  readonly configurations: readonly {
    readonly conductance: readonly number[];
    readonly power: readonly number[];
  }[];
}

export const DURATION: number;
export const CASES: readonly Case[];

export function referenceRun(
  one: Case,
  library: Library,
  sampleTimes: readonly number[],
): { readonly description: Description; readonly advance: (tolerance: number) => SolveResult };

export function describeProblem<C = Configuration>(problem: Problem<C>): Description;

export function greatestDifference(one: ArrayLike<number>, other: ArrayLike<number>): number;
