import { absolutePerComponent, type Tolerance } from "./stepper.js";
import type { EnsembleSystem } from "./system.js";

/**
 * Scaled error that the first step is to have. Project judgement: the most with which the runs against SciPy stay as close
 * as is asked of them.
 */
const FIRST_ERROR = 0.03;

/**
 * First step size from the size and change of f, with the worst member deciding. Probed as in Hairer, Nørsett & Wanner,
 * Solving Ordinary Differential Equations I, 2nd ed. 1993, section II.4. Their last estimate, the fourth root of 0.01 by
 * the larger of |f'| and |f''|, has no unit of time: in seconds it is far too short. Here it is the step whose error of
 * fourth order is FIRST_ERROR, with the fourth slope taken as |f'|³/|f|², which it is for an exponential, and at least that
 * over which the bend alone comes to as much. Costs one evaluation of f.
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
  if (bend <= 1e-15) return Math.min(longest, 100 * guess);
  const byScale = ((FIRST_ERROR * speed ** 2) / bend ** 3) ** (1 / 4);
  const byBend = Math.sqrt((2 * FIRST_ERROR) / bend);
  return Math.min(longest, 100 * guess, Math.max(byScale, byBend));
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
