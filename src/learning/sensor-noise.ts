/**
 * How far readings may be off the model: white noise of the probe plus the model's own error, which lasts for hours.
 * The model's error is taken as σ u with σ² = floor² + (share · rise)², where the rise is how far the part stands from
 * the air around it, and u an Ornstein-Uhlenbeck process of unit variance. A minute's log then teaches hardly more than
 * a reading every hour or two, instead of hundreds of independent ones.
 */
export interface Discrepancy {
  /** [K] */
  readonly floor: number;
  /** [1] of the rise above the air around */
  readonly share: number;
  /** [s] */
  readonly correlationTime: number;
}

/**
 * Project judgement, set so that bands of made aircraft, whose every single contact differs from its group by 15 %,
 * hold as often as they promise (docs/learning.md): about 1 K at 20 K, 2 K at 45 K above the air.
 */
export const USUAL_DISCREPANCY: Discrepancy = { floor: 0.5, share: 0.04, correlationTime: 3 * 3600 };

/** Takes the correlation out of differences between readings and model, and scales them to unit variance. */
export interface Whitening {
  /** Rows used: positions in the log. */
  readonly rows: Int32Array;
  /** [K] standard deviation of the difference at each used row. */
  readonly sd: Float64Array;
  /** Half the logarithm of the determinant of the differences' covariance. */
  readonly halfLogDeterminant: number;
  /** Writes the whitened differences to out[offset + k · stride], k over the used rows; `differences` are by log row. */
  apply(differences: Float64Array, out: Float64Array, offset?: number, stride?: number): void;
}

/** @see innovation form of the Gaussian likelihood, Harvey, Forecasting, Structural Time Series Models and the Kalman Filter (1989), section 3.4, from memory */
export function createWhitening(
  /** [s] of the log's rows, ascending. */
  time: ArrayLike<number>,
  rows: readonly number[],
  /** [K] standard deviation of the reading's noise at each used row. */
  noise: ArrayLike<number>,
  /** [K] size of the model's error at each used row. */
  size: ArrayLike<number>,
  correlationTime: number,
): Whitening {
  const count = rows.length;
  const memory = new Float64Array(count);
  const gain = new Float64Array(count);
  const scale = new Float64Array(count);
  let variance = 1;
  let halfLogDeterminant = 0;
  for (let k = 0; k < count; k++) {
    const kept = k === 0 ? 0 : Math.exp((time[rows[k - 1]] - time[rows[k]]) / correlationTime);
    memory[k] = kept;
    const before = k === 0 ? 1 : kept * kept * variance + 1 - kept * kept;
    const total = size[k] * size[k] * before + noise[k] * noise[k];
    scale[k] = 1 / Math.sqrt(total);
    gain[k] = (before * size[k]) / total;
    variance = before - gain[k] * size[k] * before;
    halfLogDeterminant += 0.5 * Math.log(total);
  }
  return {
    rows: Int32Array.from(rows),
    sd: Float64Array.from(rows, (_, k) => Math.hypot(size[k], noise[k])),
    halfLogDeterminant,
    apply(differences, out, offset = 0, stride = 1) {
      let expected = 0;
      for (let k = 0; k < count; k++) {
        expected *= memory[k];
        const surprise = differences[rows[k]] - size[k] * expected;
        expected += gain[k] * surprise;
        out[offset + k * stride] = surprise * scale[k];
      }
    },
  };
}
