import {
  add,
  createRowLayout,
  mul,
  type PassList,
  type RowLayout,
  type RowMemory,
  type RunKernel,
  rowKernel,
} from "../numerics/index.js";
import { type Layout, layoutOf } from "./layout.js";
import { type CompiledLinks, compileLinks } from "./links.js";
import type { Network } from "./network.js";
import { type Places, placesOf } from "./places.js";
import { type CompiledSource, compileSources } from "./sources.js";

/** A network as kernels and the lists of places they go through. */
export interface CompiledNetwork {
  readonly network: Network;
  readonly members: number;
  readonly layout: Layout;
  readonly lists: RowLayout;
  readonly places: Places;
  readonly sources: readonly CompiledSource[];
  readonly links: CompiledLinks;
  readonly runInput: RunKernel;
  readonly runInputs: PassList;
  readonly multiply: RunKernel;
  /** All parts' rows at one go. */
  readonly products: PassList;
}

/** Inputs from their straight lines. */
const RUN_INPUT = rowKernel(
  { input: "row", atStart: "row", rate: "row" } as const,
  ["sinceStart"],
  ({ input, atStart, rate, sinceStart }, { set }) => set(input, add(atStart, mul(rate, sinceStart))),
);
const MULTIPLY = rowKernel(
  { result: "row", net: "row", inverse: "row" } as const,
  [],
  ({ result, net, inverse }, { set }) => set(result, mul(net, inverse)),
);

export function compileNetwork(network: Network, members: number, memory: RowMemory): CompiledNetwork {
  const layout = layoutOf(network);
  const sources = compileSources(network, layout, members);
  const parts = network.parts.length;
  const runInput = memory.bind(RUN_INPUT);
  const multiply = memory.bind(MULTIPLY);
  const lists = createRowLayout();
  const places = placesOf(network, layout.pattern.column.length, members, lists);
  const links = compileLinks(network, layout, places, lists, memory);
  const runInputs = lists.list(
    RUN_INPUT,
    network.inputs.map((_, i) => [places.temp(parts + i), places.inputAtStart(i), places.rate(parts + i)]),
  );
  const products = lists.list(MULTIPLY, [[places.result(0), places.net(0), places.inverse(0)]]);
  return { network, members, layout, lists, places, sources, links, runInput, runInputs, multiply, products };
}
