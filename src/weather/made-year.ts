import { createRandom, normalQuantile, type Random } from "../numerics/index.js";
import { SECONDS_OF_HOUR } from "../units/index.js";
import { anomalyModel } from "./made-anomaly.js";
import { dayShape, swingsOf } from "./made-swing.js";
import type { MonthNormals, PlaceNormals } from "./normals.js";
import type { WeatherSeries } from "./series.js";
import { localStandard, SECONDS_OF_DAY, throughTheYear } from "./through-year.js";

export interface MadeYearRequest {
  readonly place: PlaceNormals;
  /** [s] since 1970-01-01T00:00Z, whole hours; `to` later than `from`. */
  readonly from: number;
  readonly to: number;
  readonly seed: number;
  /** Which of the years of this seed; each is drawn on its own. */
  readonly year: number;
}

/** [1] how a warm or cold spell goes with cloud and wind: cold ones are clear and calm. Project judgement. */
const CLOUD_WITH_WARMTH = 0.4;
const WIND_WITH_WARMTH = 0.25;
/** [h] over which wind, cloud and humidity forget themselves; project judgement. */
const MEMORY = { wind: 10, cloud: 10, depression: 12 } as const;
/** [1] spread of the cloud's logit, which makes clear and overcast commoner than half; of the depression's logarithm. */
const CLOUD_SPREAD = 2.2;
const DEPRESSION_SPREAD = 0.5;

/**
 * Hourly weather made from monthly normals with a seed: nothing of it was ever measured.
 * - Normals run through the year in straight lines whose monthly means are the normals.
 * - Days' means: first-order autoregression around them with the wanted spread and persistence, straight from noon to noon.
 * - Day and night: half cosines from 06 to 14 h of the sun's time and back, as wide as gives the wanted daily range.
 * - Wind: length of a vector of two autoregressions (Rayleigh, a Weibull of shape 2); cloud: logistic of one; dew-point
 *   depression: log-normal. Cold spells are clearer and calmer.
 * Test: the normals come back from forty years.
 */
export function madeYear({ place, from, to, seed, year }: MadeYearRequest): WeatherSeries {
  check({ place, from, to, seed, year });
  const random = createRandom(seed).stream(`${place.id}, year ${year}`);
  const sun = localStandard(place.longitude);
  const hours = Math.floor((to - from) / SECONDS_OF_HOUR) + 1;
  const time = Float64Array.from({ length: hours }, (_, i) => from + i * SECONDS_OF_HOUR);
  const course = (pick: (month: MonthNormals) => number) => throughTheYear(place.months.map(pick), sun);
  const mean = course((m) => m.tempAir);
  const daySd = course((m) => m.daySd);
  const swing = throughTheYear(swingsOf(place), sun);
  const windMean = course((m) => m.windSpeed);
  const cloudLogit = course((m) => logitOfMean(m.cloudCover));
  const depressionMean = course((m) => m.depression);

  const anomaly = dailyAnomaly(place, from, to, sun, random.stream("days"));
  const east = hourly(MEMORY.wind, random.stream("wind east"));
  const north = hourly(MEMORY.wind, random.stream("wind north"));
  const cloud = hourly(MEMORY.cloud, random.stream("cloud"));
  const humidity = hourly(MEMORY.depression, random.stream("dew point"));
  const alone = Math.sqrt(1 - CLOUD_WITH_WARMTH ** 2);

  const tempAir = new Float64Array(hours);
  const windSpeed = new Float64Array(hours);
  const tempDewPoint = new Float64Array(hours);
  const cloudCover = new Float64Array(hours);
  for (let i = 0; i < hours; i++) {
    const t = time[i]!;
    const spell = anomaly(t);
    tempAir[i] = mean(t) + daySd(t) * spell + swing(t) * dayShape(t + sun);
    const gust = Math.exp(WIND_WITH_WARMTH * spell - WIND_WITH_WARMTH ** 2 / 2);
    windSpeed[i] = windMean(t) * gust * Math.sqrt(2 / Math.PI) * Math.hypot(east(), north());
    const logit = cloudLogit(t) + CLOUD_SPREAD * (CLOUD_WITH_WARMTH * spell + alone * cloud());
    cloudCover[i] = 1 / (1 + Math.exp(-logit));
    const log = DEPRESSION_SPREAD * humidity() - DEPRESSION_SPREAD ** 2 / 2;
    tempDewPoint[i] = tempAir[i]! - depressionMean(t) * Math.exp(log);
  }
  return {
    ...{ time, tempAir, windSpeed, tempDewPoint, cloudCover },
    origin: `made from the normals of ${place.name}, year ${year} of seed ${seed}`,
    assumptions: [],
  };
}

/** Spells in standard deviations of the days' means: values at noon, straight between them. */
function dailyAnomaly(place: PlaceNormals, from: number, to: number, sun: number, random: Random) {
  const noon = (t: number) => (t + sun) / SECONDS_OF_DAY - 0.5;
  const first = Math.floor(noon(from)) - 1;
  const days = Math.ceil(noon(to)) - first + 2;
  const models = place.months.map(({ persistence }) => anomalyModel(persistence));
  const values = new Float64Array(days);
  let state = random.normal();
  for (let d = 0; d < days; d++) {
    const month = new Date((first + d) * SECONDS_OF_DAY * 1000).getUTCMonth();
    const { memory, scale } = models[month]!;
    state = memory * state + Math.sqrt(1 - memory ** 2) * random.normal();
    values[d] = scale * state;
  }
  return (t: number) => {
    const at = noon(t) - first;
    const day = Math.floor(at);
    return values[day]! + (at - day) * (values[day + 1]! - values[day]!);
  };
}

/** Standard normal numbers an hour apart that forget themselves over `memory` [h]. */
function hourly(memory: number, random: Random): () => number {
  const kept = Math.exp(-1 / memory);
  const fresh = Math.sqrt(1 - kept ** 2);
  let state = random.normal();
  return () => {
    const now = state;
    state = kept * state + fresh * random.normal();
    return now;
  };
}

/** Middle of the logit whose logistic, spread by CLOUD_SPREAD, has this mean. */
function logitOfMean(mean: number): number {
  const held = Math.min(0.97, Math.max(0.03, mean));
  let low = -12;
  let high = 12;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    const reached = NODES.reduce((sum, z) => sum + 1 / (1 + Math.exp(-(middle + CLOUD_SPREAD * z))), 0);
    if (reached / NODES.length < held) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const NODES = Array.from({ length: 64 }, (_, k) => normalQuantile((k + 0.5) / 64));

function check({ place, from, to, seed, year }: MadeYearRequest): void {
  if (place.months.length !== 12)
    throw new RangeError(`invalid months: ${place.months.length} (expected 12, January first)`);
  if (!(from < to)) throw new RangeError(`invalid to: ${to} (expected after from, ${from})`);
  for (const [name, value] of [
    ["seed", seed],
    ["year", year],
  ] as const) {
    if (!Number.isInteger(value)) throw new RangeError(`invalid ${name}: ${value} (expected a whole number)`);
  }
}
