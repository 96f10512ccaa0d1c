import { absolutePerComponent, type Tolerance } from "./stepper.js";
import type { EnsembleSystem } from "./system.js";

/**
 * First step size from the size and change of f, algorithm of Hairer, Nørsett & Wanner, Solving Ordinary Differential
 * Equations I, 2nd ed. 1993, section II.4, with the worst member deciding. Costs one evaluation of f.
 */
export function firstStepSize(
  system: EnsembleSystem,
  t: number,
  y: Float64Array,
  slope: Float64Array,
  tolerance: Tolerance,
  longest: number,
): number {
  const size = scaledNorm(system, y, y, tolerance);
  const speed = scaledNorm(system, slope, y, tolerance);
  const guess = Math.min(longest, size < 1e-5 || speed < 1e-5 ? 1e-6 : 0.01 * (size / speed));
  const probe = new Float64Array(y.length);
  const change = new Float64Array(y.length);
  for (let k = 0; k < y.length; k++) probe[k] = y[k] + guess * slope[k];
  system.derivative(t + guess, probe, change);
  for (let k = 0; k < y.length; k++) change[k] = (change[k] - slope[k]) / guess;
  const bend = scaledNorm(system, change, y, tolerance);
  if (!Number.isFinite(bend)) return 1e-3 * guess;
  const most = Math.max(speed, bend);
  const byBend = most <= 1e-15 ? Math.max(1e-6, 1e-3 * guess) : (0.01 / most) ** (1 / 4);
  return Math.min(longest, 100 * guess, byBend);
}

/** The worst member's root-mean-square of values/(absolute + relative |y|). */
export function scaledNorm(
  system: EnsembleSystem,
  values: Float64Array,
  y: Float64Array,
  tolerance: Tolerance,
): number {
  const { size, members } = system;
  const absolute = absolutePerComponent(tolerance, size);
  let worst = 0;
  for (let m = 0; m < members; m++) {
    let sum = 0;
    for (let i = 0, k = m; i < size; i++, k += members) {
      sum += (values[k] / (absolute[i] + tolerance.relative * Math.abs(y[k]))) ** 2;
    }
    if (!(sum <= worst)) worst = sum;
  }
  return Math.sqrt(worst / size);
}
