import { checkRequest } from "./check-request.js";
import { firstStepSize, scaledNorm } from "./first-step.js";
import { remedyOf } from "./remedy.js";
import { createStepControl } from "./step-control.js";
import { createStepper, type Stepper } from "./stepper.js";
import type { SolveRequest, SolveResult, SolveStatus, Step } from "./system.js";

const DEFAULT_MAXIMUM_STEPS = 100_000;

/**
 * Integrates an ensemble from `start` to `end` with the Rosenbrock method of tableau.ts under error control: the
 * worst member's root-mean-square of error/(absolute + relative |y|) over its components stays below 1 in every step.
 * A numerical failure comes back as a status with the way out; a wrong request throws a RangeError.
 */
export function solve(request: SolveRequest): SolveResult {
  checkRequest(request);
  const stepper = createStepper(request.system, request.initial, request.tolerance);
  try {
    return integrate(request, stepper);
  } finally {
    stepper.release();
  }
}

function integrate(request: SolveRequest, stepper: Stepper): SolveResult {
  const { system, initial, start, end, tolerance, isKink, onStretch, onStep } = request;
  const { jumps = [], sampleTimes = [] } = request;
  const { maximumSteps = DEFAULT_MAXIMUM_STEPS, maximumStep = Number.POSITIVE_INFINITY } = request;
  const total = system.size * system.members;

  const control = createStepControl();
  const samples = new Float64Array(sampleTimes.length * total).fill(Number.NaN);
  let sampled = 0;
  let t = start;
  let steps = 0;
  let rejected = 0;
  /** Evaluations of f spent on step sizes where a stretch begins. */
  let probes = 0;
  let wantedStep = request.firstStep ?? 0;
  /** f at the end of the stretch before. */
  const slopeBefore = new Float64Array(total);

  const step = {
    start,
    end,
    interpolate(at: number, out: Float64Array): void {
      if (!(at >= step.start && at <= step.end))
        throw new RangeError(`invalid t: ${at} (expected ${step.start} … ${step.end})`);
      stepper.interpolate((at - step.start) / (step.end - step.start), out, 0);
    },
  } satisfies Step;

  while (sampled < sampleTimes.length && sampleTimes[sampled] === start)
    samples.set(initial, sampled++ * total);
  for (let stretch = 0; stretch <= jumps.length && t < end; stretch++) {
    const stop = stretch < jumps.length ? jumps[stretch] : end;
    const status = runStretch(stop);
    if (status !== "completed") return result(status);
  }
  return result("completed");

  function runStretch(stop: number): SolveStatus {
    const mayJump = t !== start && isKink?.(t) !== true;
    if (mayJump) {
      system.derivative(t, stepper.state(), slopeBefore);
      probes++;
    }
    onStretch?.(t, stop);
    control.restart();
    if (!stepper.begin(t)) return "not-finite";
    if (mayJump && !keepsStep()) wantedStep = 0;
    if (wantedStep === 0) {
      const longest = Math.min(maximumStep, stop - t);
      wantedStep = firstStepSize(system, t, stepper.state(), stepper.slope(), tolerance, longest);
      probes++;
    }
    let begun = true;
    while (t < stop) {
      if (!begun && !stepper.begin(t)) return "not-finite";
      begun = true;
      if (steps + rejected >= maximumSteps) return "too-many-steps";
      const wanted = Math.min(wantedStep, maximumStep);
      const stepEnd = landing(t, wanted, stop);
      const outcome = stepper.attempt(t, stepEnd);
      const error = stepper.errorNorm();
      if (outcome !== "done" || error > 1) {
        rejected++;
        wantedStep = (stepEnd - t) * (outcome === "done" ? control.rejected(error) : control.failed());
        if (isTooSmall(wantedStep)) return outcome === "done" ? "step-too-small" : outcome;
        continue;
      }
      steps++;
      const next = (stepEnd - t) * control.accepted(error);
      // A step cut short to land on `stop` says nothing against the longer one that was wanted.
      wantedStep = stepEnd - t < wanted && next >= stepEnd - t ? Math.max(next, wanted) : next;
      step.start = t;
      step.end = stepEnd;
      takeSamples();
      const goOn = onStep?.(step) ?? true;
      stepper.accept();
      t = stepEnd;
      begun = false;
      if (!goOn) return "cancelled";
    }
    return "completed";
  }

  /**
   * Whether the step size outlives a jump: where f jumps so far that within that step it would move the state by more
   * than the tolerance, a transient begins of which the former step knows nothing, and which the error estimate of so
   * long a step can miss. Where only the slope of f jumps, the step stays.
   */
  function keepsStep(): boolean {
    const slope = stepper.slope();
    for (let k = 0; k < total; k++) slopeBefore[k] = slope[k] - slopeBefore[k];
    return scaledNorm(system, slopeBefore, stepper.state(), tolerance) * wantedStep <= 1;
  }

  function takeSamples(): void {
    while (sampled < sampleTimes.length && sampleTimes[sampled] <= step.end) {
      const theta = (sampleTimes[sampled] - step.start) / (step.end - step.start);
      stepper.interpolate(theta, samples, sampled++ * total);
    }
  }

  function isTooSmall(h: number): boolean {
    return !(h > 16 * Number.EPSILON * Math.abs(t) && h > 1e-30 * (end - start));
  }

  function result(status: SolveStatus): SolveResult {
    return {
      status,
      remedy: remedyOf(status, t, request),
      time: t,
      state: Float64Array.from(stepper.state()),
      samples,
      statistics: {
        steps,
        rejected,
        derivatives: stepper.derivatives() + probes,
        factorisations: stepper.factorisations(),
      },
    };
  }
}

/** End of the next step: exactly `stop` when it is near, half-way when `stop` is less than two steps away. */
function landing(t: number, wanted: number, stop: number): number {
  const left = stop - t;
  if (wanted >= left * (1 - 1e-9)) return stop;
  return wanted * 2 > left ? t + 0.5 * left : t + wanted;
}
