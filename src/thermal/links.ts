import type { PassList, RowKernel, RowLayout, RowMemory, RunKernel } from "../numerics/index.js";
import { LAW_KERNELS } from "./laws.js";
import type { Layout } from "./layout.js";
import type { FluxLaw, Network } from "./network.js";
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

/** A kernel on the systems' memory and what it goes through. */
export interface Loop {
  readonly run: RunKernel;
  readonly passes: PassList;
}

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
  { partIndex, row, nonzero }: Layout,
  places: Places,
  lists: RowLayout,
  memory: RowMemory,
): CompiledLinks {
  const { links } = network;
  const { temp, rate, net, conductance, inForce, inChange, flow, byFrom, byTo, byWind, inverse, jacobian } =
    places;
  const indices = links.map((_, index) => index);
  const rowOf = (name: string) => {
    const found = row.get(name);
    if (found === undefined) throw new RangeError(`unknown part or input: ${name}`);
    return found;
  };
  const ends = links.map(({ from, to, windInput }) => ({
    from: rowOf(from),
    to: rowOf(to),
    // Laws without a wind read the row and make nothing of it.
    wind: rowOf(windInput ?? from),
  }));
  const films = indices.filter((i) => links[i].filmFactor !== undefined);
  const multiplied = indices.filter((i) => links[i].factorInput !== undefined);
  return {
    inForce: modulated(temp, inForce, films),
    inChange: modulated(
      rate,
      inChange,
      films.filter((i) => multiplied.includes(i)),
    ),
    flows: flowsOf(indices, inForce),
    flowsOfChange: flowsOf(multiplied, inChange),
    slopes: byLaw(indices, "slopes", (i) => {
      const { from, to, wind } = ends[i];
      return [inForce(i), temp(from), temp(to), temp(wind), flow(i), byFrom(i), byTo(i), byWind(i)];
    }),
    filmSlopes: loop(ADD_FILM_SLOPES, films, (i) => {
      const { from, to } = ends[i];
      return [flow(i), byFrom(i), byTo(i), temp(from), temp(to), filmOf(i)];
    }),
    jacobian: [
      loop(
        ADD_SLOPES,
        indices.filter((i) => isPart(links[i].from) && isPart(links[i].to)),
        (i) => {
          const { from, to } = ends[i];
          const entries = [nonzero(from, from), nonzero(from, to), nonzero(to, from), nonzero(to, to)];
          return [
            ...[flow(i), byFrom(i), byTo(i), net(from), net(to), inverse(from), inverse(to)],
            ...entries.map(jacobian),
          ];
        },
      ),
      loop(
        ADD_SLOPES_OF_FROM,
        indices.filter((i) => isPart(links[i].from) && !isPart(links[i].to)),
        (i) => {
          const { from } = ends[i];
          return [flow(i), byFrom(i), net(from), inverse(from), jacobian(nonzero(from, from))];
        },
      ),
      loop(
        ADD_SLOPES_OF_TO,
        indices.filter((i) => isPart(links[i].to) && !isPart(links[i].from)),
        (i) => {
          const { to } = ends[i];
          return [flow(i), byTo(i), net(to), inverse(to), jacobian(nonzero(to, to))];
        },
      ),
    ],
    rates: loopOf(
      ADD_RATE,
      links.flatMap(({ from, to, windInput }, i) => [
        ...(isPart(from) ? [] : [changeBy(i, byFrom(i), ends[i].from)]),
        ...(isPart(to) ? [] : [changeBy(i, byTo(i), ends[i].to)]),
        ...(windInput === undefined ? [] : [changeBy(i, byWind(i), ends[i].wind)]),
      ]),
    ),
  };

  /** Conductances times the input and the film factor where a link has them. */
  function modulated(
    inputs: (row: number) => number,
    into: (link: number) => number,
    filmed: readonly number[],
  ): Loop[] {
    return [
      loop(MULTIPLY_BY_INPUT, multiplied, (i) => [
        into(i),
        conductance(i),
        inputs(rowOf(links[i].factorInput!)),
      ]),
      loop(MULTIPLY_BY_FILM, filmed, (i) => {
        const { from, to } = ends[i];
        const before = multiplied.includes(i) ? into(i) : conductance(i);
        return [into(i), before, temp(from), temp(to), filmOf(i)];
      }),
    ];
  }

  function filmOf(i: number): number {
    return lists.constants(links[i].filmFactor!.numbers);
  }

  function isPart(name: string): boolean {
    return partIndex.has(name);
  }

  function changeBy(i: number, slope: number, input: number): number[] {
    return [slope, rate(input), net(ends[i].from), net(ends[i].to)];
  }

  function flowsOf(chosen: readonly number[], driving: (link: number) => number): Loop[] {
    return byLaw(chosen, "flows", (i) => {
      const { from, to, wind } = ends[i];
      return [driving(i), temp(from), temp(to), temp(wind), net(from), net(to)];
    });
  }

  function byLaw(
    chosen: readonly number[],
    what: "flows" | "slopes",
    operands: (link: number) => readonly number[],
  ): Loop[] {
    const laws = new Set<FluxLaw>(chosen.map((i) => links[i].law));
    return [...laws].map((law) =>
      loop(
        LAW_KERNELS[law][what],
        chosen.filter((i) => links[i].law === law),
        operands,
      ),
    );
  }

  function loop(
    kernel: RowKernel,
    chosen: readonly number[],
    operands: (link: number) => readonly number[],
  ): Loop {
    return loopOf(kernel, chosen.map(operands));
  }

  function loopOf(kernel: RowKernel, passes: readonly (readonly number[])[]): Loop {
    return { run: memory.bind(kernel), passes: lists.list(kernel, passes) };
  }
}
