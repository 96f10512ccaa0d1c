import {
  add,
  div,
  mul,
  neg,
  num,
  type RowKernel,
  rowKernel,
  sqrt,
  sub,
  type Term,
} from "../numerics/index.js";
import { type FluxLaw, SMOOTHING_TEMPERATURE } from "./network.js";

/**
 * A flux law as loops over links and members (flows of network.ts; the conductance is the one in force, film and input
 * factors included).
 */
export interface LawKernels {
  /** Takes each link's flow [W] from the net heat of its one end and gives it to the other's: operands FLOW_OPERANDS. */
  readonly flows: RowKernel;
  /** Writes each link's flow [W] and its slopes [W/K] by the two temperatures and the wind: operands SLOPE_OPERANDS. */
  readonly slopes: RowKernel;
}

const FLOW_OPERANDS = {
  conductance: "row",
  from: "row",
  to: "row",
  wind: "row",
  netFrom: "row",
  netTo: "row",
} as const;

const SLOPE_OPERANDS = {
  conductance: "row",
  from: "row",
  to: "row",
  wind: "row",
  flow: "row",
  byFrom: "row",
  byTo: "row",
  byWind: "row",
} as const;

interface Slopes {
  readonly flow: Term;
  readonly byFrom: Term;
  readonly byTo: Term;
  readonly byWind: Term;
}

/** What a law says of one link: G [W/K], the two temperatures [K] and the wind as a temperature [K]. */
interface Law {
  flow(g: Term, from: Term, to: Term, wind: Term, keep: (term: Term) => Term): Term;
  slopes(g: Term, from: Term, to: Term, wind: Term, keep: (term: Term) => Term): Slopes;
}

const SMALL = num(SMOOTHING_TEMPERATURE * SMOOTHING_TEMPERATURE);
const PER_REFERENCE_DIFFERENCE = 1 / 10;
const RADIATION_SCALE = 1 / (4 * 273.15 ** 3);
const NONE = num(0);

const LAWS: Readonly<Record<FluxLaw, Law>> = {
  conduction: {
    flow: (g, from, to) => mul(g, sub(from, to)),
    slopes: (g, from, to) => ({ flow: mul(g, sub(from, to)), byFrom: g, byTo: neg(g), byWind: NONE }),
  },
  "free-convection": {
    flow(g, from, to, _, keep) {
      const d = keep(sub(from, to));
      return mul(g, quarterPower(keep(add(mul(d, d), SMALL))), d);
    },
    slopes(g, from, to, _, keep) {
      const d = keep(sub(from, to));
      const square = keep(mul(d, d));
      const smooth = keep(add(square, SMALL));
      const k = keep(mul(g, quarterPower(smooth)));
      // ψ = ((d² + ε²)/100 K²)^(1/8): d(ψ d)/dd = ψ (1 + d²/(4 (d² + ε²)))
      const slope = keep(mul(k, add(num(1), div(mul(num(0.25), square), smooth))));
      return { flow: mul(k, d), byFrom: slope, byTo: neg(slope), byWind: NONE };
    },
  },
  ventilation: {
    flow(g, from, to, wind, keep) {
      const d = keep(sub(from, to));
      const size = sqrt(add(mul(d, d), SMALL));
      return mul(g, sqrt(mul(add(size, wind), num(PER_REFERENCE_DIFFERENCE))), d);
    },
    slopes(g, from, to, wind, keep) {
      const d = keep(sub(from, to));
      const size = keep(sqrt(add(mul(d, d), SMALL)));
      const root = keep(sqrt(mul(add(size, wind), num(PER_REFERENCE_DIFFERENCE))));
      const byDrive = keep(div(mul(num(0.5 * PER_REFERENCE_DIFFERENCE), g, d), root));
      const slope = keep(add(mul(g, root), div(mul(byDrive, d), size)));
      return { flow: mul(g, root, d), byFrom: slope, byTo: neg(slope), byWind: byDrive };
    },
  },
  radiation: {
    flow: (g, from, to) => mul(g, fourthPowerDifference(from, to)),
    slopes(g, from, to, _, keep) {
      const c = keep(mul(num(4 * RADIATION_SCALE), g));
      return {
        flow: mul(g, fourthPowerDifference(from, to)),
        byFrom: mul(c, from, from, from),
        byTo: neg(mul(c, to, to, to)),
        byWind: NONE,
      };
    },
  },
};

/** (|d|/10 K)^1/4, smooth through zero, of d² + ε². */
function quarterPower(smoothSquare: Term): Term {
  return sqrt(sqrt(sqrt(mul(smoothSquare, num(PER_REFERENCE_DIFFERENCE * PER_REFERENCE_DIFFERENCE)))));
}

/** (a⁴ - b⁴)/(4 (273.15 K)³) [K]. */
function fourthPowerDifference(a: Term, b: Term): Term {
  return mul(num(RADIATION_SCALE), add(mul(a, a), mul(b, b)), add(a, b), sub(a, b));
}

function kernelsOf(law: Law): LawKernels {
  return {
    flows: rowKernel(FLOW_OPERANDS, [], ({ conductance, from, to, wind, netFrom, netTo }, { keep, set }) => {
      const flow = keep(law.flow(conductance, from, to, wind, keep));
      set(netFrom, sub(netFrom, flow));
      set(netTo, add(netTo, flow));
    }),
    slopes: rowKernel(SLOPE_OPERANDS, [], (terms, { keep, set }) => {
      const { conductance, from, to, wind } = terms;
      const found = law.slopes(keep(conductance), keep(from), keep(to), wind, keep);
      set(terms.flow, found.flow);
      set(terms.byFrom, found.byFrom);
      set(terms.byTo, found.byTo);
      set(terms.byWind, found.byWind);
    }),
  };
}

export const LAW_KERNELS: Readonly<Record<FluxLaw, LawKernels>> = {
  conduction: kernelsOf(LAWS.conduction),
  "free-convection": kernelsOf(LAWS["free-convection"]),
  ventilation: kernelsOf(LAWS.ventilation),
  radiation: kernelsOf(LAWS.radiation),
};
