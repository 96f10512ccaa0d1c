import { PARAMETERS } from "../aircraft/index.js";
import type { Before } from "./population.js";

/**
 * The judged spreads turned out too wide: bands held 97 in 100 of the first 66 readings that were left out. Of 0.7, 0.8 and
 * 1 this one came nearest to nine in ten; the runs that were added after that choice are held as often.
 */
const SCALE = 0.8;

/** What is judged of the parameters before any run. */
export const BEFORE: Before = {
  mean: PARAMETERS.map(() => 0),
  sd: PARAMETERS.map(({ logSd }) => SCALE * logSd),
};
