/** First-order autoregression of noon values: what it keeps from day to day and what it is multiplied by. */
export interface AnomalyModel {
  readonly memory: number;
  readonly scale: number;
}

/** [1] share of the noon before, of the same day's and of the one after in a day's mean of straight lines between noons. */
const DAY_WEIGHTS = [1 / 8, 6 / 8, 1 / 8] as const;

/**
 * The autoregression of noon values whose days' means have standard deviation 1 and the wanted correlation from day to
 * day: taking means over straight lines smooths, which the model makes up for.
 */
export function anomalyModel(persistence: number): AnomalyModel {
  if (!(persistence >= 0 && persistence < 1))
    throw new RangeError(`invalid persistence: ${persistence} (expected 0 to less than 1)`);
  let low = -0.5;
  let high = 0.9999;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (covariance(middle, 1) / covariance(middle, 0) < persistence) low = middle;
    else high = middle;
  }
  const memory = (low + high) / 2;
  return { memory, scale: 1 / Math.sqrt(covariance(memory, 0)) };
}

/** Covariance of two days' means `lag` days apart where noon values keep `memory` a day. */
function covariance(memory: number, lag: number): number {
  let sum = 0;
  DAY_WEIGHTS.forEach((a, i) => {
    DAY_WEIGHTS.forEach((b, j) => {
      const apart = Math.abs(lag + j - i);
      // A negative memory only occurs for a persistence near zero, where powers of it are what they are.
      sum += a * b * memory ** apart;
    });
  });
  return sum;
}
