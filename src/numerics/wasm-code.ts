// Binary form of WebAssembly: just what a module of one function on an imported memory needs. W3C, WebAssembly Core
// Specification 2.0, chapter 5 (modules 5.5, instructions 5.4, numbers as LEB128 5.2.2).

export const I32 = 0x7f;
export const F64 = 0x7c;
export const V128 = 0x7b;

export interface FunctionCode {
  /** Types of the parameters. */
  readonly parameters: readonly number[];
  /** Further locals: how many of which type. */
  readonly locals: readonly (readonly [count: number, type: number])[];
  readonly code: readonly number[];
}

/** Bytes of a module that imports a memory as "host" "memory" and exports the function as "run". */
export function moduleBytes({ parameters, locals, code }: FunctionCode): Uint8Array {
  const declared = [...unsigned(locals.length), ...locals.flatMap(([n, type]) => [...unsigned(n), type])];
  const body = [...declared, ...code, END];
  return Uint8Array.from([
    ...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    ...section(1, [1, 0x60, ...unsigned(parameters.length), ...parameters, 0]),
    ...section(2, [1, ...text("host"), ...text("memory"), 0x02, 0x00, 0x01]),
    ...section(3, [1, 0]),
    ...section(7, [1, ...text("run"), 0x00, 0]),
    ...section(10, [1, ...unsigned(body.length), ...body]),
  ]);
}

const END = 0x0b;
const BLOCK_WITHOUT_RESULT = 0x40;
/** Accesses are told to be aligned to 4 bytes (2^2) or 8 (2^3). */
const ALIGN_4 = 2;
const ALIGN_8 = 3;

export const localGet = (index: number) => [0x20, ...unsigned(index)];
export const localSet = (index: number) => [0x21, ...unsigned(index)];
export const i32Const = (value: number) => [0x41, ...signed(value)];
export const i32Add = [0x6a];
export const i32Mul = [0x6c];
export const i32And = [0x71];
export const i32LessThan = [0x49];
export const i32Load = (offset: number) => [0x28, ALIGN_4, ...unsigned(offset)];
export const f64Const = (value: number) => [0x44, ...new Uint8Array(Float64Array.of(value).buffer)];
export const f64Load = (offset: number) => [0x2b, ALIGN_8, ...unsigned(offset)];
export const f64Store = (offset: number) => [0x39, ALIGN_8, ...unsigned(offset)];
export const v128Load = (offset: number) => [...vector(0x00), ALIGN_8, ...unsigned(offset)];
export const v128Store = (offset: number) => [...vector(0x0b), ALIGN_8, ...unsigned(offset)];
/** Loads one number into both lanes. */
export const v128LoadSplat = (offset: number) => [...vector(0x0a), ALIGN_8, ...unsigned(offset)];
/** The number on the stack into both lanes. */
export const f64x2Splat = vector(0x14);

/** The number of a lane. */
export const f64x2Extract = (lane: number) => [...vector(0x21), lane];
/** Puts the number at an address, which lies below the vector on the stack, into its second lane. */
export const v128LoadSecond = (offset: number) => [...vector(0x57), ALIGN_8, ...unsigned(offset), 1];
/** NaN becomes 0. */
export const i32FromF64 = [0xfc, 0x02];

/** Instructions on one number and on two at a time. */
export const ARITHMETIC = {
  add: { one: [0xa0], two: vector(0xf0) },
  subtract: { one: [0xa1], two: vector(0xf1) },
  multiply: { one: [0xa2], two: vector(0xf2) },
  divide: { one: [0xa3], two: vector(0xf3) },
  min: { one: [0xa4], two: vector(0xf4) },
  max: { one: [0xa5], two: vector(0xf5) },
  floor: { one: [0x9c], two: vector(0x75) },
  squareRoot: { one: [0x9f], two: vector(0xef) },
  absolute: { one: [0x99], two: vector(0xec) },
  negate: { one: [0x9a], two: vector(0xed) },
} as const;

/** `code` again and again while `condition` (which leaves an i32) holds, asked before the first time too. */
export function whileLoop(condition: readonly number[], code: readonly number[]): number[] {
  const loop = [0x03, BLOCK_WITHOUT_RESULT, ...code, ...condition, 0x0d, 0, END];
  return [...condition, 0x04, BLOCK_WITHOUT_RESULT, ...loop, END];
}

function vector(opcode: number): number[] {
  return [0xfd, ...unsigned(opcode)];
}

function section(id: number, bytes: readonly number[]): number[] {
  return [id, ...unsigned(bytes.length), ...bytes];
}

/** Names here are of plain letters. */
function text(name: string): number[] {
  return [...unsigned(name.length), ...Array.from(name, (letter) => letter.charCodeAt(0))];
}

function unsigned(value: number): number[] {
  const bytes: number[] = [];
  let rest = value;
  do {
    const low = rest & 0x7f;
    rest >>>= 7;
    bytes.push(rest === 0 ? low : low | 0x80);
  } while (rest !== 0);
  return bytes;
}

function signed(value: number): number[] {
  const bytes: number[] = [];
  let rest = value;
  for (;;) {
    const low = rest & 0x7f;
    rest >>= 7;
    const isLast = (rest === 0 && (low & 0x40) === 0) || (rest === -1 && (low & 0x40) !== 0);
    bytes.push(isLast ? low : low | 0x80);
    if (isLast) return bytes;
  }
}
