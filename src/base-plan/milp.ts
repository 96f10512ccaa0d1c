/** What a solver of mixed-integer linear programs answers. */
export interface MilpAnswer {
  /** "optimal" is proven. */
  readonly status: "optimal" | "infeasible" | "stopped";
  /** Values of the variables by name; those left out are 0. */
  readonly values: ReadonlyMap<string, number>;
}

/** Solves a program in CPLEX LP format with no gap left. */
export type SolveMilp = (lp: string) => Promise<MilpAnswer>;
