import { add, div, lookUp, mul, num, rowKernel, sub, type Term } from "../numerics/index.js";

/** Conductance in force of a link that an input multiplies. */
export const MULTIPLY_BY_INPUT = rowKernel(
  { inForce: "row", conductance: "row", input: "row" } as const,
  [],
  ({ inForce, conductance, input }, { set }) => set(inForce, mul(conductance, input)),
);

/** The same by the film factor of the mean of a link's two temperatures. */
export const MULTIPLY_BY_FILM = rowKernel(
  { inForce: "row", conductance: "row", from: "row", to: "row", film: "shared" } as const,
  [],
  ({ inForce, conductance, from, to, film }, statements) => {
    const { value } = lookUp(film, meanOf(from, to), statements);
    statements.set(inForce, mul(conductance, value));
  },
);

/** Adds to both slopes of a link what comes through its film factor. */
export const ADD_FILM_SLOPES = rowKernel(
  { flow: "row", byFrom: "row", byTo: "row", from: "row", to: "row", film: "shared" } as const,
  [],
  ({ flow, byFrom, byTo, from, to, film }, statements) => {
    const { keep, set } = statements;
    const { value, slope } = lookUp(film, meanOf(from, to), statements);
    const byMean = keep(div(mul(num(0.5), flow, slope), value));
    set(byFrom, add(byFrom, byMean));
    set(byTo, add(byTo, byMean));
  },
);

function meanOf(a: Term, b: Term): Term {
  return mul(num(0.5), add(a, b));
}

/** Adds a link's flow to the net heat of its ends and its slopes, per heat capacity, to the Jacobian. */
export const ADD_SLOPES = rowKernel(
  {
    ...{ flow: "row", byFrom: "row", byTo: "row", netFrom: "row", netTo: "row" },
    ...{ inverseFrom: "row", inverseTo: "row", fromFrom: "row", fromTo: "row", toFrom: "row", toTo: "row" },
  } as const,
  [],
  (t, { keep, set }) => {
    const [flow, byFrom, byTo] = [keep(t.flow), keep(t.byFrom), keep(t.byTo)];
    const [inverseFrom, inverseTo] = [keep(t.inverseFrom), keep(t.inverseTo)];
    set(t.netFrom, sub(t.netFrom, flow));
    set(t.netTo, add(t.netTo, flow));
    set(t.fromFrom, sub(t.fromFrom, mul(byFrom, inverseFrom)));
    set(t.fromTo, sub(t.fromTo, mul(byTo, inverseFrom)));
    set(t.toFrom, add(t.toFrom, mul(byFrom, inverseTo)));
    set(t.toTo, add(t.toTo, mul(byTo, inverseTo)));
  },
);

/** The same where only the one end is a part. */
export const ADD_SLOPES_OF_FROM = rowKernel(
  { flow: "row", by: "row", net: "row", inverse: "row", entry: "row" } as const,
  [],
  ({ flow, by, net, inverse, entry }, { set }) => {
    set(net, sub(net, flow));
    set(entry, sub(entry, mul(by, inverse)));
  },
);

export const ADD_SLOPES_OF_TO = rowKernel(
  { flow: "row", by: "row", net: "row", inverse: "row", entry: "row" } as const,
  [],
  ({ flow, by, net, inverse, entry }, { set }) => {
    set(net, add(net, flow));
    set(entry, add(entry, mul(by, inverse)));
  },
);

/** Adds a link's change of flow in time, as an input changes at `rate`, to its ends. */
export const ADD_RATE = rowKernel(
  { slope: "row", rate: "row", netFrom: "row", netTo: "row" } as const,
  [],
  ({ slope, rate, netFrom, netTo }, { keep, set }) => {
    const change = keep(mul(slope, rate));
    set(netFrom, sub(netFrom, change));
    set(netTo, add(netTo, change));
  },
);
