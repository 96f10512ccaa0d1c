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
    return new Integration(request, stepper).run();
  } finally {
    stepper.release();
  }
}

/** A run under way: where it stands, what it wants next, and what it cost. */
class Integration {
  private readonly total: number;
  private readonly samples: Float64Array;
  private readonly control = createStepControl();
  private readonly step: Step & { start: number; end: number };
  /** f at the end of the stretch before. */
  private readonly slopeBefore: Float64Array;
  private t: number;
  private wantedStep: number;
  private sampled = 0;
  private steps = 0;
  private rejected = 0;
  /** Evaluations of f spent on step sizes where a stretch begins. */
  private probes = 0;

  constructor(
    private readonly request: SolveRequest,
    private readonly stepper: Stepper,
  ) {
    const { system, start, end, sampleTimes = [], firstStep = 0 } = request;
    this.total = system.size * system.members;
    this.samples = new Float64Array(sampleTimes.length * this.total).fill(Number.NaN);
    this.slopeBefore = new Float64Array(this.total);
    this.t = start;
    this.wantedStep = firstStep;
    const step = {
      start,
      end,
      interpolate(at: number, out: Float64Array): void {
        if (!(at >= step.start && at <= step.end))
          throw new RangeError(`invalid t: ${at} (expected ${step.start} … ${step.end})`);
        stepper.interpolate((at - step.start) / (step.end - step.start), out, 0);
      },
    };
    this.step = step;
  }

  /** To the end, from jump to jump. */
  run(): SolveResult {
    const { initial, start, end, jumps = [], sampleTimes = [] } = this.request;
    while (this.sampled < sampleTimes.length && sampleTimes[this.sampled] === start)
      this.samples.set(initial, this.sampled++ * this.total);
    for (let stretch = 0; stretch <= jumps.length && this.t < end; stretch++) {
      const status = this.stretch(stretch < jumps.length ? jumps[stretch] : end);
      if (status !== "completed") return this.result(status);
    }
    return this.result("completed");
  }

  private stretch(stop: number): SolveStatus {
    const { stepper } = this;
    const { maximumSteps = DEFAULT_MAXIMUM_STEPS } = this.request;
    if (!this.begun(stop)) return "not-finite";
    let begun = true;
    while (this.t < stop) {
      if (!begun && !stepper.begin(this.t)) return "not-finite";
      if (this.steps + this.rejected >= maximumSteps) return "too-many-steps";
      const status = this.tried(stop);
      if (status !== "rejected" && status !== "accepted") return status;
      begun = status === "rejected";
    }
    return "completed";
  }

  /** Begins a stretch with a step of a size that it allows. */
  private begun(stop: number): boolean {
    const { request, stepper, t } = this;
    const { system, start, tolerance, isKink, onStretch, maximumStep = Number.POSITIVE_INFINITY } = request;
    const mayJump = t !== start && isKink?.(t) !== true;
    if (mayJump) {
      system.derivative(t, stepper.state(), this.slopeBefore);
      this.probes++;
    }
    onStretch?.(t, stop);
    this.control.restart();
    if (!stepper.begin(t)) return false;
    if (mayJump && !this.keepsStep()) this.wantedStep = 0;
    if (this.wantedStep === 0) {
      const longest = Math.min(maximumStep, stop - t);
      this.wantedStep = firstStepSize(system, t, stepper.state(), stepper.slope(), tolerance, longest);
      this.probes++;
    }
    return true;
  }

  /** Tries one step, and goes on from its end where its error allows it. */
  private tried(stop: number): SolveStatus | "accepted" | "rejected" {
    const { stepper, control, t } = this;
    const { onStep, maximumStep = Number.POSITIVE_INFINITY } = this.request;
    const wanted = Math.min(this.wantedStep, maximumStep);
    const stepEnd = landing(t, wanted, stop);
    const outcome = stepper.attempt(t, stepEnd);
    const error = stepper.errorNorm();
    if (outcome !== "done" || error > 1) {
      this.rejected++;
      this.wantedStep = (stepEnd - t) * (outcome === "done" ? control.rejected(error) : control.failed());
      if (!this.isTooSmall(this.wantedStep)) return "rejected";
      return outcome === "done" ? "step-too-small" : outcome;
    }
    this.steps++;
    const next = (stepEnd - t) * control.accepted(error);
    // A step cut short to land on `stop` says nothing against the longer one that was wanted.
    this.wantedStep = stepEnd - t < wanted && next >= stepEnd - t ? Math.max(next, wanted) : next;
    this.step.start = t;
    this.step.end = stepEnd;
    this.takeSamples();
    const goOn = onStep?.(this.step) ?? true;
    stepper.accept();
    this.t = stepEnd;
    return goOn ? "accepted" : "cancelled";
  }

  /**
   * Whether the step size outlives a jump: where f jumps so far that within that step it would move the state by more
   * than the tolerance, a transient begins of which the former step knows nothing, and which the error estimate of so
   * long a step can miss. Where only the slope of f jumps, the step stays.
   */
  private keepsStep(): boolean {
    const { slopeBefore, stepper } = this;
    const { system, tolerance } = this.request;
    const slope = stepper.slope();
    for (let k = 0; k < this.total; k++) slopeBefore[k] = slope[k] - slopeBefore[k];
    return scaledNorm(system, slopeBefore, stepper.state(), tolerance) * this.wantedStep <= 1;
  }

  private takeSamples(): void {
    const { start, end } = this.step;
    const { sampleTimes = [] } = this.request;
    while (this.sampled < sampleTimes.length && sampleTimes[this.sampled] <= end) {
      const theta = (sampleTimes[this.sampled] - start) / (end - start);
      this.stepper.interpolate(theta, this.samples, this.sampled++ * this.total);
    }
  }

  private isTooSmall(h: number): boolean {
    const { start, end } = this.request;
    return !(h > 16 * Number.EPSILON * Math.abs(this.t) && h > 1e-30 * (end - start));
  }

  private result(status: SolveStatus): SolveResult {
    const { stepper, t, samples, steps, rejected } = this;
    return {
      status,
      remedy: remedyOf(status, t, this.request),
      time: t,
      state: Float64Array.from(stepper.state()),
      samples,
      statistics: {
        steps,
        rejected,
        derivatives: stepper.derivatives() + this.probes,
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
