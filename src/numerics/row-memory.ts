import { type RowKernel, WORD } from "./row-kernel.js";

/** What is used of the WebAssembly of the host (W3C, WebAssembly JavaScript Interface). */
declare namespace WebAssembly {
  class Memory {
    constructor(descriptor: { initial: number });
    readonly buffer: ArrayBuffer;
    /** @returns pages before */
    grow(pages: number): number;
  }
  class Module {
    constructor(bytes: Uint8Array);
  }
  class Instance {
    constructor(module: Module, imports: Record<string, Record<string, Memory>>);
    readonly exports: Readonly<Record<string, unknown>>;
  }
}

/**
 * Runs a kernel through `count` passes told by the list at byte `list`, each through the members of rows of `bytes`;
 * `vector` is the byte at which the vector of its "vector-row" operands begins.
 */
export type RunKernel = (
  list: number,
  count: number,
  vector: number,
  bytes: number,
  ...scalars: readonly number[]
) => void;

/** Numbers that kernels work on. */
export interface RowMemory {
  /** All of it; another array after `reserve` had to make room. */
  readonly floats: Float64Array<ArrayBuffer>;
  /** Makes room for so many bytes; the content stays, views of it made before may be gone. */
  reserve(bytes: number): void;
  /** Makes room for a layout and writes its lists and constants, unless they are the last that were written. */
  install(layout: RowLayout): void;
  bind(kernel: RowKernel): RunKernel;
}

const PAGE = 65_536;

const modules = new WeakMap<RowKernel, WebAssembly.Module>();

export function createRowMemory(): RowMemory {
  const memory = new WebAssembly.Memory({ initial: 1 });
  let floats = new Float64Array(memory.buffer);
  let installed: RowLayout | undefined;
  const bound = new Map<RowKernel, RunKernel>();
  return {
    get floats() {
      return floats;
    },
    reserve(bytes) {
      const missing = bytes - floats.byteLength;
      if (missing <= 0) return;
      memory.grow(Math.ceil(missing / PAGE));
      floats = new Float64Array(memory.buffer);
    },
    install(layout) {
      if (installed === layout) return;
      installed = layout;
      this.reserve(layout.bytes);
      for (const { at, operands } of layout.lists)
        new Int32Array(memory.buffer, at, operands.length).set(operands);
      for (const [values, at] of layout.allConstants) floats.set(values, at / WORD);
    },
    bind(kernel) {
      const known = bound.get(kernel);
      if (known !== undefined) return known;
      const module = modules.get(kernel) ?? compiled(kernel);
      modules.set(kernel, module);
      const run = new WebAssembly.Instance(module, { host: { memory } }).exports.run as RunKernel;
      bound.set(kernel, run);
      return run;
    },
  };
}

function compiled(kernel: RowKernel): WebAssembly.Module {
  try {
    return new WebAssembly.Module(kernel.bytes);
  } catch (cause) {
    throw new Error(
      "nothing can be worked out here: WebAssembly with 128-bit SIMD is missing (expected Node.js 20, Chrome 91, Firefox 89, Safari 16.4 or newer)",
      { cause },
    );
  }
}

/** A list of passes, in place. */
export interface PassList {
  /** Byte at which it begins. */
  readonly at: number;
  readonly count: number;
}

/** Places of rows and lists in a memory, given one after another. */
export interface RowLayout {
  /** Place [byte] of the next `numbers` numbers. */
  take(numbers: number): number;
  /** A list of passes of `kernel`, each with the operands of one of `passes`. */
  list(kernel: RowKernel, passes: readonly (readonly number[])[]): PassList;
  /** Place of numbers that stay as they are; asked again for the same array, the same place. */
  constants(values: Float64Array): number;
  /** Bytes given so far. */
  readonly bytes: number;
  readonly lists: readonly { readonly at: number; readonly operands: Int32Array }[];
  readonly allConstants: ReadonlyMap<Float64Array, number>;
}

export function createRowLayout(): RowLayout {
  const lists: { readonly at: number; readonly operands: Int32Array }[] = [];
  const known = new Map<Float64Array, number>();
  let bytes = 0;
  const give = (count: number) => {
    const at = bytes;
    bytes += WORD * Math.ceil(count / WORD);
    return at;
  };
  return {
    lists,
    allConstants: known,
    take: (numbers) => give(WORD * numbers),
    list(kernel, passes) {
      const operands = Int32Array.from(passes.flat());
      if (operands.length !== kernel.operands * passes.length)
        throw new RangeError(
          `invalid passes: ${operands.length} operands (expected ${passes.length} times ${kernel.operands})`,
        );
      const at = give(4 * operands.length);
      lists.push({ at, operands });
      return { at, count: passes.length };
    },
    constants(values) {
      const at = known.get(values) ?? give(values.byteLength);
      known.set(values, at);
      return at;
    },
    get bytes() {
      return bytes;
    },
  };
}
