import { type FluxLaw, SMOOTHING_TEMPERATURE } from "./network.js";

/**
 * One link evaluated for all members. `temp` holds all temperatures and inputs, [row][member]; `a`, `b`, `w` are the
 * offsets of the link's two ends and of its wind input; `g` the members' conductances at offset `go`.
 */
export interface LinkView {
  readonly temp: Float64Array;
  readonly a: number;
  readonly b: number;
  readonly w: number;
  readonly g: Float64Array;
  readonly go: number;
  readonly members: number;
}

/** Writes the heat flow [W] from a to b of each member into `q`. */
export type FlowKernel = (view: LinkView, q: Float64Array) => void;

/** Writes the flow's slopes [W/K] by the two end temperatures and by the wind input. */
export type SlopeKernel = (view: LinkView, byA: Float64Array, byB: Float64Array, byW: Float64Array) => void;

const SMALL = SMOOTHING_TEMPERATURE * SMOOTHING_TEMPERATURE;
const REFERENCE_DIFFERENCE = 10;
const RADIATION_SCALE = 1 / (4 * 273.15 ** 3);

export const FLOW: Readonly<Record<FluxLaw, FlowKernel>> = {
  conduction({ temp, a, b, g, go, members }, q) {
    for (let m = 0; m < members; m++) q[m] = g[go + m] * (temp[a + m] - temp[b + m]);
  },
  "free-convection"({ temp, a, b, g, go, members }, q) {
    for (let m = 0; m < members; m++) {
      const d = temp[a + m] - temp[b + m];
      q[m] = g[go + m] * quarterPower(d) * d;
    }
  },
  ventilation({ temp, a, b, w, g, go, members }, q) {
    for (let m = 0; m < members; m++) {
      const d = temp[a + m] - temp[b + m];
      q[m] = g[go + m] * Math.sqrt((Math.sqrt(d * d + SMALL) + temp[w + m]) / REFERENCE_DIFFERENCE) * d;
    }
  },
  radiation({ temp, a, b, g, go, members }, q) {
    for (let m = 0; m < members; m++) {
      const ta = temp[a + m];
      const tb = temp[b + m];
      q[m] = g[go + m] * RADIATION_SCALE * (ta * ta + tb * tb) * (ta + tb) * (ta - tb);
    }
  },
};

export const SLOPE: Readonly<Record<FluxLaw, SlopeKernel>> = {
  conduction({ g, go, members }, byA, byB, byW) {
    for (let m = 0; m < members; m++) {
      byA[m] = g[go + m];
      byB[m] = -g[go + m];
      byW[m] = 0;
    }
  },
  "free-convection"({ temp, a, b, g, go, members }, byA, byB, byW) {
    for (let m = 0; m < members; m++) {
      const d = temp[a + m] - temp[b + m];
      // ψ = ((d² + ε²)/100)^(1/8): d(ψ d)/dd = ψ (1 + d²/(4 (d² + ε²)))
      const s = g[go + m] * quarterPower(d) * (1 + (0.25 * d * d) / (d * d + SMALL));
      byA[m] = s;
      byB[m] = -s;
      byW[m] = 0;
    }
  },
  ventilation({ temp, a, b, w, g, go, members }, byA, byB, byW) {
    for (let m = 0; m < members; m++) {
      const d = temp[a + m] - temp[b + m];
      const size = Math.sqrt(d * d + SMALL);
      const root = Math.sqrt((size + temp[w + m]) / REFERENCE_DIFFERENCE);
      const byDrive = (0.5 * g[go + m] * d) / (root * REFERENCE_DIFFERENCE);
      const s = g[go + m] * root + (byDrive * d) / size;
      byA[m] = s;
      byB[m] = -s;
      byW[m] = byDrive;
    }
  },
  radiation({ temp, a, b, g, go, members }, byA, byB, byW) {
    for (let m = 0; m < members; m++) {
      const c = 4 * RADIATION_SCALE * g[go + m];
      byA[m] = c * temp[a + m] ** 3;
      byB[m] = -c * temp[b + m] ** 3;
      byW[m] = 0;
    }
  },
};

/** (|d|/10 K)^1/4, smooth through zero. */
function quarterPower(d: number): number {
  return Math.sqrt(Math.sqrt(Math.sqrt((d * d + SMALL) / (REFERENCE_DIFFERENCE * REFERENCE_DIFFERENCE))));
}
