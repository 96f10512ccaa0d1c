import { SECONDS_OF_HOUR } from "../units/index.js";

export const SECONDS_OF_DAY = 24 * SECONDS_OF_HOUR;

/** [s] mean time of the sun at a longitude [deg, east positive], less UTC. */
export function localStandard(longitude: number): number {
  return Math.round((longitude / 15) * SECONDS_OF_HOUR);
}

/**
 * A course through the year in straight lines between the middles of the months whose mean over each month is the value
 * given for it, for months of equal length: each month's mean is (before + 6 own + after)/8 of its middles.
 * @param months twelve values, January first
 * @param sun [s] the sun's clock less UTC
 * @returns value at a time [s since epoch]
 */
export function throughTheYear(months: readonly number[], sun: number): (time: number) => number {
  const middles = [...months];
  for (let round = 0; round < ROUNDS; round++) {
    const means = middles.map((own, m) => (middles[(m + 11) % 12]! + 6 * own + middles[(m + 1) % 12]!) / 8);
    for (let m = 0; m < 12; m++) middles[m]! += months[m]! - means[m]!;
  }
  return (time) => {
    const date = new Date((time + sun) * 1000);
    const month = date.getUTCMonth();
    const days = new Date(Date.UTC(date.getUTCFullYear(), month + 1, 0)).getUTCDate();
    const begun = Date.UTC(date.getUTCFullYear(), month, 1) / 1000;
    const share = (time + sun - begun) / (days * SECONDS_OF_DAY) - 0.5;
    const other = middles[(month + (share < 0 ? 11 : 1)) % 12]!;
    return middles[month]! + Math.abs(share) * (other - middles[month]!);
  };
}

/** The iteration shrinks the error by half or more each time. */
const ROUNDS = 40;
