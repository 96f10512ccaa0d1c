import {
  hires,
  oneStore,
  orego,
  type Problem,
  radiator,
  rober,
  run,
  storeInAir,
  threeStores,
  twoStores,
  vanDerPol,
  vanDerPolScaled,
} from "../solver/problems.js";
import { type Mark, relative, type ValidationCase, type ValidationGroup } from "./case.js";

const DAY = 86400;
const HOUR = 3600;

/** Four correct digits at a relative tolerance of 1e-6 is what these problems are set for here. */
const FOUR_DIGITS = "scd ≥ 4 at relative tolerance 1e-6";

/** Absolute 1e-8 and relative 1e-9 local error over some hundred steps. */
const NETWORK_TOLERANCE = 1e-6;

export const STIFF_PROBLEMS: ValidationGroup = {
  title: "solver: published stiff problems",
  part: "mathematics",
  cases: [...rober1e11(), ...roberOnTheWay(), ...hiresCases(), ...vanDerPolCases(), ...oregoCases()],
};

export const HEAT_NETWORKS: ValidationGroup = {
  title: "solver: heat networks with exact solutions",
  part: "mathematics",
  cases: [...oneStoreCases(), ...twoStoreCases(), ...threeStoreCases(), ...inAirCases(), ...radiatorCases()],
};

interface Expected {
  readonly problem: Problem;
  readonly absolute: number;
  readonly name: string;
  readonly source: string;
  readonly mark: Mark;
  readonly values: readonly number[];
}

function stiffCases({ problem, absolute, name, source, mark, values }: Expected): ValidationCase[] {
  const state = once(() => run(problem, absolute, 1e-6).state);
  return values.map((expected, i) => ({
    name: `${name}, y${i + 1}(${problem.end})`,
    source,
    mark,
    unit: "1",
    expected,
    tolerance: relative(expected, 1e-4),
    toleranceReason: FOUR_DIGITS,
    got: () => state()[i],
  }));
}

function rober1e11(): ValidationCase[] {
  return stiffCases({
    problem: rober(1e11),
    absolute: 1e-16,
    name: "ROBER",
    source: "Test Set for IVP Solvers, problem ROBER, reference solution as given in IVPTestSuite.jl",
    mark: "published",
    values: [0.2083340149701255e-7, 0.8333360770334713e-13, 0.999999979166505],
  });
}

function roberOnTheWay(): ValidationCase[] {
  const table: readonly (readonly [number, readonly number[]])[] = [
    [0.4, [9.8517211386e-1, 3.386395379e-5, 1.4794022185e-2]],
    [4, [9.0551867858e-1, 2.2404756876e-5, 9.4458916659e-2]],
    [40, [7.1582706872e-1, 9.1855347646e-6, 2.8416374575e-1]],
    [400, [4.5051866847e-1, 3.2229014417e-6, 5.4947810863e-1]],
    [4e3, [1.8320225778e-1, 8.9423712528e-7, 8.1679684799e-1]],
    [4e5, [4.938274521e-3, 1.984994088e-8, 9.9506170563e-1]],
  ];
  return table.flatMap(([end, values]) =>
    stiffCases({
      problem: rober(end),
      absolute: 1e-12,
      name: "ROBER",
      source: "Robertson's problem, Radau IIA of order 5 at relative tolerance 1e-11",
      mark: "computed from the published formula",
      values,
    }),
  );
}

function hiresCases(): ValidationCase[] {
  return [
    ...stiffCases({
      problem: hires(321.8122),
      absolute: 1e-10,
      name: "HIRES",
      source: "Test Set for IVP Solvers, problem HIRES, reference solution as given in IVPTestSuite.jl",
      mark: "published",
      values: [
        0.7371312573325668e-3, 0.1442485726316185e-3, 0.5888729740967575e-4, 0.1175651343283149e-2,
        0.2386356198831331e-2, 0.6238968252742796e-2, 0.2849998395185769e-2, 0.2850001604814231e-2,
      ],
    }),
    ...stiffCases({
      problem: hires(421.8122),
      absolute: 1e-10,
      name: "HIRES",
      source:
        "Hairer & Wanner II, section IV.10, equations (10.4), end of their interval; Radau IIA at 1e-11",
      mark: "computed from the published formula",
      values: [
        0.6703055036e-3, 0.130996847e-3, 0.468622316e-4, 0.1044668021e-2, 0.594883831e-3, 0.1399628834e-2,
        0.1014492758e-2,
      ],
    }),
  ];
}

function vanDerPolCases(): ValidationCase[] {
  const source = "Hairer & Wanner II, section IV.10, problem VDPOL; exact values of their test drivers";
  return [
    ...stiffCases({
      problem: vanDerPolScaled(1e-6, 1),
      absolute: 1e-6,
      name: "VDPOL, ε = 1e-6",
      source,
      mark: "published",
      values: [-1.86364625480813, 0.753543086543546],
    }),
    ...stiffCases({
      problem: vanDerPolScaled(1e-6, 2),
      absolute: 1e-6,
      name: "VDPOL, ε = 1e-6",
      source,
      mark: "published",
      values: [1.706167732170456, -0.8928097010248257],
    }),
    ...stiffCases({
      problem: vanDerPol(1000, 2000),
      absolute: 1e-9,
      name: "VDPOL, μ = 1000",
      source: "Test Set for IVP Solvers, problem VDPOL, its driver's reference solution",
      mark: "published",
      values: [1.706167732170469, -0.8928097010248125e-3],
    }),
  ];
}

function oregoCases(): ValidationCase[] {
  return [
    ...stiffCases({
      problem: orego(30),
      absolute: 1e-6,
      name: "OREGO",
      source: "Hairer & Wanner II, section IV.10, problem OREGO; Radau IIA at 1e-11",
      mark: "computed from the published formula",
      values: [1.00066146718, 1512.778937348, 10358.54312767],
    }),
    ...stiffCases({
      problem: orego(360),
      absolute: 1e-6,
      name: "OREGO",
      source: "Hairer & Wanner II, section IV.10, problem OREGO; exact values of their test drivers",
      mark: "published",
      values: [1.000814870318523, 1228.178521549917, 132.0554942846706],
    }),
  ];
}

interface NetworkTable {
  readonly problem: Problem;
  readonly name: string;
  readonly source?: string;
  readonly unit?: string;
  /** Time and the exact values then. */
  readonly rows: readonly (readonly [number, readonly number[]])[];
}

function networkCases({ problem, name, source, unit = "°C", rows }: NetworkTable): ValidationCase[] {
  const sampleTimes = rows.map(([t]) => t);
  const size = problem.system.size;
  const samples = once(() => run(problem, 1e-8, 1e-9, { sampleTimes }).samples);
  return rows.flatMap(([t, values], s) =>
    values.map((expected, i) => ({
      name: `${name}, part ${i + 1} at ${t} s`,
      source: source ?? "matrix exponential of the network's equations in 30 digits",
      mark: "computed from the published formula" as const,
      unit,
      expected,
      tolerance: NETWORK_TOLERANCE,
      toleranceReason:
        "local errors of 1e-8 K and 1e-9 of the value, summed over the steps and through dense output",
      got: () => samples()[s * size + i],
    })),
  );
}

function oneStoreCases(): ValidationCase[] {
  return networkCases({
    problem: oneStore(28800),
    name: "one store, 50 kJ/K, 5 W/K, 200 W, -30 °C",
    rows: [
      [3600, [-17.9070530428412]],
      [7200, [-9.47009023839887]],
      [10000, [-4.71517764685769]],
      [14400, [0.52288965271513]],
      [28800, [7.75460948663465]],
    ],
  });
}

function twoStoreCases(): ValidationCase[] {
  return networkCases({
    problem: twoStores(43200),
    name: "two stores, 60 and 15 kJ/K, 100 W, -25 °C",
    rows: [
      [600, [-24.86391260453058, -21.62703313609965]],
      [1800, [-24.08963864859226, -17.41243882389099]],
      [3600, [-22.52484249048231, -14.01711376112142]],
      [7200, [-19.63966938909035, -10.39856555601105]],
      [14400, [-15.96101073686652, -6.484978650038705]],
      [43200, [-12.36169868291443, -2.698071556583378]],
    ],
  });
}

function threeStoreCases(): ValidationCase[] {
  return networkCases({
    problem: threeStores(36000),
    name: "three stores, rates 3780 apart",
    rows: [
      [1, [-10.00163217925788, 19.98766985914426, -20.14627778121402]],
      [10, [-9.989841268429935, 19.87704759343831, -11.52545478526433]],
      [60, [-9.891389634328929, 19.27474956821493, -11.26887392158413]],
      [600, [-9.120157294686545, 13.92348282440778, -10.56585724242855]],
      [3600, [-9.213328404449213, 2.665840731580512, -10.64750379596511]],
      [36000, [-14.65668865732797, -4.666033044369935, -15.59695731089241]],
    ],
  });
}

function inAirCases(): ValidationCase[] {
  const omega = (2 * Math.PI) / DAY;
  const daily = storeInAir(
    14400,
    (t) => -20 + 10 * Math.sin(omega * t),
    (t) => 10 * omega * Math.cos(omega * t),
    -20,
    DAY,
  );
  const falling = storeInAir(
    3 * HOUR,
    (t) => -10 - (2 * t) / HOUR,
    () => -2 / HOUR,
    -10,
    10 * HOUR,
  );
  const source = "first-order response in closed form";
  return [
    ...networkCases({
      problem: daily,
      name: "store of 4 h under a daily wave of 10 K",
      source,
      rows: [
        [21600, [-14.1159592009736]],
        [43200, [-14.7566415197963]],
        [86400, [-24.9823070330726]],
      ],
    }),
    ...networkCases({
      problem: falling,
      name: "store of 3 h under air falling 2 K/h",
      source,
      rows: [
        [HOUR, [-10.2991878634427]],
        [3 * HOUR, [-12.2072766470287]],
        [10 * HOUR, [-24.2140439600835]],
      ],
    }),
  ];
}

function radiatorCases(): ValidationCase[] {
  return networkCases({
    problem: radiator(36000),
    name: "body radiating to 0 K",
    source: "T = (T0^-3 + 3 σ ε A t/C)^(-1/3)",
    unit: "K",
    rows: [
      [600, [338.284799168112]],
      [3600, [235.192629233774]],
      [36000, [116.772592395069]],
    ],
  });
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}
