import { SECONDS_OF_HOUR } from "../units/index.js";

// What is taken where a source is silent. Each is on the side that makes the aircraft colder, the plan longer or
// the frost warning earlier; each use is listed in the series' assumptions.

/** [m/s] wind where none is given: a fresh average for an open site, so that wind cooling is not missed. Project judgement. */
export const ASSUMED_WIND = 5;
/** [K] air minus dew point where no humidity is given: near saturation, as cold air over snow often is, so that frost and condensation are not missed. Project judgement. */
export const ASSUMED_DEPRESSION = 2;
/** [0..1] cloud where none is given: clear, so that cooling to the sky is not missed. Project judgement. */
export const ASSUMED_CLOUD = 0;
/** [s] longest stretch between readings that is bridged without a warning. Project judgement. */
export const GAP_LIMIT = 3 * SECONDS_OF_HOUR;
/** [s] longest stretch past the last forecast or reading that a forecast is carried on by assumption. Project judgement. */
export const CARRY_LIMIT = 24 * SECONDS_OF_HOUR;

/**
 * Fall of air temperature through a night nobody forecast: full `drop` [K] after `duration` [s] of clear sky,
 * less by `cloudShield` times the cloud fraction. The square root of time is Brunt's law of night cooling
 * (Brunt, Quarterly Journal of the Royal Meteorological Society 58, 1932, from memory); the 10 K in 12 h stands for
 * a clear, calm night over snow (common practice, no published source); cloud factor 1 - 0.75 N is of the kind used
 * for net long-wave loss (from memory, coefficient project judgement).
 */
export const NIGHT_COOLING = { drop: 10, duration: 12 * SECONDS_OF_HOUR, cloudShield: 0.75 } as const;

/** [K] fall below the starting temperature after `elapsed` [s] under `cloudCover`. @example nightCooling(43200, 0) // 10 */
export function nightCooling(elapsed: number, cloudCover: number): number {
  const { drop, duration, cloudShield } = NIGHT_COOLING;
  const progress = Math.min(Math.max(elapsed, 0) / duration, 1);
  return drop * (1 - cloudShield * cloudCover) * Math.sqrt(progress);
}
