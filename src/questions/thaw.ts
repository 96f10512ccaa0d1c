import { leavingReport, thawAndDry, thawTrials } from "../airframe/index.js";
import {
  overriddenAirframe,
  readThawDocument,
  type ThawOutlookDocument,
  thawDocument,
} from "../documents/index.js";
import { finding } from "../findings/index.js";
import { completed, failed, filesOf, type Outcome, type QuestionOptions, STOPPED } from "./question.js";

/** [-] of the whole time that the stay, and the trials after it, take. */
const STAY_SHARE = 0.1;
const TRIALS_SHARE = 0.8;

/** When an aircraft in a hangar is dry, what would help, and whether it freezes again after its roll-out. */
export function thawFromDocument(
  source: unknown,
  options: QuestionOptions = {},
): Outcome<ThawOutlookDocument> {
  const { overrides = {}, onProgress } = options;
  const read = readThawDocument(overriddenAirframe(source, overrides), filesOf(options));
  if (!read.ok) return { status: "refused", issues: read.issues };
  if (onProgress?.(0) === false) return STOPPED;
  const stay = thawAndDry(read.request);
  if (stay.result === undefined) return failed(stay.remedy);
  let isStopped = false;
  const trials = thawTrials(read, (done) => {
    isStopped = onProgress?.(STAY_SHARE + TRIALS_SHARE * done) === false;
    return !isStopped;
  });
  if (isStopped) return STOPPED;
  if (trials === undefined) return { status: "failed", message: finding("trials-not-calculated", {}) };
  if (onProgress?.(STAY_SHARE + TRIALS_SHARE) === false) return STOPPED;
  const leaving = read.rollOut && leavingReport(read, read.rollOut, stay.result);
  if (leaving !== undefined && "remedy" in leaving) return failed(leaving.remedy);
  return completed(thawDocument(stay.result, trials, leaving, read));
}
