import * as wasm from "./wasm-code.js";

// The machine code of a kernel: a loop over passes, in it loops over members, in these the statements.

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

export type Statement =
  | { readonly to: "kept" | "row"; readonly index: number; readonly term: Term }
  | FindStatement;

interface FindStatement {
  readonly to: "place";
  readonly index: number;
  /** Whose whole number is the index among the shared ones of operand `of`. */
  readonly term: Term;
  readonly of: number;
}

/** A kernel as it was written down. */
export interface KernelRecord {
  /** In the order in which a list tells the operands. */
  readonly kinds: readonly OperandKind[];
  readonly scalars: number;
  readonly statements: readonly Statement[];
  /** How many terms are kept, and how many places found. */
  readonly kept: number;
  readonly found: number;
}

/** Bytes of a number. */
export const WORD = 8;

/** The parameters (list, count, vector, bytes, ...scalars) of a kernel's "run". */
const [LIST, COUNT, VECTOR, BYTES] = [0, 1, 2, 3];
const FIRST_SCALAR = 4;

/** Where the locals begin that come after the parameters. */
interface Locals {
  readonly listEnd: number;
  readonly member: number;
  readonly firstPlace: number;
  readonly firstFound: number;
  readonly keptTwo: number;
  readonly keptOne: number;
}

function localsOf({ kinds, scalars, kept, found }: KernelRecord): Locals {
  const listEnd = FIRST_SCALAR + scalars;
  const member = listEnd + 1;
  const firstPlace = member + 1;
  const firstFound = firstPlace + kinds.length;
  const keptTwo = firstFound + 2 * found;
  return { listEnd, member, firstPlace, firstFound, keptTwo, keptOne: keptTwo + kept };
}

/** The module whose "run" goes through all passes and members. */
export function kernelBytes(record: KernelRecord): Uint8Array {
  const { kinds, scalars, statements, kept, found } = record;
  const locals = localsOf(record);
  const { listEnd, firstPlace, member } = locals;
  const of = (lanes: Lanes, offset: number) => codeOf(statements, { locals, lanes, offset });
  const passes = wasm.whileLoop(isBefore(LIST, wasm.localGet(listEnd)), [
    ...kinds.flatMap((kind, index) => [
      ...wasm.localGet(LIST),
      ...wasm.i32Load(4 * index),
      ...(kind === "vector-row" ? [...wasm.localGet(VECTOR), ...wasm.i32Add] : []),
      ...wasm.localSet(firstPlace + index),
    ]),
    ...[...wasm.i32Const(0), ...wasm.localSet(member)],
    ...members(member, 4 * WORD, [...of("two", 0), ...of("two", 2 * WORD)]),
    ...members(member, 2 * WORD, of("two", 0)),
    ...members(member, WORD, of("one", 0)),
    ...increased(LIST, 4 * kinds.length),
  ]);
  const end = [...wasm.localGet(COUNT), ...wasm.i32Const(4 * kinds.length), ...wasm.i32Mul];
  return wasm.moduleBytes({
    parameters: [wasm.I32, wasm.I32, wasm.I32, wasm.I32, ...Array.from({ length: scalars }, () => wasm.F64)],
    locals: [
      [2 + kinds.length + 2 * found, wasm.I32],
      [kept, wasm.V128],
      [kept, wasm.F64],
    ],
    code: [...[...wasm.localGet(LIST), ...end, ...wasm.i32Add, ...wasm.localSet(listEnd)], ...passes],
  });
}

/** As many members at a time as `width` bytes hold, for as long as there are so many left. */
function members(member: number, width: number, each: readonly number[]): number[] {
  const whole = [...wasm.localGet(BYTES), ...wasm.i32Const(-width), ...wasm.i32And];
  return wasm.whileLoop(isBefore(member, whole), [...each, ...increased(member, width)]);
}

type Lanes = "one" | "two";

/** Where code is put: for how many members at a time, and how many bytes after the member's own place. */
interface Place {
  readonly locals: Locals;
  readonly lanes: Lanes;
  readonly offset: number;
}

function codeOf(statements: readonly Statement[], place: Place): number[] {
  const { locals, lanes, offset } = place;
  return statements.flatMap((statement) => {
    const { to, index, term } = statement;
    const value = codeOfTerm(term, place);
    if (to === "place") return placesFound(statement, value, place);
    if (to === "kept") return [...value, ...wasm.localSet(keptLocal(place) + index)];
    const store = lanes === "two" ? wasm.v128Store(offset) : wasm.f64Store(offset);
    return [...memberOf(index, locals), ...value, ...store];
  });
}

/** Addresses from an index, for each lane its own. */
function placesFound(
  { index, of }: FindStatement,
  value: readonly number[],
  { locals, lanes }: Place,
): number[] {
  const { firstPlace, firstFound } = locals;
  const address = (lane: number, own: readonly number[]) => [
    ...[...own, ...wasm.i32FromF64, ...wasm.i32Const(WORD), ...wasm.i32Mul],
    ...[...wasm.localGet(firstPlace + of), ...wasm.i32Add, ...wasm.localSet(firstFound + 2 * index + lane)],
  ];
  if (lanes === "one") return address(0, value);
  return [0, 1].flatMap((lane) => address(lane, [...value, ...wasm.f64x2Extract(lane)]));
}

function codeOfTerm(term: Term, place: Place): number[] {
  const { locals, lanes, offset } = place;
  const two = lanes === "two";
  switch (term.op) {
    case "operand":
      if (term.kind === "shared") return codeOfTerm({ op: "shared", index: term.index, offset: 0 }, place);
      return [...memberOf(term.index, locals), ...(two ? wasm.v128Load(offset) : wasm.f64Load(offset))];
    case "shared": {
      const load = (two ? wasm.v128LoadSplat : wasm.f64Load)(WORD * term.offset);
      return [...wasm.localGet(locals.firstPlace + term.index), ...load];
    }
    case "entry": {
      const found = locals.firstFound + 2 * term.place;
      const first = [...wasm.localGet(found), ...wasm.f64Load(WORD * term.offset)];
      if (!two) return first;
      const second = wasm.v128LoadSecond(WORD * term.offset);
      return [...wasm.localGet(found + 1), ...first, ...wasm.f64x2Splat, ...second];
    }
    case "scalar":
      return [...wasm.localGet(FIRST_SCALAR + term.index), ...(two ? wasm.f64x2Splat : [])];
    case "number":
      return [...wasm.f64Const(term.value), ...(two ? wasm.f64x2Splat : [])];
    case "kept":
      return wasm.localGet(keptLocal(place) + term.index);
    default:
      return [...term.terms.flatMap((one) => codeOfTerm(one, place)), ...wasm.ARITHMETIC[term.op][lanes]];
  }
}

function keptLocal({ locals, lanes }: Place): number {
  return lanes === "two" ? locals.keptTwo : locals.keptOne;
}

function memberOf(operand: number, { firstPlace, member }: Locals): number[] {
  return [...wasm.localGet(firstPlace + operand), ...wasm.localGet(member), ...wasm.i32Add];
}

function isBefore(index: number, end: readonly number[]): number[] {
  return [...wasm.localGet(index), ...end, ...wasm.i32LessThan];
}

function increased(index: number, by: number): number[] {
  return [...wasm.localGet(index), ...wasm.i32Const(by), ...wasm.i32Add, ...wasm.localSet(index)];
}
