import type { PassList, RowKernel, RowLayout, RowMemory, RunKernel } from "../numerics/index.js";
import { LAW_KERNELS } from "./laws.js";
import type { FluxLaw, Link } from "./network.js";

/** A kernel on the systems' memory and what it goes through. */
export interface Loop {
  readonly run: RunKernel;
  readonly passes: PassList;
}

/** Makes loops over links: `operands` gives the places that a kernel takes for a link. */
export interface Loops {
  loop(kernel: RowKernel, chosen: readonly number[], operands: Operands): Loop;
  /** A loop for each law among the chosen links. */
  byLaw(chosen: readonly number[], what: "flows" | "slopes", operands: Operands): Loop[];
  ofPasses(kernel: RowKernel, passes: readonly (readonly number[])[]): Loop;
}

type Operands = (link: number) => readonly number[];

export function createLoops(links: readonly Link[], lists: RowLayout, memory: RowMemory): Loops {
  function ofPasses(kernel: RowKernel, passes: readonly (readonly number[])[]): Loop {
    return { run: memory.bind(kernel), passes: lists.list(kernel, passes) };
  }

  function loop(kernel: RowKernel, chosen: readonly number[], operands: Operands): Loop {
    return ofPasses(kernel, chosen.map(operands));
  }

  function byLaw(chosen: readonly number[], what: "flows" | "slopes", operands: Operands): Loop[] {
    const laws = new Set<FluxLaw>(chosen.map((i) => links[i].law));
    return [...laws].map((law) =>
      loop(
        LAW_KERNELS[law][what],
        chosen.filter((i) => links[i].law === law),
        operands,
      ),
    );
  }

  return { loop, byLaw, ofPasses };
}
