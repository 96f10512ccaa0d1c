import { type LawLoops, loopsOf } from "./laws.js";
import type { Layout } from "./layout.js";
import type { FilmFactor, FluxLaw, Link, Network } from "./network.js";

/** Links of one law as offsets (row or link number times members), made for loops over many links at a time. */
export interface LinkGroup {
  readonly law: LawLoops;
  readonly count: number;
  /** Where the links' own numbers (conductance, flow, slopes) begin. */
  readonly link: Int32Array;
  /** Rows of the two ends and of the wind input in the table of all temperatures; wind 0 where there is none. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly wind: Int32Array;
}

/** A link whose conductance changes within a configuration, with an input or with the mean of its temperatures. */
export interface ModulatedLink {
  readonly link: number;
  readonly from: number;
  readonly to: number;
  /** Row of the input that multiplies it, or -1. */
  readonly factor: number;
  readonly film: FilmFactor | undefined;
}

/** Where a link's slopes go in the Jacobian: offsets of nonzeros, -1 where an end is an input. */
export interface SlopeTargets {
  readonly link: number;
  readonly from: number;
  readonly to: number;
  readonly fromFrom: number;
  readonly fromTo: number;
  readonly toFrom: number;
  readonly toTo: number;
}

export interface LinkSet {
  readonly groups: readonly LinkGroup[];
  readonly modulated: readonly ModulatedLink[];
}

export interface CompiledLinks {
  readonly all: LinkSet;
  /** Those that an input touches, so that their flow depends on time itself. */
  readonly timeDependent: LinkSet;
  /** Those that an input multiplies. */
  readonly multiplied: LinkSet;
  /** Each link alone, in the network's order. */
  readonly single: readonly LinkGroup[];
  readonly targets: readonly SlopeTargets[];
}

export function compileLinks(
  network: Network,
  { partIndex, row, nonzero }: Layout,
  members: number,
): CompiledLinks {
  const { links } = network;
  const indices = links.map((_, index) => index);
  const places = links.map(({ from, to, factorInput, windInput, filmFactor }, index) => ({
    link: index * members,
    from: offset(from),
    to: offset(to),
    factor: factorInput === undefined ? -1 : offset(factorInput),
    wind: windInput === undefined ? 0 : offset(windInput),
    film: filmFactor,
  }));
  const isMultiplied = (link: Link) => link.factorInput !== undefined;
  const isTimeDependent = (link: Link) =>
    isMultiplied(link) ||
    link.windInput !== undefined ||
    !partIndex.has(link.from) ||
    !partIndex.has(link.to);
  return {
    all: set(() => true),
    timeDependent: set(isTimeDependent),
    multiplied: set(isMultiplied),
    single: indices.map((index) => group(links[index].law, [index])),
    targets: links.map(targets),
  };

  function set(wanted: (link: Link) => boolean): LinkSet {
    const chosen = indices.filter((index) => wanted(links[index]));
    const laws = new Set(chosen.map((index) => links[index].law));
    return {
      groups: [...laws].map((law) =>
        group(
          law,
          chosen.filter((index) => links[index].law === law),
        ),
      ),
      modulated: chosen
        .map((index) => places[index])
        .filter(({ factor, film }) => factor >= 0 || film !== undefined),
    };
  }

  function group(law: FluxLaw, chosen: readonly number[]): LinkGroup {
    return {
      law: loopsOf(law),
      count: chosen.length,
      link: Int32Array.from(chosen, (index) => places[index].link),
      from: Int32Array.from(chosen, (index) => places[index].from),
      to: Int32Array.from(chosen, (index) => places[index].to),
      wind: Int32Array.from(chosen, (index) => places[index].wind),
    };
  }

  function targets(link: Link, index: number): SlopeTargets {
    const i = partIndex.get(link.from) ?? -1;
    const j = partIndex.get(link.to) ?? -1;
    const both = i >= 0 && j >= 0;
    return {
      link: places[index].link,
      from: places[index].from,
      to: places[index].to,
      fromFrom: i >= 0 ? nonzero(i, i) * members : -1,
      fromTo: both ? nonzero(i, j) * members : -1,
      toFrom: both ? nonzero(j, i) * members : -1,
      toTo: j >= 0 ? nonzero(j, j) * members : -1,
    };
  }

  function offset(name: string): number {
    const r = row.get(name);
    if (r === undefined) throw new RangeError(`unknown part or input: ${name}`);
    return r * members;
  }
}

/** Conductance in force: the configuration's, times the input and the film factor where the link has them. */
export function modulate(
  { link, from, to, factor, film }: ModulatedLink,
  members: number,
  temp: Float64Array,
  inputs: Float64Array,
  configured: Float64Array,
  inForce: Float64Array,
): void {
  for (let m = 0; m < members; m++) {
    let g = configured[link + m];
    if (factor >= 0) g *= inputs[factor + m];
    if (film !== undefined) g *= film.value(0.5 * (temp[from + m] + temp[to + m]));
    inForce[link + m] = g;
  }
}
