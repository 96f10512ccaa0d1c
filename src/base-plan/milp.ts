/** A sum over some columns that has to keep between two numbers. */
export interface ProgramRow {
  readonly columns: readonly number[];
  /** Of each of the columns. */
  readonly coefficients: readonly number[];
  /** May be -Infinity. */
  readonly least: number;
  readonly most: number;
}

/** Which columns to take, so that the sum of their costs is least and every row keeps its bounds. */
export interface BinaryProgram {
  readonly costs: readonly number[];
  readonly rows: readonly ProgramRow[];
}

/** What a solver of mixed-integer linear programs answers. */
export interface MilpAnswer {
  /** "optimal" is proven. */
  readonly status: "optimal" | "infeasible" | "stopped";
  /** By column: near 1 where it is taken; empty unless optimal. */
  readonly values: Float64Array;
}

/** Solves a program with no gap left. */
export type SolveMilp = (program: BinaryProgram) => Promise<MilpAnswer>;
