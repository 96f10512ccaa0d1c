import type { EnsembleSystem } from "../solver/index.js";
import { heatCapacityAt, heatCapacitySlopeAt } from "./capacity.js";
import { FLOW, type LinkView, SLOPE } from "./laws.js";
import { layoutOf } from "./layout.js";
import type { Link, Network, Source } from "./network.js";

/** The network's numbers for every member: [row][member] as everywhere. */
export interface MemberValues {
  /** [W/K] links x members. */
  readonly conductance: Float64Array;
  /** [W] sources x members. */
  readonly power: Float64Array;
}

/** An ensemble of equal networks with different numbers, ready for the solver. */
export interface ThermalSystem extends EnsembleSystem {
  /** Switches to the numbers of another configuration. */
  configure(values: MemberValues): void;
  /** Sets the inputs (inputs x members) at both ends of the time stretch [from, to]; between them they run linearly. */
  setInputs(from: number, to: number, atFrom: Float64Array, atTo: Float64Array): void;
  /** Writes every link's heat flow [W] (links x members), positive from `from` to `to`. */
  heatFlows(t: number, temps: Float64Array, out: Float64Array): void;
  /** Writes every source's power [W] (sources x members) after its limiter. */
  sourcePowers(t: number, temps: Float64Array, out: Float64Array): void;
}

/**
 * Compiles a network for `members` members.
 * @param capacityFactors multipliers of the heat capacities, parts x members [1]
 */
export function createThermalSystem(
  network: Network,
  members: number,
  capacityFactors: Float64Array,
): ThermalSystem {
  const size = network.parts.length;
  const inputCount = network.inputs.length;
  const layout = layoutOf(network);
  const links = network.links.map((link) => compileLink(link, layout.partIndex, layout.row, layout.nonzero));
  const sources = network.sources.map((source) => compileSource(source, layout.partIndex, layout.nonzero));
  const varying = network.parts.map((p) => (p.heatCapacitySlope ?? 0) !== 0 || p.latentHeat !== undefined);

  const temp = new Float64Array((size + inputCount) * members);
  const inputSlope = new Float64Array(inputCount * members);
  const inputFrom = new Float64Array(inputCount * members);
  let stretchStart = 0;
  let conductance = new Float64Array(links.length * members);
  let power = new Float64Array(sources.length * members);

  const net = new Float64Array(size * members);
  const q = new Float64Array(members);
  const byA = new Float64Array(members);
  const byB = new Float64Array(members);
  const byW = new Float64Array(members);
  const byFactor = new Float64Array(members);
  const inverseCapacity = new Float64Array(size * members);
  network.parts.forEach((part, i) => {
    for (let m = 0; m < members; m++)
      inverseCapacity[i * members + m] = 1 / (part.heatCapacity * capacityFactors[i * members + m]);
  });
  const view = { temp, a: 0, b: 0, w: 0, g: conductance, go: 0, members };

  function loadTemps(t: number, y: Float64Array): void {
    temp.set(y);
    const dt = t - stretchStart;
    for (let k = 0, o = size * members; k < inputFrom.length; k++, o++)
      temp[o] = inputFrom[k] + inputSlope[k] * dt;
  }

  function point(link: CompiledLink, index: number): LinkView {
    view.a = link.fromRow * members;
    view.b = link.toRow * members;
    view.w = link.windRow * members;
    view.g = conductance;
    view.go = index * members;
    return view;
  }

  /** Flow of one link into q, with its film and input factors. */
  function flow(link: CompiledLink, index: number): void {
    FLOW[link.law](point(link, index), q);
    const { factorRow, film } = link;
    if (factorRow >= 0) for (let m = 0, o = factorRow * members; m < members; m++) q[m] *= temp[o + m];
    if (film !== undefined) {
      const { a, b } = view;
      for (let m = 0; m < members; m++) q[m] *= film.value(0.5 * (temp[a + m] + temp[b + m]));
    }
  }

  /** Slopes of one link into byA, byB, byW, byFactor. */
  function slopes(link: CompiledLink, index: number): void {
    const v = point(link, index);
    SLOPE[link.law](v, byA, byB, byW);
    const { factorRow, film } = link;
    if (factorRow < 0 && film === undefined) return;
    FLOW[link.law](v, q);
    for (let m = 0; m < members; m++) {
      const factor = factorRow < 0 ? 1 : temp[factorRow * members + m];
      const mean = 0.5 * (temp[v.a + m] + temp[v.b + m]);
      const phi = film === undefined ? 1 : film.value(mean);
      const byMean = film === undefined ? 0 : 0.5 * factor * q[m] * film.slope(mean);
      byA[m] = byA[m] * factor * phi + byMean;
      byB[m] = byB[m] * factor * phi + byMean;
      byW[m] *= factor * phi;
      byFactor[m] = q[m] * phi;
    }
  }

  function sourcePower(source: CompiledSource, index: number, out: Float64Array, at: number): void {
    const o = index * members;
    const { limiter, sensesRow } = source;
    for (let m = 0; m < members; m++) {
      out[at + m] =
        limiter === undefined ? power[o + m] : power[o + m] * limited(limiter, temp[sensesRow * members + m]);
    }
  }

  /** Net heat into each part [W] into `net`. */
  function balance(): void {
    net.fill(0);
    for (let l = 0; l < links.length; l++) {
      const link = links[l];
      flow(link, l);
      if (link.fromPart >= 0)
        for (let m = 0, o = link.fromPart * members; m < members; m++) net[o + m] -= q[m];
      if (link.toPart >= 0) for (let m = 0, o = link.toPart * members; m < members; m++) net[o + m] += q[m];
    }
    for (let s = 0; s < sources.length; s++) {
      sourcePower(sources[s], s, q, 0);
      for (let m = 0, o = sources[s].part * members; m < members; m++) net[o + m] += q[m];
    }
  }

  /** Reciprocal heat capacities where they vary with temperature. */
  function updateCapacities(): void {
    for (let i = 0; i < size; i++) {
      if (!varying[i]) continue;
      const part = network.parts[i];
      for (let m = 0, o = i * members; m < members; m++) {
        inverseCapacity[o + m] = 1 / (heatCapacityAt(part, temp[o + m]) * capacityFactors[o + m]);
      }
    }
  }

  return {
    size,
    members,
    pattern: layout.pattern,
    configure(values) {
      conductance = values.conductance as Float64Array<ArrayBuffer>;
      power = values.power as Float64Array<ArrayBuffer>;
    },
    setInputs(from, to, atFrom, atTo) {
      stretchStart = from;
      for (let k = 0; k < inputFrom.length; k++) {
        inputFrom[k] = atFrom[k];
        inputSlope[k] = (atTo[k] - atFrom[k]) / (to - from);
      }
    },
    derivative(t, y, dydt) {
      loadTemps(t, y);
      updateCapacities();
      balance();
      for (let k = 0; k < net.length; k++) dydt[k] = net[k] * inverseCapacity[k];
    },
    jacobian(t, y, values) {
      loadTemps(t, y);
      updateCapacities();
      values.fill(0);
      for (let l = 0; l < links.length; l++) {
        const link = links[l];
        slopes(link, l);
        const { fromPart, toPart } = link;
        if (fromPart >= 0) {
          const c = fromPart * members;
          const kd = link.fromFrom * members;
          for (let m = 0; m < members; m++) values[kd + m] -= byA[m] * inverseCapacity[c + m];
        }
        if (toPart >= 0) {
          const c = toPart * members;
          const kd = link.toTo * members;
          for (let m = 0; m < members; m++) values[kd + m] += byB[m] * inverseCapacity[c + m];
        }
        if (fromPart >= 0 && toPart >= 0) {
          const ft = link.fromTo * members;
          const tf = link.toFrom * members;
          for (let m = 0; m < members; m++) {
            values[ft + m] -= byB[m] * inverseCapacity[fromPart * members + m];
            values[tf + m] += byA[m] * inverseCapacity[toPart * members + m];
          }
        }
      }
      for (let s = 0; s < sources.length; s++) {
        const { limiter, sensesRow, part, entry } = sources[s];
        if (limiter === undefined) continue;
        for (let m = 0; m < members; m++) {
          const share = limited(limiter, temp[sensesRow * members + m]);
          const slope = (-power[s * members + m] * share * (1 - share)) / limiter.width;
          values[entry * members + m] += slope * inverseCapacity[part * members + m];
        }
      }
      if (!varying.includes(true)) return;
      balance();
      for (let i = 0; i < size; i++) {
        if (!varying[i]) continue;
        const kd = layout.nonzero(i, i) * members;
        for (let m = 0, o = i * members; m < members; m++) {
          const r = inverseCapacity[o + m];
          const slope = heatCapacitySlopeAt(network.parts[i], temp[o + m]) * capacityFactors[o + m];
          values[kd + m] -= net[o + m] * slope * r * r;
        }
      }
    },
    timeDerivative(t, y, dfdt) {
      loadTemps(t, y);
      updateCapacities();
      net.fill(0);
      for (let l = 0; l < links.length; l++) {
        const link = links[l];
        if (!link.timeDependent) continue;
        slopes(link, l);
        q.fill(0);
        if (link.fromPart < 0) addProduct(q, byA, inputSlope, (link.fromRow - size) * members);
        if (link.toPart < 0) addProduct(q, byB, inputSlope, (link.toRow - size) * members);
        if (link.windRow >= size) addProduct(q, byW, inputSlope, (link.windRow - size) * members);
        if (link.factorRow >= 0) addProduct(q, byFactor, inputSlope, (link.factorRow - size) * members);
        if (link.fromPart >= 0)
          for (let m = 0, o = link.fromPart * members; m < members; m++) net[o + m] -= q[m];
        if (link.toPart >= 0) for (let m = 0, o = link.toPart * members; m < members; m++) net[o + m] += q[m];
      }
      for (let k = 0; k < net.length; k++) dfdt[k] = net[k] * inverseCapacity[k];
    },
    heatFlows(t, temps, out) {
      loadTemps(t, temps);
      for (let l = 0; l < links.length; l++) {
        flow(links[l], l);
        out.set(q, l * members);
      }
    },
    sourcePowers(t, temps, out) {
      loadTemps(t, temps);
      for (let s = 0; s < sources.length; s++) sourcePower(sources[s], s, out, s * members);
    },
  };
}

interface CompiledLink {
  readonly law: Link["law"];
  readonly fromRow: number;
  readonly toRow: number;
  /** Row of the part, or -1 where the end is an input. */
  readonly fromPart: number;
  readonly toPart: number;
  readonly windRow: number;
  readonly factorRow: number;
  readonly film: Link["filmFactor"];
  readonly timeDependent: boolean;
  readonly fromFrom: number;
  readonly fromTo: number;
  readonly toFrom: number;
  readonly toTo: number;
}

function compileLink(
  link: Link,
  partIndex: ReadonlyMap<string, number>,
  row: ReadonlyMap<string, number>,
  nonzero: (i: number, j: number) => number,
): CompiledLink {
  const fromPart = partIndex.get(link.from) ?? -1;
  const toPart = partIndex.get(link.to) ?? -1;
  const both = fromPart >= 0 && toPart >= 0;
  return {
    law: link.law,
    fromRow: rowOf(link.from),
    toRow: rowOf(link.to),
    fromPart,
    toPart,
    windRow: link.windInput === undefined ? 0 : rowOf(link.windInput),
    factorRow: link.factorInput === undefined ? -1 : rowOf(link.factorInput),
    film: link.filmFactor,
    timeDependent: !both || link.windInput !== undefined || link.factorInput !== undefined,
    fromFrom: fromPart < 0 ? -1 : nonzero(fromPart, fromPart),
    fromTo: both ? nonzero(fromPart, toPart) : -1,
    toFrom: both ? nonzero(toPart, fromPart) : -1,
    toTo: toPart < 0 ? -1 : nonzero(toPart, toPart),
  };

  function rowOf(name: string): number {
    const r = row.get(name);
    if (r === undefined) throw new RangeError(`unknown part or input: ${name}`);
    return r;
  }
}

interface CompiledSource {
  readonly part: number;
  readonly sensesRow: number;
  readonly limiter: Source["limiter"];
  /** Jacobian entry (part, sensed part). */
  readonly entry: number;
}

function compileSource(
  source: Source,
  partIndex: ReadonlyMap<string, number>,
  nonzero: (i: number, j: number) => number,
): CompiledSource {
  const part = partIndex.get(source.part);
  const senses = partIndex.get(source.limiter?.senses ?? source.part);
  if (part === undefined || senses === undefined)
    throw new RangeError(`unknown part of source: ${source.name}`);
  return { part, sensesRow: senses, limiter: source.limiter, entry: nonzero(part, senses) };
}

/** Share of full power left at the sensed temperature: a falling logistic around the set point. */
function limited(limiter: NonNullable<Source["limiter"]>, sensed: number): number {
  return 1 / (1 + Math.exp((sensed - limiter.setPoint) / limiter.width));
}

function addProduct(out: Float64Array, slope: Float64Array, rate: Float64Array, offset: number): void {
  for (let m = 0; m < out.length; m++) out[m] += slope[m] * rate[offset + m];
}
