import type { RowLayout, RowMemory } from "../numerics/index.js";
import type { Layout } from "./layout.js";
import { createLoops, type Loop, type Loops } from "./loops.js";
import type { Link, Network } from "./network.js";
import type { Places } from "./places.js";
import {
  ADD_FILM_SLOPES,
  ADD_RATE,
  ADD_SLOPES,
  ADD_SLOPES_OF_FROM,
  ADD_SLOPES_OF_TO,
  MULTIPLY_BY_FILM,
  MULTIPLY_BY_INPUT,
} from "./slopes.js";

export interface CompiledLinks {
  /** Conductances in force of the links that change within a configuration, with an input or their temperatures. */
  readonly inForce: readonly Loop[];
  /** Their change, as the inputs that multiply them change. */
  readonly inChange: readonly Loop[];
  /** Flows of all links into the net heat. */
  readonly flows: readonly Loop[];
  /** Flows of the multiplied links, by the change of their conductances, into the net heat. */
  readonly flowsOfChange: readonly Loop[];
  /** Flow and slopes of all links but for what comes through the film factors. */
  readonly slopes: readonly Loop[];
  readonly filmSlopes: Loop;
  /** Flows into the net heat, and slopes into the Jacobian. */
  readonly jacobian: readonly Loop[];
  /** What the inputs' change in time, as temperatures and winds, means for the net heat. */
  readonly rates: Loop;
}

export function compileLinks(
  network: Network,
  layout: Layout,
  places: Places,
  lists: RowLayout,
  memory: RowMemory,
): CompiledLinks {
  const { links } = network;
  const loops = createLoops(links, lists, memory);
  const ends = endsOf(links, layout);
  const compilation: Compilation = { links, ends, layout, places, lists, loops };
  const { temp, rate, inForce, inChange, flow, byFrom, byTo, byWind } = places;
  const indices = links.map((_, index) => index);
  const films = indices.filter((i) => links[i].filmFactor !== undefined);
  const multiplied = indices.filter((i) => links[i].factorInput !== undefined);
  const filmedAndMultiplied = films.filter((i) => multiplied.includes(i));
  return {
    inForce: modulationLoops(compilation, temp, inForce, multiplied, films),
    inChange: modulationLoops(compilation, rate, inChange, multiplied, filmedAndMultiplied),
    flows: flowLoops(compilation, indices, inForce),
    flowsOfChange: flowLoops(compilation, multiplied, inChange),
    slopes: loops.byLaw(indices, "slopes", (i) => {
      const { from, to, wind } = ends[i];
      return [inForce(i), temp(from), temp(to), temp(wind), flow(i), byFrom(i), byTo(i), byWind(i)];
    }),
    filmSlopes: loops.loop(ADD_FILM_SLOPES, films, (i) => {
      const { from, to } = ends[i];
      return [flow(i), byFrom(i), byTo(i), temp(from), temp(to), filmNumbers(lists, links[i])];
    }),
    jacobian: jacobianLoops(compilation, indices),
    rates: rateLoop(compilation),
  };
}

/** Rows of a link's temperatures and wind. */
interface Ends {
  readonly from: number;
  readonly to: number;
  readonly wind: number;
}

interface Compilation {
  readonly links: readonly Link[];
  readonly ends: readonly Ends[];
  readonly layout: Layout;
  readonly places: Places;
  readonly lists: RowLayout;
  readonly loops: Loops;
}

function endsOf(links: readonly Link[], layout: Layout): Ends[] {
  return links.map(({ from, to, windInput }) => ({
    from: rowNamed(layout, from),
    to: rowNamed(layout, to),
    // Laws without a wind read the row and make nothing of it.
    wind: rowNamed(layout, windInput ?? from),
  }));
}

function rowNamed({ row }: Layout, name: string): number {
  const found = row.get(name);
  if (found === undefined) throw new RangeError(`unknown part or input: ${name}`);
  return found;
}

function filmNumbers(lists: RowLayout, link: Link): number {
  return lists.constants(link.filmFactor!.numbers);
}

/** Conductances times the input and the film factor where a link has them. */
function modulationLoops(
  { links, ends, layout, places: { conductance, temp }, lists, loops }: Compilation,
  inputs: (row: number) => number,
  into: (link: number) => number,
  multiplied: readonly number[],
  filmed: readonly number[],
): Loop[] {
  return [
    loops.loop(MULTIPLY_BY_INPUT, multiplied, (i) => [
      into(i),
      conductance(i),
      inputs(rowNamed(layout, links[i].factorInput!)),
    ]),
    loops.loop(MULTIPLY_BY_FILM, filmed, (i) => {
      const { from, to } = ends[i];
      const before = multiplied.includes(i) ? into(i) : conductance(i);
      return [into(i), before, temp(from), temp(to), filmNumbers(lists, links[i])];
    }),
  ];
}

function flowLoops(
  { ends, places: { temp, net }, loops }: Compilation,
  chosen: readonly number[],
  driving: (link: number) => number,
): Loop[] {
  return loops.byLaw(chosen, "flows", (i) => {
    const { from, to, wind } = ends[i];
    return [driving(i), temp(from), temp(to), temp(wind), net(from), net(to)];
  });
}

/** Links between parts, from a part to an input and from an input to a part. */
function jacobianLoops(
  { links, ends, layout, places, loops }: Compilation,
  indices: readonly number[],
): Loop[] {
  const { nonzero, partIndex } = layout;
  const { flow, byFrom, byTo, net, inverse, jacobian } = places;
  const isFromPart = (i: number) => partIndex.has(links[i].from);
  const isToPart = (i: number) => partIndex.has(links[i].to);
  return [
    loops.loop(
      ADD_SLOPES,
      indices.filter((i) => isFromPart(i) && isToPart(i)),
      (i) => {
        const { from, to } = ends[i];
        const entries = [nonzero(from, from), nonzero(from, to), nonzero(to, from), nonzero(to, to)];
        return [
          ...[flow(i), byFrom(i), byTo(i), net(from), net(to), inverse(from), inverse(to)],
          ...entries.map(jacobian),
        ];
      },
    ),
    loops.loop(
      ADD_SLOPES_OF_FROM,
      indices.filter((i) => isFromPart(i) && !isToPart(i)),
      (i) => {
        const { from } = ends[i];
        return [flow(i), byFrom(i), net(from), inverse(from), jacobian(nonzero(from, from))];
      },
    ),
    loops.loop(
      ADD_SLOPES_OF_TO,
      indices.filter((i) => isToPart(i) && !isFromPart(i)),
      (i) => {
        const { to } = ends[i];
        return [flow(i), byTo(i), net(to), inverse(to), jacobian(nonzero(to, to))];
      },
    ),
  ];
}

/** One pass for each input that a link's flow depends on. */
function rateLoop({ links, ends, layout: { partIndex }, places, loops }: Compilation): Loop {
  const { rate, net, byFrom, byTo, byWind } = places;
  const pass = (i: number, slope: number, input: number) => [
    slope,
    rate(input),
    net(ends[i].from),
    net(ends[i].to),
  ];
  return loops.ofPasses(
    ADD_RATE,
    links.flatMap(({ from, to, windInput }, i) => [
      ...(partIndex.has(from) ? [] : [pass(i, byFrom(i), ends[i].from)]),
      ...(partIndex.has(to) ? [] : [pass(i, byTo(i), ends[i].to)]),
      ...(windInput === undefined ? [] : [pass(i, byWind(i), ends[i].wind)]),
    ]),
  );
}
