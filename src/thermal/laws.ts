import type { LinkGroup } from "./links.js";
import { type FluxLaw, SMOOTHING_TEMPERATURE } from "./network.js";

/**
 * What the laws read: temperatures and inputs [row][member], and the conductances in force [link][member], film and
 * input factors included. The flows below are linear in these conductances.
 */
export interface LinkTables {
  readonly members: number;
  readonly temp: Float64Array;
  readonly conductance: Float64Array;
}

/** Flows [W] and their slopes [W/K] by the two ends' temperatures and the wind input, [link][member]. */
export interface LinkSlopes {
  readonly flow: Float64Array;
  readonly byFrom: Float64Array;
  readonly byTo: Float64Array;
  /** Written by laws that have a wind, zero else. */
  readonly byWind: Float64Array;
}

/** A flux law as loops over the links that follow it. */
export interface LawLoops {
  /** Takes each link's flow from its `from` row of `net` and gives it to its `to` row. */
  readonly addFlows: FlowLoop;
  /** Writes each link's flow and slopes. */
  readonly writeSlopes: SlopeLoop;
}

type FlowLoop = (group: LinkGroup, tables: LinkTables, net: Float64Array) => void;
type SlopeLoop = (group: LinkGroup, tables: LinkTables, out: LinkSlopes) => void;

const SMALL = SMOOTHING_TEMPERATURE * SMOOTHING_TEMPERATURE;
const PER_REFERENCE_DIFFERENCE = 1 / 10;
const RADIATION_SCALE = 1 / (4 * 273.15 ** 3);

export function loopsOf(law: FluxLaw): LawLoops {
  return { addFlows: FLOWS[law], writeSlopes: SLOPES[law] };
}

// Loops over arrays handed in as arguments, and sums of two indices cut to 32 bits: in closures, or with the overflow
// check that `| 0` spares, V8 makes them markedly slower.

const FLOWS: Readonly<Record<FluxLaw, FlowLoop>> = {
  conduction({ count, link, from, to }, { members, temp, conductance }, net) {
    for (let l = 0; l < count; l++) {
      const a = from[l];
      const b = to[l];
      const g = link[l];
      for (let m = 0; m < members; m++) {
        const q = conductance[(g + m) | 0] * (temp[(a + m) | 0] - temp[(b + m) | 0]);
        net[(a + m) | 0] -= q;
        net[(b + m) | 0] += q;
      }
    }
  },
  "free-convection"({ count, link, from, to }, { members, temp, conductance }, net) {
    for (let l = 0; l < count; l++) {
      const a = from[l];
      const b = to[l];
      const g = link[l];
      for (let m = 0; m < members; m++) {
        const d = temp[(a + m) | 0] - temp[(b + m) | 0];
        const q = conductance[(g + m) | 0] * quarterPower(d) * d;
        net[(a + m) | 0] -= q;
        net[(b + m) | 0] += q;
      }
    }
  },
  ventilation({ count, link, from, to, wind }, { members, temp, conductance }, net) {
    for (let l = 0; l < count; l++) {
      const a = from[l];
      const b = to[l];
      const w = wind[l];
      const g = link[l];
      for (let m = 0; m < members; m++) {
        const d = temp[(a + m) | 0] - temp[(b + m) | 0];
        const drive = Math.sqrt(d * d + SMALL) + temp[(w + m) | 0];
        const q = conductance[(g + m) | 0] * Math.sqrt(drive * PER_REFERENCE_DIFFERENCE) * d;
        net[(a + m) | 0] -= q;
        net[(b + m) | 0] += q;
      }
    }
  },
  radiation({ count, link, from, to }, { members, temp, conductance }, net) {
    for (let l = 0; l < count; l++) {
      const a = from[l];
      const b = to[l];
      const g = link[l];
      for (let m = 0; m < members; m++) {
        const q = conductance[(g + m) | 0] * fourthPowerDifference(temp[(a + m) | 0], temp[(b + m) | 0]);
        net[(a + m) | 0] -= q;
        net[(b + m) | 0] += q;
      }
    }
  },
};

const SLOPES: Readonly<Record<FluxLaw, SlopeLoop>> = {
  conduction({ count, link, from, to }, { members, temp, conductance }, { flow, byFrom, byTo }) {
    for (let l = 0; l < count; l++) {
      const a = from[l];
      const b = to[l];
      for (let m = 0, o = link[l]; m < members; m++, o++) {
        const g = conductance[o];
        flow[o] = g * (temp[(a + m) | 0] - temp[(b + m) | 0]);
        byFrom[o] = g;
        byTo[o] = -g;
      }
    }
  },
  "free-convection"({ count, link, from, to }, { members, temp, conductance }, { flow, byFrom, byTo }) {
    for (let l = 0; l < count; l++) {
      const a = from[l];
      const b = to[l];
      for (let m = 0, o = link[l]; m < members; m++, o++) {
        const d = temp[(a + m) | 0] - temp[(b + m) | 0];
        const k = conductance[o] * quarterPower(d);
        // ψ = ((d² + ε²)/100 K²)^(1/8): d(ψ d)/dd = ψ (1 + d²/(4 (d² + ε²)))
        const slope = k * (1 + (0.25 * d * d) / (d * d + SMALL));
        flow[o] = k * d;
        byFrom[o] = slope;
        byTo[o] = -slope;
      }
    }
  },
  ventilation(
    { count, link, from, to, wind },
    { members, temp, conductance },
    { flow, byFrom, byTo, byWind },
  ) {
    for (let l = 0; l < count; l++) {
      const a = from[l];
      const b = to[l];
      const w = wind[l];
      for (let m = 0, o = link[l]; m < members; m++, o++) {
        const d = temp[(a + m) | 0] - temp[(b + m) | 0];
        const size = Math.sqrt(d * d + SMALL);
        const root = Math.sqrt((size + temp[(w + m) | 0]) * PER_REFERENCE_DIFFERENCE);
        const byDrive = (0.5 * PER_REFERENCE_DIFFERENCE * conductance[o] * d) / root;
        const slope = conductance[o] * root + (byDrive * d) / size;
        flow[o] = conductance[o] * root * d;
        byFrom[o] = slope;
        byTo[o] = -slope;
        byWind[o] = byDrive;
      }
    }
  },
  radiation({ count, link, from, to }, { members, temp, conductance }, { flow, byFrom, byTo }) {
    for (let l = 0; l < count; l++) {
      const a = from[l];
      const b = to[l];
      for (let m = 0, o = link[l]; m < members; m++, o++) {
        const tempFrom = temp[(a + m) | 0];
        const tempTo = temp[(b + m) | 0];
        const c = 4 * RADIATION_SCALE * conductance[o];
        flow[o] = conductance[o] * fourthPowerDifference(tempFrom, tempTo);
        byFrom[o] = c * tempFrom * tempFrom * tempFrom;
        byTo[o] = -c * tempTo * tempTo * tempTo;
      }
    }
  },
};

/** (|d|/10 K)^1/4, smooth through zero. */
function quarterPower(d: number): number {
  const square = (d * d + SMALL) * (PER_REFERENCE_DIFFERENCE * PER_REFERENCE_DIFFERENCE);
  return Math.sqrt(Math.sqrt(Math.sqrt(square)));
}

/** (a⁴ - b⁴)/(4 (273.15 K)³) [K]. */
function fourthPowerDifference(a: number, b: number): number {
  return RADIATION_SCALE * (a * a + b * b) * (a + b) * (a - b);
}
