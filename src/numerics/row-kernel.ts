import { kernelBytes, type OperandKind, type Statement, type Term } from "./row-kernel-code.js";

export { type OperandKind, type Term, WORD } from "./row-kernel-code.js";

// Loops over the members of an ensemble, written as formulas and run as WebAssembly, two members at a time. V8's own code
// for the same loops over typed arrays takes three to five times as long (docs/decisions/0009-loops-in-webassembly.md).

export interface Statements {
  /** Works `term` out once, for use in several formulas. */
  keep(term: Term): Term;
  /** Finds the shared number at `index` (a whole number, other ones for other members): `offset` counts from there. */
  find(shared: Term, index: Term): (offset: number) => Term;
  /** Writes `term` into a row. */
  set(row: Term, term: Term): void;
}

/** A loop that can be bound to a memory (`row-memory.ts`). */
export interface RowKernel {
  /** Numbers [i32] that tell the operands of one pass. */
  readonly operands: number;
  /** Of the module whose "run" has the parameters (list, count, vector, bytes, ...scalars). */
  readonly bytes: Uint8Array;
}

export const num = (value: number): Term => ({ op: "number", value });
export const add = (first: Term, ...more: readonly Term[]): Term =>
  more.reduce((sum, term) => ({ op: "add", terms: [sum, term] }), first);
export const sub = (a: Term, b: Term): Term => ({ op: "subtract", terms: [a, b] });
export const mul = (first: Term, ...more: readonly Term[]): Term =>
  more.reduce((product, term) => ({ op: "multiply", terms: [product, term] }), first);
export const div = (a: Term, b: Term): Term => ({ op: "divide", terms: [a, b] });
export const min = (a: Term, b: Term): Term => ({ op: "min", terms: [a, b] });
export const max = (a: Term, b: Term): Term => ({ op: "max", terms: [a, b] });
export const sqrt = (a: Term): Term => ({ op: "squareRoot", terms: [a] });
export const abs = (a: Term): Term => ({ op: "absolute", terms: [a] });
export const neg = (a: Term): Term => ({ op: "negate", terms: [a] });
export const floor = (a: Term): Term => ({ op: "floor", terms: [a] });

/** Of numbers that all members share: the one so many after the first. */
export function shared(operand: Term, offset: number): Term {
  return { op: "shared", index: indexOfShared(operand), offset };
}

function indexOfShared(operand: Term): number {
  if (operand.op !== "operand" || operand.kind !== "shared")
    throw new TypeError("invalid operand: expected one that is shared");
  return operand.index;
}

/**
 * A kernel that goes through a list of passes, each with its own operands, and in each through all members.
 * @param operands in the order in which a list tells them
 * @param scalars numbers that come with the call
 * @param body writes down what is done with one member
 */
export function rowKernel<O extends string, S extends string = never>(
  operands: Readonly<Record<O, OperandKind>>,
  scalars: readonly S[],
  body: (terms: Readonly<Record<O | S, Term>>, statements: Statements) => void,
): RowKernel {
  const kinds = Object.values<OperandKind>(operands);
  const terms: Record<string, Term> = {};
  Object.entries<OperandKind>(operands).forEach(([name, kind], index) => {
    terms[name] = { op: "operand", index, kind };
  });
  scalars.forEach((name, index) => {
    terms[name] = { op: "scalar", index };
  });
  const written = createStatements();
  body(terms as Record<O | S, Term>, written);
  return {
    operands: kinds.length,
    bytes: kernelBytes({ kinds, scalars: scalars.length, ...written.record() }),
  };
}

/** Statements that are written down as they are said. */
function createStatements() {
  const statements: Statement[] = [];
  let kept = 0;
  let found = 0;
  return {
    keep(term: Term): Term {
      statements.push({ to: "kept", index: kept, term });
      return { op: "kept", index: kept++ };
    },
    find(operand: Term, index: Term) {
      const place = found++;
      statements.push({ to: "place", index: place, term: index, of: indexOfShared(operand) });
      return (offset: number): Term => ({ op: "entry", place, offset });
    },
    set(row: Term, term: Term): void {
      if (row.op !== "operand" || row.kind === "shared")
        throw new TypeError("invalid row: expected an operand that is a row");
      statements.push({ to: "row", index: row.index, term });
    },
    record: () => ({ statements, kept, found }),
  };
}
