import { leastSquares } from "../numerics/index.js";
import type { FitData } from "./fit-data.js";
import { type FitModel, FitTrouble, type Linearisation, type Prediction } from "./fit-model.js";
import type { Whitening } from "./sensor-noise.js";

/** The top of the posterior density, with what is needed for its curvature. */
export interface MostLikely {
  readonly z: Float64Array;
  /** Of the whitened residuals, priors last, row-major. */
  readonly jacobian: Float64Array;
  readonly linearisation: Linearisation;
  readonly evaluations: number;
}

/** Of its own standard error; the courses themselves are no truer than some hundredths of a kelvin. */
const CLOSE_ENOUGH = 0.02;
/** Likewise, where the search ends early: still well within what is not known anyway. */
const GOOD_ENOUGH = 0.3;
const MOST_EVALUATIONS = 60;

/** Least sum of squares of whitened differences and of the unknowns themselves, whose priors are standard normal. */
export function mostLikely(
  start: Float64Array,
  data: FitData,
  model: FitModel,
  whitenings: readonly Whitening[],
  progress: () => void,
): MostLikely {
  const n = start.length;
  const readings = whitenings.reduce((sum, { rows }) => sum + rows.length, 0);
  const nothing = data.probes.map(({ readings }) => readings.map(() => 0));
  const read = data.probes.map((probe) => probe.readings);
  let trouble = "";

  function evaluate(z: Float64Array, residuals: Float64Array, jacobian: Float64Array | undefined): boolean {
    progress();
    try {
      residuals.set(z, readings);
      if (jacobian === undefined) {
        whiten(model.predict([z])[0], read, residuals, 0, 1);
        return true;
      }
      const { prediction, slopes } = model.linearise(z);
      whiten(prediction, read, residuals, 0, 1);
      jacobian.fill(0);
      slopes.forEach((slope, j) => {
        whiten(slope, nothing, jacobian, j, n);
        jacobian[(readings + j) * n + j] = 1;
      });
      return true;
    } catch (error) {
      if (!(error instanceof FitTrouble)) throw error;
      trouble = error.message;
      return false;
    }
  }

  /** Whitened differences (expected less given) of all probes, written from out[offset] on with a stride. */
  function whiten(
    expected: Prediction,
    given: Prediction,
    out: Float64Array,
    offset: number,
    stride: number,
  ): void {
    let from = offset;
    whitenings.forEach((whitening, p) => {
      const differences = expected[p].map((value, k) => value - given[p][k]);
      whitening.apply(differences, out, from, stride);
      from += whitening.rows.length * stride;
    });
  }

  const problem = { residualCount: readings + n, start, evaluate };
  const result = leastSquares(problem, { tolerance: CLOSE_ENOUGH, maximumEvaluations: MOST_EVALUATIONS });
  if (!(result.offset <= GOOD_ENOUGH)) throw new FitTrouble(trouble === "" ? result.remedy : trouble);
  return {
    z: result.x,
    jacobian: result.jacobian,
    linearisation: model.linearise(result.x),
    evaluations: result.evaluations,
  };
}
