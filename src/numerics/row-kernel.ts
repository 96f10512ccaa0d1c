import * as wasm from "./wasm-code.js";

// Loops over the members of an ensemble, written as formulas and run as WebAssembly, two members at a time. V8's own code
// for the same loops over typed arrays takes three to five times as long (docs/decisions/0009-loops-in-webassembly.md).

/** How an operand is told for one pass of a kernel: */
export type OperandKind =
  /** a row, one number a member, by its place in the memory; */
  | "row"
  /** a row of a vector, by its place in the vector, whose own place comes with the call; */
  | "vector-row"
  /** numbers that all members share, by the place of the first in the memory. */
  | "shared";

/** A formula in a kernel's operands and scalars. */
export type Term =
  | { readonly op: "operand"; readonly index: number; readonly kind: OperandKind }
  /** The shared number so many after the first, or so many after a place found among them. */
  | { readonly op: "shared"; readonly index: number; readonly offset: number }
  | { readonly op: "entry"; readonly place: number; readonly offset: number }
  | { readonly op: "scalar"; readonly index: number }
  | { readonly op: "number"; readonly value: number }
  | { readonly op: "kept"; readonly index: number }
  | { readonly op: keyof typeof wasm.ARITHMETIC; readonly terms: readonly Term[] };

export interface Statements {
  /** Works `term` out once, for use in several formulas. */
  keep(term: Term): Term;
  /** Finds the shared number at `index` (a whole number, other ones for other members): `offset` counts from there. */
  find(shared: Term, index: Term): (offset: number) => Term;
  /** Writes `term` into a row. */
  set(row: Term, term: Term): void;
}

type Statement = { readonly to: "kept" | "row"; readonly index: number; readonly term: Term } | FindStatement;

interface FindStatement {
  readonly to: "place";
  readonly index: number;
  /** Whose whole number is the index among the shared ones of operand `of`. */
  readonly term: Term;
  readonly of: number;
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

/** Bytes of a number. */
export const WORD = 8;

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
  const kinds = Object.entries<OperandKind>(operands);
  const terms: Record<string, Term> = {};
  kinds.forEach(([name, kind], index) => {
    terms[name] = { op: "operand", index, kind };
  });
  scalars.forEach((name, index) => {
    terms[name] = { op: "scalar", index };
  });
  const statements: Statement[] = [];
  let kept = 0;
  let found = 0;
  body(terms as Record<O | S, Term>, {
    keep(term) {
      statements.push({ to: "kept", index: kept, term });
      return { op: "kept", index: kept++ };
    },
    find(operand, index) {
      const place = found++;
      statements.push({ to: "place", index: place, term: index, of: indexOfShared(operand) });
      return (offset) => ({ op: "entry", place, offset });
    },
    set(row, term) {
      if (row.op !== "operand" || row.kind === "shared")
        throw new TypeError("invalid row: expected an operand that is a row");
      statements.push({ to: "row", index: row.index, term });
    },
  });

  const [list, count, vector, bytes] = [0, 1, 2, 3];
  const firstScalar = 4;
  const listEnd = firstScalar + scalars.length;
  const member = listEnd + 1;
  const firstPlace = member + 1;
  const firstFound = firstPlace + kinds.length;
  const keptTwo = firstFound + 2 * found;
  const keptOne = keptTwo + kept;

  const passes = wasm.whileLoop(isBefore(list, wasm.localGet(listEnd)), [
    ...kinds.flatMap(([, kind], index) => [
      ...wasm.localGet(list),
      ...wasm.i32Load(4 * index),
      ...(kind === "vector-row" ? [...wasm.localGet(vector), ...wasm.i32Add] : []),
      ...wasm.localSet(firstPlace + index),
    ]),
    ...[...wasm.i32Const(0), ...wasm.localSet(member)],
    ...members(4 * WORD, [...codeOf("two", 0), ...codeOf("two", 2 * WORD)]),
    ...members(2 * WORD, codeOf("two", 0)),
    ...members(WORD, codeOf("one", 0)),
    ...increased(list, 4 * kinds.length),
  ]);
  const end = [...wasm.localGet(count), ...wasm.i32Const(4 * kinds.length), ...wasm.i32Mul];
  const code = [...[...wasm.localGet(list), ...end, ...wasm.i32Add, ...wasm.localSet(listEnd)], ...passes];
  const parameters = [wasm.I32, wasm.I32, wasm.I32, wasm.I32, ...scalars.map(() => wasm.F64)];
  const locals = [
    [2 + kinds.length + 2 * found, wasm.I32],
    [kept, wasm.V128],
    [kept, wasm.F64],
  ] as const;
  return { operands: kinds.length, bytes: wasm.moduleBytes({ parameters, locals, code }) };

  /** As many members at a time as `width` bytes hold, for as long as there are so many left. */
  function members(width: number, each: readonly number[]): number[] {
    const whole = [...wasm.localGet(bytes), ...wasm.i32Const(-width), ...wasm.i32And];
    return wasm.whileLoop(isBefore(member, whole), [...each, ...increased(member, width)]);
  }

  function codeOf(lanes: "one" | "two", offset: number): number[] {
    return statements.flatMap((statement) => {
      const { to, index, term } = statement;
      const value = codeOfTerm(term, lanes, offset);
      if (to === "place") return placesFound(statement, value, lanes);
      if (to === "kept") return [...value, ...wasm.localSet((lanes === "two" ? keptTwo : keptOne) + index)];
      const store = lanes === "two" ? wasm.v128Store(offset) : wasm.f64Store(offset);
      return [...memberOf(index), ...value, ...store];
    });
  }

  /** Addresses from an index, for each lane its own. */
  function placesFound(
    { index, of }: FindStatement,
    value: readonly number[],
    lanes: "one" | "two",
  ): number[] {
    const address = (lane: number, own: readonly number[]) => [
      ...[...own, ...wasm.i32FromF64, ...wasm.i32Const(WORD), ...wasm.i32Mul],
      ...[...wasm.localGet(firstPlace + of), ...wasm.i32Add, ...wasm.localSet(firstFound + 2 * index + lane)],
    ];
    if (lanes === "one") return address(0, value);
    return [0, 1].flatMap((lane) => address(lane, [...value, ...wasm.f64x2Extract(lane)]));
  }

  function codeOfTerm(term: Term, lanes: "one" | "two", offset: number): number[] {
    const two = lanes === "two";
    switch (term.op) {
      case "operand":
        if (term.kind === "shared")
          return codeOfTerm({ op: "shared", index: term.index, offset: 0 }, lanes, offset);
        return [...memberOf(term.index), ...(two ? wasm.v128Load(offset) : wasm.f64Load(offset))];
      case "shared": {
        const load = (two ? wasm.v128LoadSplat : wasm.f64Load)(WORD * term.offset);
        return [...wasm.localGet(firstPlace + term.index), ...load];
      }
      case "entry": {
        const place = firstFound + 2 * term.place;
        const first = [...wasm.localGet(place), ...wasm.f64Load(WORD * term.offset)];
        if (!two) return first;
        const second = wasm.v128LoadSecond(WORD * term.offset);
        return [...wasm.localGet(place + 1), ...first, ...wasm.f64x2Splat, ...second];
      }
      case "scalar":
        return [...wasm.localGet(firstScalar + term.index), ...(two ? wasm.f64x2Splat : [])];
      case "number":
        return [...wasm.f64Const(term.value), ...(two ? wasm.f64x2Splat : [])];
      case "kept":
        return wasm.localGet((two ? keptTwo : keptOne) + term.index);
      default:
        return [
          ...term.terms.flatMap((one) => codeOfTerm(one, lanes, offset)),
          ...wasm.ARITHMETIC[term.op][lanes],
        ];
    }
  }

  function memberOf(operand: number): number[] {
    return [...wasm.localGet(firstPlace + operand), ...wasm.localGet(member), ...wasm.i32Add];
  }
}

function isBefore(index: number, end: readonly number[]): number[] {
  return [...wasm.localGet(index), ...end, ...wasm.i32LessThan];
}

function increased(index: number, by: number): number[] {
  return [...wasm.localGet(index), ...wasm.i32Const(by), ...wasm.i32Add, ...wasm.localSet(index)];
}
