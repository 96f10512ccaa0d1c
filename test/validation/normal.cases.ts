import { normalQuantile } from "../../src/numerics/index.js";
import type { ValidationGroup } from "./case.js";

const CHECKS: readonly [number, number][] = [
  [0.25, -0.6744897501960817],
  [0.001, -3.090232306167814],
  [1e-20, -9.262340089798408],
];

export const NORMAL: ValidationGroup = {
  title: "inverse normal distribution",
  part: "mathematics",
  cases: CHECKS.map(([p, expected]) => ({
    name: `z of p = ${p}`,
    source: "Wichura, Applied Statistics 37 (1988) 477-484, test values of AS 241",
    mark: "from memory",
    unit: "1",
    expected,
    tolerance: Math.abs(expected) * 1e-14,
    toleranceReason: "rounding of double precision",
    got: () => normalQuantile(p),
  })),
};
