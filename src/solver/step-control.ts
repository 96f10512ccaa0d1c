/** Order of the error estimate's local error: it shrinks as h^4. */
const ORDER = 4;
const SAFETY = 0.9;
const SMALLEST_FACTOR = 0.2;
const LARGEST_FACTOR = 6;
/** A former error below this counts as this much, so that one very accurate step does not hold back the next. */
const SMALLEST_FORMER_ERROR = 1e-4;
/**
 * Below this error the step is so much too short that a smooth sequence is not the point. Project judgement, tried on
 * the catalogue's aircraft: a seventh fewer steps at the same error against CVODE (`benchmarks/run.mjs`).
 */
const FAR_BELOW = 0.01;

/** Proposes step sizes from scaled errors. */
export interface StepControl {
  /** Factor for the step after an accepted one of this error. */
  accepted(error: number): number;
  /** Factor for another try after a rejected one of this error. */
  rejected(error: number): number;
  /** Factor for another try where no error could be had. */
  failed(): number;
  /** Forgets the past, for a new stretch. */
  restart(): void;
}

/**
 * Proportional-integral control of the step, h_new = h S err^(-0.6/k) err_before^(0.2/k): controller PI.4.2 of
 * Söderlind, Digital filters in adaptive time-stepping, ACM Trans. Math. Softw. 29 (2003) 1-26. Against the older
 * exponents 0.7 and 0.4 (Gustafsson, ACM Trans. Math. Softw. 17 (1991) 533-554) it takes about a tenth fewer steps on the
 * validation problems. Limits of the factor as in the code RODAS of Hairer & Wanner II (0.2 to 6).
 * Where the error is far below what is allowed, as while the transient after a switching dies away, the step grows by the
 * error's own order at once: a seventh fewer steps at the same error over 48 h of the catalogue's aircraft.
 */
export function createStepControl(): StepControl {
  let before: number | undefined;
  let afterRejection = false;
  return {
    accepted(error) {
      // Without a former error there is nothing to weigh: the plain integral control of the error's own order.
      let factor =
        before === undefined || error < FAR_BELOW
          ? SAFETY * error ** (-1 / ORDER)
          : SAFETY * error ** (-0.6 / ORDER) * before ** (0.2 / ORDER);
      factor = Math.min(LARGEST_FACTOR, Math.max(SMALLEST_FACTOR, factor));
      if (afterRejection) factor = Math.min(1, factor);
      before = Math.max(error, SMALLEST_FORMER_ERROR);
      afterRejection = false;
      return factor;
    },
    rejected(error) {
      afterRejection = true;
      return Math.min(SAFETY, Math.max(SMALLEST_FACTOR, SAFETY * error ** (-1 / ORDER)));
    },
    failed() {
      afterRejection = true;
      return SMALLEST_FACTOR;
    },
    restart() {
      before = undefined;
      afterRejection = false;
    },
  };
}
