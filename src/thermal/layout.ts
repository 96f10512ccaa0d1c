import type { SparsityPattern } from "../solver/index.js";
import type { Network } from "./network.js";

/** Row numbers of a network's names, and where each link and source touches the Jacobian. */
export interface Layout {
  readonly partIndex: ReadonlyMap<string, number>;
  /** Row of a part or input in the table of all temperatures: parts first, then inputs. */
  readonly row: ReadonlyMap<string, number>;
  readonly pattern: SparsityPattern;
  /** Position of each part's diagonal among the stored nonzeros. */
  readonly diagonal: Int32Array;
  /** Position of ∂f_i/∂T_j among the stored nonzeros; throws where there is none. */
  nonzero(i: number, j: number): number;
}

export function layoutOf(network: Network): Layout {
  const partIndex = new Map(network.parts.map((part, i) => [part.name, i]));
  const row = new Map([...network.parts.map((p) => p.name), ...network.inputs].map((name, i) => [name, i]));
  const columns = network.parts.map((_, i) => new Set([i]));
  for (const link of network.links) {
    const a = partIndex.get(link.from);
    const b = partIndex.get(link.to);
    if (a === undefined || b === undefined) continue;
    columns[a].add(b);
    columns[b].add(a);
  }
  for (const source of network.sources) {
    const senses = partIndex.get(source.limiter?.senses ?? source.part);
    const part = partIndex.get(source.part);
    if (senses !== undefined && part !== undefined) columns[part].add(senses);
  }
  const rows = columns.map((set) => [...set].sort((x, y) => x - y));
  const rowStart = new Int32Array(rows.length + 1);
  rows.forEach((r, i) => {
    rowStart[i + 1] = rowStart[i] + r.length;
  });
  const position = new Map<number, number>();
  rows.forEach((r, i) => {
    r.forEach((j, k) => {
      position.set(i * rows.length + j, rowStart[i] + k);
    });
  });
  function nonzero(i: number, j: number): number {
    const k = position.get(i * rows.length + j);
    if (k === undefined) throw new RangeError(`missing Jacobian entry: row ${i}, column ${j}`);
    return k;
  }
  return {
    partIndex,
    row,
    pattern: { rowStart, column: Int32Array.from(rows.flat()) },
    diagonal: Int32Array.from(rows, (_, i) => nonzero(i, i)),
    nonzero,
  };
}
